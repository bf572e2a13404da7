namespace Quarterlight.Training.Mixing;

/// <summary>What happens to a sound on its way into a file: microphone, cloth, cabin, gain, converter noise, codec, low rates.</summary>
/// <remarks>All ranges are judgement: common practice of location recording, no source.</remarks>
public static class Microphones
{
    /// <summary>A random chain of filters, in place.</summary>
    public static void Colour(float[] samples, Random random)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentNullException.ThrowIfNull(random);
        double Between(double from, double to) => from + ((to - from) * random.NextDouble());
        bool Chance(double p) => random.NextDouble() < p;
        if (Chance(0.4))
        {
            Biquad.HighPass(Math.Exp(Between(Math.Log(25), Math.Log(160)))).Run(samples);
        }

        if (Chance(0.4))
        {
            Biquad.Bell(Between(2000, 6500), Between(0.5, 1.2), Between(1, 6)).Run(samples);
        }

        if (Chance(0.35))
        {
            Biquad.HighShelf(Between(1500, 4500), Between(-12, -2)).Run(samples);
        }

        // A cabin: two to five broad modes and seat absorption.
        if (Chance(0.5))
        {
            for (int i = random.Next(2, 6); i > 0; i--)
            {
                Biquad.Bell(Math.Exp(Between(Math.Log(60), Math.Log(1500))), Between(0.7, 3), Between(-6, 6)).Run(samples);
            }
        }

        if (Chance(0.3))
        {
            Biquad.HighShelf(Between(600, 3000), Between(-5, 5)).Run(samples);
        }

        if (Chance(0.15))
        {
            Biquad.LowPass(Between(3200, 7000)).Run(samples);
            Biquad.LowPass(Between(3500, 7500)).Run(samples);
        }
    }

    /// <summary>Gain in dB, in place, with the limit of full scale.</summary>
    public static void Gain(float[] samples, double gainDb)
    {
        ArgumentNullException.ThrowIfNull(samples);
        double gain = Math.Pow(10, gainDb / 20);
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = (float)Math.Clamp(samples[i] * gain, -1, 1);
        }
    }

    /// <summary>A lossy coder in outline: in each 32 ms what lies far under the loudest is dropped to a coarse step, and the top is cut.</summary>
    public static void Coder(float[] samples, Random random)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentNullException.ThrowIfNull(random);
        double cut = 3500 + (4300 * random.NextDouble());
        Biquad.LowPass(cut, 0.54).Run(samples);
        Biquad.LowPass(cut, 1.31).Run(samples);
        double stepDb = -38 - (20 * random.NextDouble());
        for (int start = 0; start < samples.Length; start += 512)
        {
            Span<float> part = samples.AsSpan(start, Math.Min(512, samples.Length - start));
            float top = 1e-6f;
            foreach (float x in part)
            {
                top = Math.Max(top, Math.Abs(x));
            }

            double step = top * Math.Pow(10, stepDb / 20);
            for (int i = 0; i < part.Length; i++)
            {
                part[i] = (float)((Math.Round((part[i] / step) + random.NextDouble() - 0.5)) * step);
            }
        }
    }

    /// <summary>The same at 8 kHz.</summary>
    public static float[] Halved(float[] samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        float[] low = [.. samples];
        for (int i = 0; i < 3; i++)
        {
            Biquad.LowPass(3500, 0.8).Run(low);
        }

        var half = new float[low.Length / 2];
        for (int i = 0; i < half.Length; i++)
        {
            half[i] = low[2 * i];
        }

        return half;
    }
}
