using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;

namespace Quarterlight.Training.Mixing;

/// <summary>Puts sounds together at known ratios.</summary>
public static class Mixer
{
    /// <summary>Noise at least so far under the speech would not be heard as such: clean holds as well, dB. Judgement.</summary>
    public const double CleanFromDb = 25;

    /// <summary>Above this and below <see cref="CleanFromDb"/> nobody can say whether it is clean, dB. Judgement.</summary>
    public const double NotCleanToDb = 20;

    /// <summary>Speech over noise. Ratio: A-weighted active level of the speech over the A-weighted level of the noise.</summary>
    /// <param name="speech">Speech; sets level and length.</param>
    /// <param name="noise">Noise, repeated when shorter.</param>
    /// <param name="ratioDb">Ratio, dB.</param>
    /// <returns>The mixture, or nothing when one of the two is silent.</returns>
    public static float[]? SpeechOverNoise(float[] speech, float[] noise, double ratioDb)
    {
        ArgumentNullException.ThrowIfNull(speech);
        ArgumentNullException.ThrowIfNull(noise);
        float[] under = Fit(noise, speech.Length);
        double s = SoundLevels.ActivePower(speech), n = SoundLevels.Power(under);
        return s <= 0 || n <= 0 ? null : Add(speech, under, Math.Sqrt(s / n * Math.Pow(10, -ratioDb / 10)));
    }

    /// <summary>Two noises. Ratio: A-weighted level of the first over that of the second.</summary>
    public static float[]? TwoNoises(float[] first, float[] second, double ratioDb)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        float[] under = Fit(second, first.Length);
        double a = SoundLevels.Power(first), b = SoundLevels.Power(under);
        return a <= 0 || b <= 0 ? null : Add(first, under, Math.Sqrt(a / b * Math.Pow(10, -ratioDb / 10)));
    }

    /// <summary>What holds for speech over a noise at a ratio.</summary>
    public static Truth Truth(Truth noise, double ratioDb) =>
        noise.With(ClipTag.Clean, noise.Clean == true || ratioDb >= CleanFromDb ? true : ratioDb <= NotCleanToDb ? false : null);

    /// <summary>Repeats or cuts a sound to a length, with 20 ms of overlap where it starts again.</summary>
    public static float[] Fit(float[] samples, int length)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (samples.Length >= length)
        {
            return samples[..length];
        }

        int fade = Math.Min(320, samples.Length / 4);
        var fitted = new float[length];
        for (int start = 0; start < length; start += samples.Length - fade)
        {
            for (int i = 0; i < samples.Length && start + i < length; i++)
            {
                double up = start > 0 && i < fade ? Math.Sqrt((i + 0.5) / fade) : 1;
                double down = i >= samples.Length - fade ? Math.Sqrt((samples.Length - i - 0.5) / fade) : 1;
                fitted[start + i] += (float)(samples[i] * up * down);
            }
        }

        return fitted;
    }

    private static float[] Add(float[] a, float[] b, double gain)
    {
        var sum = new float[a.Length];
        for (int i = 0; i < sum.Length; i++)
        {
            sum[i] = (float)(a[i] + (gain * b[i]));
        }

        return sum;
    }
}
