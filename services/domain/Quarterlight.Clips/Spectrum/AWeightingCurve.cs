namespace Quarterlight.Clips.Spectrum;

/// <summary>A-weighting as a factor of power. The rooms do not know each other; the acoustics room has the same curve in dB.</summary>
/// <remarks>IEC 61672-1:2013, Annex E, poles at 20.598997, 107.65265, 737.86223 and 12194.217 Hz; 1 at 1 kHz.</remarks>
public static class AWeightingCurve
{
    private const double P1 = 20.598997 * 20.598997;
    private const double P2 = 107.65265 * 107.65265;
    private const double P3 = 737.86223 * 737.86223;
    private const double P4 = 12194.217 * 12194.217;
    private static readonly double s_atOneKilohertz = Response(1e6);

    /// <summary>Factor of power at a frequency in Hz, 0 at 0 Hz.</summary>
    public static double PowerFactor(double frequencyHz) => Response(frequencyHz * frequencyHz) / s_atOneKilohertz;

    private static double Response(double f2) => P4 * P4 * f2 * f2 * f2 * f2 / ((f2 + P1) * (f2 + P1) * (f2 + P2) * (f2 + P3) * (f2 + P4) * (f2 + P4));
}
