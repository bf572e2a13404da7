using Quarterlight.Clips.Spectrum;
using Quarterlight.Quantities;

namespace Quarterlight.Training.Mixing;

/// <summary>A-weighted levels of sounds at 16 kHz, from 32 ms Hann frames.</summary>
public static class SoundLevels
{
    /// <summary>A frame of speech counts as active when it lies at most so far below the 95 % point, dB. Judgement.</summary>
    public const double ActiveRangeDb = 20;

    private const int Size = 512;
    private const double BinHz = 16000.0 / Size;
    private static readonly double[] s_weights = [.. Enumerable.Range(0, (Size / 2) + 1).Select(k => AWeighting.PowerFactor(k * BinHz))];

    /// <summary>A-weighted mean square.</summary>
    public static double Power(ReadOnlySpan<float> samples)
    {
        List<double> frames = Frames(samples);
        return frames.Count == 0 ? 0 : frames.Average();
    }

    /// <summary>A-weighted mean square of the active frames.</summary>
    public static double ActivePower(ReadOnlySpan<float> samples)
    {
        List<double> frames = Frames(samples);
        if (frames.Count == 0)
        {
            return 0;
        }

        double top = frames.Order().ElementAt((int)(0.95 * (frames.Count - 1)));
        return frames.Where(p => p >= top * Math.Pow(10, -ActiveRangeDb / 10)).Average();
    }

    private static List<double> Frames(ReadOnlySpan<float> samples)
    {
        var frames = new List<double>();
        new SpectrumFrames(16000, Size, (_, power) =>
        {
            double sum = 0;
            for (int k = 0; k < power.Length; k++)
            {
                sum += power[k] * s_weights[k];
            }

            frames.Add(sum);
        }).Add(samples);
        return frames;
    }
}
