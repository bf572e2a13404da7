using Quarterlight.Clips.Judgement;

namespace Quarterlight.Planner.Mapping;

/// <summary>A plan's forecast beside a clip, to the contract.</summary>
internal static class ComparisonMapper
{
    private const int LongestSource = 200;

    /// <param name="comparison">As the clip judge gives it.</param>
    /// <param name="fileName">Name of the clip, for the source of the correction.</param>
    public static V1.PlanComparison ToContract(PlanComparison comparison, string fileName)
    {
        var contract = new V1.PlanComparison
        {
            Channel = comparison.Channel + 1,
            TalkerId = comparison.Prediction.TalkerId,
            MicrophoneId = comparison.Prediction.MicrophoneId,
            TiedToSpeech = comparison.TiedToSpeech,
            FullScaleSplDb = comparison.FullScaleSplDb,
            SpeechDba = ToContract(comparison.SpeechDba),
            NoiseDba = ToContract(comparison.NoiseDba),
            SpeechToNoiseDb = ToContract(comparison.SpeechToNoiseDb),
            PlusMinusDb = comparison.PlusMinusDb,
            Words = comparison.Words,
        };
        contract.Bands.AddRange(comparison.Bands.Select(b => new V1.ComparedBand
        {
            CentreHz = b.CentreHz,
            Speech = ToContract(b.Speech),
            Noise = ToContract(b.Noise),
            SpeechToNoise = ToContract(b.SpeechToNoise),
        }));
        if (comparison.NoiseCorrection is { } shifts)
        {
            string source = $"clip {fileName}, channel {comparison.Channel + 1}";
            contract.NoiseCorrection = new V1.NoiseCorrection
            {
                Shifts = OctaveMapper.ToContract(shifts),
                Source = source.Length <= LongestSource ? source : $"clip, channel {comparison.Channel + 1}",
            };
        }

        return contract;
    }

    private static V1.ComparedLevel ToContract(ComparedLevel level)
    {
        var contract = new V1.ComparedLevel { PredictedDb = level.PredictedDb };
        ClipReportMapper.SetIf(level.MeasuredDb, v => contract.MeasuredDb = v);
        return contract;
    }
}
