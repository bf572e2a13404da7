using Quarterlight.Quantities;

namespace Quarterlight.Placement.Levels;

/// <summary>Sets the gain of every input of a plan, from the peak at the capsule to the recorder and the transmitters.</summary>
public static class LevelPlanner
{
    /// <summary>
    /// Level of a full-scale sine at the recorder's line output, dBu: -20 dBFS is the alignment level (SMPTE RP 155) and +4 dBu the line level of
    /// the trade (from memory). Where -18 dBFS is 0 dBu (EBU R 68) it is 18.
    /// </summary>
    public const double LineFullScaleDbu = 24;

    /// <summary>Makes the gain sheet.</summary>
    /// <exception cref="InvalidInputException"><see cref="LevelRules.Validate(LevelTask, string)"/> finds something.</exception>
    public static LevelReport Plan(LevelTask task)
    {
        IReadOnlyList<Violation> violations = LevelRules.Validate(task);
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }

        InputChain[] chains = [.. TalkerLevels.ByInput(task).Select(g => new InputChain(task, g))];

        // Free inputs go to those a louder line would drive furthest over.
        int free = Math.Max(0, task.Placement.Kit.RecorderInputCount - chains.Length);
        InputChain[] needy = [.. chains.Where(c => c.SafetyNeedDb > 0).OrderByDescending(c => c.SafetyNeedDb)];
        HashSet<InputChain> safe = [.. needy.Take(free)];
        InputLevels[] inputs = [.. chains.Select(c => c.Write(safe.Contains(c)))];
        TransmitterLevel[] sends =
        [
            .. task.Transmitters.Where(t => t.Feed == TransmitterFeed.Recorder).Select(t => TransmitterStage.Set(t, LineFullScaleDbu - task.HeadroomDb, task.HeadroomDb)),
        ];
        return new LevelReport(inputs, sends, LevelAdvisories.For(task, inputs, sends, needy.Length - safe.Count));
    }
}
