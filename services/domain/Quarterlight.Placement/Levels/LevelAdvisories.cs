using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Levels;

/// <summary>What to be careful about on a gain sheet, most important first.</summary>
internal static class LevelAdvisories
{
    public static IReadOnlyList<Advisory> For(LevelTask task, IReadOnlyList<InputLevels> inputs, IReadOnlyList<TransmitterLevel> sends, int withoutSafety)
    {
        var all = new List<Advisory>();
        foreach (InputLevels input in inputs.Where(i => i.Verdict is ChainVerdict.CapsuleOverload or ChainVerdict.InputOverload))
        {
            all.Add(new Advisory(input.Verdict == ChainVerdict.CapsuleOverload ? "capsule-overload" : "input-overload", $"Input {input.RecorderInput}: {input.Words}", AdvisorySeverity.Caution));
        }

        foreach (TransmitterLevel send in sends.Where(s => s.Verdict == ChainVerdict.InputOverload))
        {
            all.Add(new Advisory("send-overload", send.Words, AdvisorySeverity.Caution));
        }

        if (withoutSafety > 0)
        {
            all.Add(new Advisory(
                "safety-inputs-short",
                $"{(withoutSafety == 1 ? "One input has" : $"{withoutSafety} inputs have")} no safety track, because the recorder has no free input left: rehearse the loudest line and leave more headroom there.",
                AdvisorySeverity.Caution));
        }

        foreach (Talker talker in task.Placement.Scene.Talkers)
        {
            if (task.LoudestByTalker.TryGetValue(talker.Id, out VocalEffort given) && VocalEfforts.Rank(given) < VocalEfforts.Rank(talker.Effort))
            {
                all.Add(new Advisory(
                    "quieter-than-scene",
                    $"{talker.DisplayName} is {LevelWords.Named(talker.Effort)} in the scene, so the levels are set for that and not for {LevelWords.Named(given)}.",
                    AdvisorySeverity.Note));
            }
        }

        if (task.MicrophoneTransmitterId is { } id && inputs.All(i => i.Transmitter is null))
        {
            all.Add(new Advisory("no-body-worn", $"No microphone of the plan is body-worn, so nothing goes through \"{id}\".", AdvisorySeverity.Note));
        }

        if (sends.Count > 0)
        {
            all.Add(new Advisory(
                "line-alignment",
                FormattableString.Invariant($"Sends are set for a line output whose full scale is +{LevelPlanner.LineFullScaleDbu:0} dBu (-20 dBFS at +4 dBu): with a tone, check that the follow car sees the same."),
                AdvisorySeverity.Note));
        }

        double doubt = inputs.Count == 0 ? 0 : inputs.Max(i => i.PeakLevelDb.PlusMinus);
        all.Add(new Advisory(
            "rehearse-levels",
            FormattableString.Invariant($"Peaks are forecast to ±{doubt:0} dB and people differ: have the loudest line played at full voice before the first take, and keep a hand on the gain for potholes and door slams, which are not in the forecast."),
            AdvisorySeverity.Note));
        return all;
    }
}
