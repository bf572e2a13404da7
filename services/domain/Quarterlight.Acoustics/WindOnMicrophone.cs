using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>Noise that a steady wind makes in a screened microphone.</summary>
/// <remarks>
/// Strasberg's fit as given by G. P. van den Berg, The sounds of high winds, eq. VIII.2: third-octave level
/// 40 lg V - 23 lg(f D/V) + 15 dB, ±3 dB, low-turbulence flow, 0.1 &lt; f D/V &lt; 5. At a car window or vent the flow is turbulent and
/// the noise higher: a lower bound.
/// </remarks>
public static class WindOnMicrophone
{
    /// <summary>Strouhal numbers the fit holds for, both ends excluded.</summary>
    public static ValidRange Strouhal { get; } = new(0.1, 5, "");

    /// <summary>Third-octave level in dB re 20 µPa; null outside the fit's range or for values that are not above 0.</summary>
    /// <param name="windSpeedMps">Wind speed in m/s, above 0.</param>
    /// <param name="screenDiameterM">Diameter of the screen in metres, above 0.</param>
    /// <param name="frequencyHz">Band centre in Hz, above 0.</param>
    public static double? ThirdOctaveLevelDb(double windSpeedMps, double screenDiameterM, double frequencyHz)
    {
        double strouhal = frequencyHz * screenDiameterM / windSpeedMps;
        bool physical = windSpeedMps > 0 && screenDiameterM > 0;
        return physical && strouhal > Strouhal.Min && strouhal < Strouhal.Max
            ? (40 * Math.Log10(windSpeedMps)) - (23 * Math.Log10(strouhal)) + 15
            : null;
    }
}
