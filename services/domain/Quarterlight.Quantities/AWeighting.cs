namespace Quarterlight.Quantities;

/// <summary>A-weighting by frequency. The octave bands of the project take the rounded table instead: <see cref="OctaveBands.AWeightingDb"/>.</summary>
/// <remarks>IEC 61672-1:2013, Annex E, poles at 20.598997, 107.65265, 737.86223 and 12194.217 Hz.</remarks>
public static class AWeighting
{
    private const double P1 = 20.598997 * 20.598997;
    private const double P2 = 107.65265 * 107.65265;
    private const double P3 = 737.86223 * 737.86223;
    private const double P4 = 12194.217 * 12194.217;
    private static readonly double s_atOneKilohertz = Response(1e6);

    /// <summary>Weighting in dB, 0 at 1 kHz.</summary>
    /// <param name="frequencyHz">Frequency in Hz, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not a number above 0.</exception>
    public static double AtHertz(double frequencyHz)
    {
        if (!(frequencyHz > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(frequencyHz), frequencyHz, "A number above 0.");
        }

        return 20 * Math.Log10(Response(frequencyHz * frequencyHz) / s_atOneKilohertz);
    }

    /// <summary>The same as a factor of power: 1 at 1 kHz, 0 at 0 Hz.</summary>
    /// <param name="frequencyHz">Frequency in Hz, 0 or more.</param>
    public static double PowerFactor(double frequencyHz)
    {
        double amplitude = Response(frequencyHz * frequencyHz) / s_atOneKilohertz;
        return amplitude * amplitude;
    }

    private static double Response(double f2) => P4 * f2 * f2 / ((f2 + P1) * Math.Sqrt((f2 + P2) * (f2 + P3)) * (f2 + P4));
}
