namespace Quarterlight.Training.Mixing;

/// <summary>A filter of second order for samples at 16 kHz.</summary>
/// <remarks>Formulas of R. Bristow-Johnson's audio equalizer cookbook (from memory).</remarks>
public sealed class Biquad
{
    private readonly double _b0;
    private readonly double _b1;
    private readonly double _b2;
    private readonly double _a1;
    private readonly double _a2;
    private double _z1;
    private double _z2;

    private Biquad(double b0, double b1, double b2, double a0, double a1, double a2) =>
        (_b0, _b1, _b2, _a1, _a2) = (b0 / a0, b1 / a0, b2 / a0, a1 / a0, a2 / a0);

    /// <summary>Low pass.</summary>
    public static Biquad LowPass(double hz, double q = 0.7071)
    {
        (double cos, double alpha) = Angle(hz, q);
        return new((1 - cos) / 2, 1 - cos, (1 - cos) / 2, 1 + alpha, -2 * cos, 1 - alpha);
    }

    /// <summary>High pass.</summary>
    public static Biquad HighPass(double hz, double q = 0.7071)
    {
        (double cos, double alpha) = Angle(hz, q);
        return new((1 + cos) / 2, -1 - cos, (1 + cos) / 2, 1 + alpha, -2 * cos, 1 - alpha);
    }

    /// <summary>Band pass with 0 dB at its centre.</summary>
    public static Biquad BandPass(double hz, double q)
    {
        (double cos, double alpha) = Angle(hz, q);
        return new(alpha, 0, -alpha, 1 + alpha, -2 * cos, 1 - alpha);
    }

    /// <summary>Bell of a given height in dB.</summary>
    public static Biquad Bell(double hz, double q, double gainDb)
    {
        (double cos, double alpha) = Angle(hz, q);
        double a = Math.Pow(10, gainDb / 40);
        return new(1 + (alpha * a), -2 * cos, 1 - (alpha * a), 1 + (alpha / a), -2 * cos, 1 - (alpha / a));
    }

    /// <summary>High shelf of a given height in dB.</summary>
    public static Biquad HighShelf(double hz, double gainDb)
    {
        (double cos, double alpha) = Angle(hz, 0.7071);
        double a = Math.Pow(10, gainDb / 40), r = 2 * Math.Sqrt(a) * alpha;
        return new(
            a * (a + 1 + ((a - 1) * cos) + r), -2 * a * (a - 1 + ((a + 1) * cos)), a * (a + 1 + ((a - 1) * cos) - r),
            a + 1 - ((a - 1) * cos) + r, 2 * (a - 1 - ((a + 1) * cos)), a + 1 - ((a - 1) * cos) - r);
    }

    /// <summary>The next sample.</summary>
    public double Next(double x)
    {
        double y = (_b0 * x) + _z1;
        _z1 = (_b1 * x) - (_a1 * y) + _z2;
        _z2 = (_b2 * x) - (_a2 * y);
        return y;
    }

    /// <summary>Filters samples in place.</summary>
    public void Run(Span<float> samples)
    {
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = (float)Next(samples[i]);
        }
    }

    private static (double Cos, double Alpha) Angle(double hz, double q)
    {
        (double sin, double cos) = Math.SinCos(2 * Math.PI * Math.Clamp(hz, 1, 7900) / 16000);
        return (cos, sin / (2 * q));
    }
}
