namespace Quarterlight.Acoustics;

/// <summary>What happens when one voice reaches a mix by two paths: peaks and notches along the frequency axis.</summary>
/// <remarks>Sum of two copies of a tone, one delayed by d/c and weaker by a gain g: 1 + g^2 + 2 g cos(2 pi f d/c).</remarks>
public static class CombFilter
{
    /// <summary>Peak (0 or more) and dip (0 or less) in dB re the stronger path alone: 20 lg(1 + g) and 20 lg(1 - g), g = 10^(-lead/20).</summary>
    /// <param name="leadDb">How far the weaker path lies below the stronger, in dB, 0 or more; 0 gives notches of minus infinity.</param>
    /// <exception cref="ArgumentOutOfRangeException">The lead is negative or not a number.</exception>
    public static (double PeakDb, double DipDb) RippleDb(double leadDb)
    {
        Positive.Check(leadDb, nameof(leadDb), zeroAllowed: true);
        double g = Math.Pow(10, -leadDb / 20);
        return (20 * Math.Log10(1 + g), 20 * Math.Log10(1 - g));
    }

    /// <summary>Frequency in Hz of a notch: (2n + 1) c/(2 d).</summary>
    /// <param name="n">Number of the notch, 0 for the lowest.</param>
    /// <param name="pathDifferenceM">Difference of the two path lengths in metres, above 0.</param>
    /// <param name="speedOfSoundMps">Speed of sound in m/s, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double NotchHz(int n, double pathDifferenceM, double speedOfSoundMps = SpeedOfSound.NominalMps)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(n);
        Positive.Check(pathDifferenceM, nameof(pathDifferenceM));
        Positive.Check(speedOfSoundMps, nameof(speedOfSoundMps));
        return ((2 * n) + 1) * speedOfSoundMps / (2 * pathDifferenceM);
    }

    /// <summary>Frequency in Hz of a peak: n c/d.</summary>
    /// <param name="n">Number of the peak, 0 for the one at 0 Hz.</param>
    /// <param name="pathDifferenceM">Difference of the two path lengths in metres, above 0.</param>
    /// <param name="speedOfSoundMps">Speed of sound in m/s, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double PeakHz(int n, double pathDifferenceM, double speedOfSoundMps = SpeedOfSound.NominalMps)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(n);
        Positive.Check(pathDifferenceM, nameof(pathDifferenceM));
        Positive.Check(speedOfSoundMps, nameof(speedOfSoundMps));
        return n * speedOfSoundMps / pathDifferenceM;
    }
}
