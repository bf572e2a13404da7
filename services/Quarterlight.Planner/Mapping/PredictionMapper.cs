using Quarterlight.Clips.Judgement;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Mapping;

/// <summary>A talker's microphone in a plan, as a clip is held against it.</summary>
/// <param name="TalkerId">Talker.</param>
/// <param name="RecorderInput">Input of the recorder, 1 is the first.</param>
/// <param name="Prediction">What was forecast by octave; null in plans made before that was kept.</param>
internal sealed record PlannedMicrophone(string TalkerId, int RecorderInput, ClipPrediction? Prediction);

/// <summary>What a plan forecasts, in the words of the clip judge.</summary>
internal static class PredictionMapper
{
    // Far beyond anything a plan says: only what was made up is refused.
    private static readonly ValidRange s_levelDb = new(-200, 200, "dB");

    /// <summary>The microphones of a plan's best option.</summary>
    /// <param name="plan">With <see cref="V1.Plan.Best"/>.</param>
    /// <param name="field">Path of the plan, when it was sent.</param>
    /// <param name="reader">Takes what is wrong with it.</param>
    public static IReadOnlyList<PlannedMicrophone> ToDomain(V1.Plan plan, string field, FieldReader reader)
    {
        var planned = new List<PlannedMicrophone>();
        for (int i = 0; i < plan.Best.Placements.Count; i++)
        {
            V1.TalkerPlacement placement = plan.Best.Placements[i];
            planned.Add(new PlannedMicrophone(placement.TalkerId, placement.RecorderInput, Prediction(placement, $"{field}.best.placements[{i}].figures", reader)));
        }

        return planned;
    }

    private static ClipPrediction? Prediction(V1.TalkerPlacement placement, string field, FieldReader reader)
    {
        if (placement.Figures is not { SpeechLevels: not null, NoiseLevels: not null, SelfNoiseLevels: not null } figures)
        {
            return null;
        }

        return new ClipPrediction(
            placement.TalkerId,
            placement.MicrophoneId,
            OctaveMapper.ToDomain(figures.SpeechLevels, $"{field}.speech_levels", s_levelDb, reader),
            OctaveMapper.ToDomain(figures.NoiseLevels, $"{field}.noise_levels", s_levelDb, reader),
            OctaveMapper.ToDomain(figures.SelfNoiseLevels, $"{field}.self_noise_levels", s_levelDb, reader),
            figures.SnrDba is { PlusMinus: >= 0 and <= 100 } snr ? snr.PlusMinus : 0);
    }
}
