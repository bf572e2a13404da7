using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Levels;

/// <summary>What a placed talker brings to the microphone at any effort: the room is linear, so bands move by the difference of the spectra.</summary>
internal sealed class TalkerLevels(TalkerPlacement placement, VocalEffort sceneEffort, VocalEffort loudest)
{
    private readonly BandLevels _spectrum = VoiceSpectrum.AtOneMetre(sceneEffort);

    public TalkerPlacement Placement => placement;

    /// <summary>Effort of the scene.</summary>
    public VocalEffort SceneEffort => sceneEffort;

    /// <summary>Loudest effort to be ready for.</summary>
    public VocalEffort Loudest => loudest;

    /// <summary>Highest momentary level at the capsule, dB re 20 µPa, in the loudest head pose.</summary>
    public double PeakDb(VocalEffort effort) =>
        (placement.Figures.CapsuleLevelsDb + (VoiceSpectrum.AtOneMetre(effort) - _spectrum)).OverallDb() + VoiceSpectrum.CrestAllowanceDb;

    /// <summary>Speech as a long mean through pattern and aim, dB(A).</summary>
    public double SpeechDba(VocalEffort effort) => (placement.Figures.SpeechLevelsDb + (VoiceSpectrum.AtOneMetre(effort) - _spectrum)).AWeightedDb();

    /// <summary>The talkers of a plan's best option by recorder input.</summary>
    public static IEnumerable<IGrouping<int, TalkerLevels>> ByInput(LevelTask task) =>
        task.Plan.Best.Placements
            .Select(p =>
            {
                VocalEffort effort = task.Placement.Scene.Talkers.First(t => t.Id == p.TalkerId).Effort;

                // Nobody is quieter than the scene says: that effort must fit as well.
                VocalEffort loudest = task.LoudestByTalker.TryGetValue(p.TalkerId, out VocalEffort given)
                    ? VocalEfforts.QuietestFirst[Math.Max(VocalEfforts.Rank(given), VocalEfforts.Rank(effort))]
                    : VocalEfforts.Louder(effort);
                return new TalkerLevels(p, effort, loudest);
            })
            .GroupBy(t => t.Placement.RecorderInput)
            .OrderBy(g => g.Key);
}
