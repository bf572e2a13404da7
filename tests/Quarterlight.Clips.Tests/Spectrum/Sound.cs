using System.Numerics;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tests.Spectrum;

/// <summary>Made signals, full scale 1. All random ones take a seed.</summary>
internal static class Sound
{
    public const double RateHz = 48000;

    private static readonly double[] s_vowel =
        [.. Enumerable.Range(1, 28).Select(h => 125.0 * h).Select(hz => (1 + Math.Exp(-Math.Pow((hz - 1800) / 400, 2))) / (1 + Math.Pow(hz / 600, 1.3)))];

    public static float[] Silence(double seconds, double rateHz = RateHz) => new float[(int)(seconds * rateHz)];

    public static float[] Sine(double hz, double amplitude, double seconds, double rateHz = RateHz) =>
        [.. Enumerable.Range(0, (int)(seconds * rateHz)).Select(i => (float)(amplitude * Math.Sin(2 * Math.PI * hz * i / rateHz)))];

    /// <summary>Gaussian noise with a given power density in mean square per Hz, by a random spectrum; it repeats after 2^18 samples.</summary>
    public static float[] Noise(Func<double, double> density, double seconds, int seed, double rateHz = RateHz, bool fixedSize = false)
    {
        const int n = 1 << 18;
        var random = new Random(seed);
        var spectrum = new Complex[n];
        for (int k = 1; k < n / 2; k++)
        {
            // One-sided power of a line is twice the square of its coefficient; without fixedSize it is exponentially distributed.
            double power = density(k * rateHz / n) * rateHz / n * (fixedSize ? 1 : -Math.Log(1 - random.NextDouble()));
            spectrum[k] = Complex.FromPolarCoordinates(Math.Sqrt(power / 2), 2 * Math.PI * random.NextDouble());
            spectrum[n - k] = Complex.Conjugate(spectrum[k]);
        }

        PlainFft.Transform(spectrum, inverse: true);
        return [.. Enumerable.Range(0, (int)(seconds * rateHz)).Select(i => (float)spectrum[i % n].Real)];
    }

    /// <summary>Noise like a car's: steep below 200 Hz, flatter above. Overall level by the caller.</summary>
    public static double CarDensity(double hz) => hz < 5 ? 0 : 1e-6 / (1 + Math.Pow(hz / 100, 2)) + (1e-9 / (1 + Math.Pow(hz / 1500, 2)));

    public static float[] Mix(float[] a, float[] b, double gain = 1) => [.. a.Zip(b, (x, y) => (float)(x + (gain * y)))];

    /// <summary>Vowel-like harmonics with syllables of 4 Hz, 1.4 s on and 0.9 s off; also which samples are on.</summary>
    public static (float[] Samples, bool[] On) Speech(double seconds, int seed, double rateHz = RateHz)
    {
        var random = new Random(seed);
        var samples = new float[(int)(seconds * rateHz)];
        var on = new bool[samples.Length];
        double phase = 0;
        double wander = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double t = i / rateHz;
            wander = (0.99995 * wander) + (0.0005 * (random.NextDouble() - 0.5));
            phase += 2 * Math.PI * (125 * (1 + (0.12 * Math.Sin(2 * Math.PI * 0.7 * t)) + wander)) / rateHz;
            on[i] = t % 2.3 is > 0.7 and < 2.1;
            if (!on[i])
            {
                continue;
            }

            double syllable = 0.12 + (0.88 * Math.Pow(Math.Sin(Math.PI * 4 * t), 2));

            // sin(hx) = 2 cos(x) sin((h - 1)x) - sin((h - 2)x).
            (double now, double cos) = Math.SinCos(phase);
            double before = 0;
            double sum = 0;
            foreach (double size in s_vowel)
            {
                sum += size * now;
                (before, now) = (now, (2 * cos * now) - before);
            }

            samples[i] = (float)(0.03 * syllable * sum);
        }

        return (samples, on);
    }

    /// <summary>Engine orders: the firing order and its multiples strong, half orders between them weak.</summary>
    public static float[] Engine(Func<double, double> rpm, int cylinders, double amplitude, double seconds, int seed, double rateHz = RateHz, double crankOrders = 0)
    {
        var random = new Random(seed);
        double[] phases = [.. Enumerable.Range(0, 64).Select(_ => 2 * Math.PI * random.NextDouble())];
        double[] sizes = [.. Enumerable.Range(0, 64).Select(n => n == 0 ? 0 : n % cylinders == 0 ? Math.Pow(0.65, (n / cylinders) - 1) : n % 2 == 0 && crankOrders > 0 ? crankOrders : 0.03 + (0.05 * random.NextDouble()))];
        var samples = new float[(int)(seconds * rateHz)];
        double turn = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double now = rpm(i / rateHz);
            turn += now / 120 / rateHz;
            double sum = 0;
            for (int n = 1; n < sizes.Length && n * now / 120 < 0.4 * rateHz && n <= 5 * cylinders; n++)
            {
                sum += sizes[n] * Math.Sin((2 * Math.PI * n * turn) + phases[n]);
            }

            samples[i] = (float)(amplitude * sum);
        }

        return samples;
    }

    /// <summary>Applies a gain that changes with time.</summary>
    public static float[] Shaped(float[] samples, Func<double, double> gain, double rateHz = RateHz) =>
        [.. samples.Select((x, i) => (float)(x * gain(i / rateHz)))];

    public static ClipSpectrumReport Measure(float[] samples, int? cylinders = null, double rateHz = RateHz, double calibrationDb = 0)
    {
        var clip = new ClipSpectrum(rateHz, cylinders);
        clip.Add(samples);
        return clip.Finish(calibrationDb);
    }
}
