using Quarterlight.Clips.Spectrum;
using Quarterlight.Quantities;

namespace Quarterlight.Clips.Judgement;

/// <summary>Holds a plan's forecast for a talker's microphone against a clip from that microphone. docs/models/clip-verdict.md.</summary>
public static class PlanComparer
{
    /// <summary>Range of the sound pressure level of a sine that reads 0 dBFS.</summary>
    public static ValidRange FullScaleSpl { get; } = new(60, 180, "dB");

    /// <summary>Range of a correction, as the noise forecast takes it.</summary>
    public static ValidRange CorrectionDb { get; } = new(-40, 40, "dB");

    /// <summary>Least octaves told for a correction. Judgement.</summary>
    public const int LeastOctaves = 3;

    // Measured noise this near the microphone's own says nothing of the car. Judgement.
    private const double AboveSelfNoiseDb = 1;

    /// <summary>Compares.</summary>
    /// <param name="channel">What was measured on the microphone's channel.</param>
    /// <param name="prediction">The forecast.</param>
    /// <param name="fullScaleSplDb">Sound pressure level in dB of a sine that reads 0 dBFS; null ties the measured A-weighted speech to the forecast one.</param>
    /// <returns>Both side by side; null when neither speech nor noise could be measured, or when there is no speech to tie the levels to.</returns>
    public static PlanComparison? Compare(ChannelMeasures channel, ClipPrediction prediction, double? fullScaleSplDb)
    {
        ArgumentNullException.ThrowIfNull(channel);
        ArgumentNullException.ThrowIfNull(prediction);
        if (channel.Spectrum.SpeechNoise is not { } found || (fullScaleSplDb is null && found.SpeechAWeightedDb is null))
        {
            return null;
        }

        double speechDba = prediction.Speech.AWeightedDb(), noiseDba = prediction.Noise.AWeightedDb();
        double fullScale = fullScaleSplDb ?? (speechDba - found.SpeechAWeightedDb!.Value);
        double?[] speech = Octaves(found.SpeechOctaves, fullScale), noise = Octaves(found.NoiseOctaves, fullScale);
        var bands = new ComparedBand[OctaveBands.Count];
        for (int b = 0; b < bands.Length; b++)
        {
            bands[b] = new(
                OctaveBands.CentresHz[b],
                new(prediction.Speech[b], speech[b]),
                new(prediction.Noise[b], noise[b]),
                new(prediction.Speech[b] - prediction.Noise[b], speech[b] - noise[b]));
        }

        double spread = 2 * (found.SpeechToNoiseUncertaintyDb ?? found.NoiseUncertaintyDb);
        var comparison = new PlanComparison
        {
            Channel = channel.Index,
            Prediction = prediction,
            TiedToSpeech = fullScaleSplDb is null,
            FullScaleSplDb = fullScale,
            SpeechDba = new(speechDba, found.SpeechAWeightedDb + fullScale),
            NoiseDba = new(noiseDba, found.NoiseAWeightedDb + fullScale),
            SpeechToNoiseDb = new(speechDba - noiseDba, found.SpeechToNoiseDb),
            Bands = bands,
            PlusMinusDb = Math.Sqrt((prediction.PlusMinusDb * prediction.PlusMinusDb) + (spread * spread)),
            Words = "",
            NoiseCorrection = Correction(noise, prediction),
        };
        return comparison with { Words = ComparisonWords.Of(comparison) };
    }

    // Seven octaves from 125 Hz in dB SPL; one that is missing or cut by half the rate is null.
    private static double?[] Octaves(IReadOnlyList<BandLevel> levels, double fullScale)
    {
        var all = new double?[OctaveBands.Count];
        foreach (BandLevel level in levels.Where(l => l.IsWhole && l.LevelDb > FullScale.SilenceDb))
        {
            int b = OctaveBands.CentresHz.IndexOf(level.NominalHz);
            if (b >= 0)
            {
                all[b] = level.LevelDb + fullScale;
            }
        }

        return all;
    }

    // What the car makes, self-noise taken off on both sides, measured less forecast.
    private static BandLevels? Correction(double?[] noise, ClipPrediction prediction)
    {
        var shifts = new double?[OctaveBands.Count];
        for (int b = 0; b < shifts.Length; b++)
        {
            double self = prediction.SelfNoise[b];
            if (noise[b] is { } measured && measured > self + AboveSelfNoiseDb && prediction.Noise[b] > self)
            {
                shifts[b] = Math.Clamp(Less(measured, self) - Less(prediction.Noise[b], self), CorrectionDb.Min, CorrectionDb.Max);
            }
        }

        if (shifts.Count(s => s is not null) < LeastOctaves)
        {
            return null;
        }

        double mean = shifts.Average()!.Value;
        return BandLevels.Create(b => shifts[b] ?? mean);
    }

    private static double Less(double levelDb, double takenOffDb) => levelDb + (10 * Math.Log10(1 - Math.Pow(10, (takenOffDb - levelDb) / 10)));
}
