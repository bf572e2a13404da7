using Quarterlight.Quantities;

namespace Quarterlight.Radio.Reception;

/// <summary>How much man-made noise there is.</summary>
public enum NoiseEnvironment
{
    /// <summary>City.</summary>
    City,

    /// <summary>Residential area.</summary>
    Residential,

    /// <summary>Country.</summary>
    Rural,

    /// <summary>Quiet country.</summary>
    QuietRural,
}

/// <summary>Noise at a receiver: man-made, of the antenna's losses, and its own.</summary>
/// <remarks>
/// ITU-R P.372, man-made noise Fa = c - d lg f(MHz), 0.3 to 250 MHz (coefficients as several public programs have them alike). Above 250 MHz the same
/// line is carried on down
/// to 0 dB: too much rather than too little, and nothing from about 600 MHz.
/// </remarks>
public static class ReceiverNoise
{
    /// <summary>Frequencies the man-made noise is published for.</summary>
    public static ValidRange PublishedMHz { get; } = new(0.3, 250, "MHz");

    private const double ThermalDbmPerHz = -173.98; // 10 lg(k · 290 K) in dBm.

    private static readonly (double C, double D)[] s_manMade = [(76.8, 27.7), (72.5, 27.7), (67.2, 27.7), (53.6, 28.6)];

    /// <summary>Median man-made noise figure in dB over thermal noise at 290 K.</summary>
    public static double ManMadeDb(double frequencyMHz, NoiseEnvironment environment)
    {
        (double c, double d) = s_manMade[(int)environment];
        double fa = c - (d * Math.Log10(frequencyMHz));
        return PublishedMHz.Contains(frequencyMHz) ? fa : Math.Max(fa, 0);
    }

    /// <summary>Noise in dBm at the receiver's input, in its filter.</summary>
    /// <param name="frequencyMHz">Frequency in MHz.</param>
    /// <param name="bandwidthKHz">Filter in kHz.</param>
    /// <param name="environment">Surroundings.</param>
    /// <param name="noiseFigureDb">Noise figure of the receiver in dB.</param>
    /// <param name="antennaGainDbi">Gain of the antenna with cable and shielding, dBi: what it falls short of 0 it loses of outside noise as
    /// well.</param>
    public static double LevelDbm(double frequencyMHz, double bandwidthKHz, NoiseEnvironment environment, double noiseFigureDb, double antennaGainDbi)
    {
        double efficiency = Math.Min(1, Math.Pow(10, antennaGainDbi / 10));
        double outside = Math.Pow(10, ManMadeDb(frequencyMHz, environment) / 10);
        double factor = (efficiency * outside) + (1 - efficiency) + Math.Pow(10, noiseFigureDb / 10) - 1;
        return ThermalDbmPerHz + (10 * Math.Log10(bandwidthKHz * 1e3 * factor));
    }
}
