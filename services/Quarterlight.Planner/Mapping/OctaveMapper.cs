using Quarterlight.Quantities;

namespace Quarterlight.Planner.Mapping;

/// <summary>Levels of the seven octaves.</summary>
internal static class OctaveMapper
{
    /// <summary>The seven levels; notes a violation when they are missing, of another number, or out of range.</summary>
    /// <param name="levels">As sent.</param>
    /// <param name="field">Their path.</param>
    /// <param name="range">Range of each; null leaves it to the room that uses them.</param>
    /// <param name="reader">Takes what is wrong.</param>
    public static BandLevels ToDomain(V1.OctaveLevels? levels, string field, ValidRange? range, FieldReader reader)
    {
        if (levels is null || levels.LevelsDb.Count != OctaveBands.Count)
        {
            reader.Add(
                $"{field}.levels_db",
                levels is null ? "the levels are missing" : $"there are {levels.LevelsDb.Count} levels",
                "Give seven, 125 Hz first, each an octave up to 8 kHz");
            return default;
        }

        for (int i = 0; i < levels.LevelsDb.Count; i++)
        {
            range?.Check($"{field}.levels_db[{i}]", levels.LevelsDb[i], reader.Violations);
        }

        return new BandLevels([.. levels.LevelsDb]);
    }

    public static V1.OctaveLevels ToContract(BandLevels levels) => new() { LevelsDb = { levels.ToArray() } };
}
