using MathNet.Numerics;

namespace Quarterlight.Radio.Fading;

/// <summary>Fast fading from many paths: a steady part and a scattered part. Without a steady part it is Rayleigh's.</summary>
/// <remarks>Share below a power ratio r of the mean: 1 - Q1(sqrt(2K), sqrt(2 (K+1) r)), Q1 of Marcum. K is linear: steady over scattered power, 0 for
/// Rayleigh.</remarks>
public static class RiceFading
{
    /// <summary>Share of time and places below a power.</summary>
    /// <param name="powerRatio">Power over the mean power, 0 or more.</param>
    /// <param name="k">Steady over scattered power, 0 or more.</param>
    public static double BelowFraction(double powerRatio, double k)
    {
        if (k == 0)
        {
            return -SpecialFunctions.Expm1(-powerRatio);
        }

        // The library writes Q(x, y) for Q1(sqrt(2x), sqrt(2y)), and asks for arguments up to 10 000.
        double y = (k + 1) * powerRatio;
        return y == 0 ? 0 : y > k + (10 * Math.Sqrt(k + 1)) + 800 ? 1 : Math.Clamp(1 - SpecialFunctions.MarcumQ(1, k, y), 0, 1);
    }

    /// <summary>How far in dB below the mean power the level falls for all but the availability.</summary>
    /// <param name="availabilityFraction">Above 0 and below 1.</param>
    /// <param name="k">Steady over scattered power, 0 or more.</param>
    public static double MarginBelowMeanDb(double availabilityFraction, double k)
    {
        double low = -30, high = 80;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = BelowFraction(Math.Pow(10, -middle / 10), k) > 1 - availabilityFraction ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>Downward crossings of a level a second, for one hertz of Doppler spread.</summary>
    /// <param name="amplitudeRatio">Level over the rms level as amplitudes, above 0.</param>
    /// <param name="k">Steady over scattered power, 0 or more.</param>
    /// <remarks>sqrt(2π(K+1)) ρ exp(-K - (K+1)ρ²) I0(2ρ sqrt(K(K+1))), the textbook form after Rice.</remarks>
    public static double CrossingsPerHertz(double amplitudeRatio, double k)
    {
        double x = 2 * amplitudeRatio * Math.Sqrt(k * (k + 1));
        double exponent = -k - ((k + 1) * amplitudeRatio * amplitudeRatio) + x;
        return Math.Sqrt(2 * Math.PI * (k + 1)) * amplitudeRatio * Math.Exp(exponent) * ScaledBesselI0(x);
    }

    // exp(-x) I0(x), which stays finite.
    private static double ScaledBesselI0(double x) => x < 700 ? SpecialFunctions.BesselI0(x) * Math.Exp(-x) : 1 / Math.Sqrt(2 * Math.PI * x);
}
