namespace Quarterlight.Radio.Propagation;

/// <summary>Free space, and how power, field and level hang together in it.</summary>
/// <remarks>
/// ITU-R P.525: loss 20 lg(4πd/λ); field e = sqrt(30 p)/d with p the EIRP in W. Level in a matched antenna: p = e²/Z0 · G λ²/4π. Gain of a half-wave
/// dipole 1.641 (2.15 dBi), as the constants of ITU-R P.525 and P.1546 together imply.
/// </remarks>
public static class FreeSpace
{
    /// <summary>Speed of light in m/s.</summary>
    public const double SpeedOfLightMps = 299_792_458;

    /// <summary>Impedance of free space in ohms.</summary>
    public const double ImpedanceOhm = 376.730313668;

    /// <summary>Power gain of a half-wave dipole over an isotropic antenna (derived from the dipole's pattern).</summary>
    public const double DipoleGain = 1.6409;

    /// <summary>The same in dBi, 2.15: ERP is EIRP less this.</summary>
    public static readonly double DipoleGainDbi = 10 * Math.Log10(DipoleGain);

    /// <summary>Wavelength in metres.</summary>
    /// <param name="frequencyMHz">Frequency in MHz, above 0.</param>
    public static double WavelengthM(double frequencyMHz) => SpeedOfLightMps / (frequencyMHz * 1e6);

    /// <summary>Loss in dB between isotropic antennas.</summary>
    /// <param name="frequencyMHz">Frequency in MHz, above 0.</param>
    /// <param name="distanceM">Distance in metres, above 0.</param>
    public static double LossDb(double frequencyMHz, double distanceM) =>
        20 * Math.Log10(4 * Math.PI * distanceM / WavelengthM(frequencyMHz));

    /// <summary>Field in dB over a microvolt per metre at a distance from a transmitter.</summary>
    /// <param name="eirpDbm">Equivalent isotropic radiated power in dBm.</param>
    /// <param name="distanceM">Distance in metres, above 0.</param>
    public static double FieldDbuvPerM(double eirpDbm, double distanceM) =>
        120 + (10 * Math.Log10(30 * WattsFromDbm(eirpDbm))) - (20 * Math.Log10(distanceM));

    /// <summary>EIRP in dBm that makes a field at a distance.</summary>
    /// <param name="microvoltsPerM">Field in µV/m, above 0.</param>
    /// <param name="distanceM">Distance in metres, above 0.</param>
    public static double EirpDbmFromField(double microvoltsPerM, double distanceM)
    {
        double volts = microvoltsPerM * 1e-6 * distanceM;
        return DbmFromWatts(volts * volts / 30);
    }

    /// <summary>Distance in metres at which the field has fallen to a value.</summary>
    public static double DistanceForFieldM(double eirpDbm, double fieldDbuvPerM) =>
        Math.Pow(10, (FieldDbuvPerM(eirpDbm, 1) - fieldDbuvPerM) / 20);

    /// <summary>Level in dBm that a field gives in a matched antenna.</summary>
    /// <param name="fieldDbuvPerM">Field in dB over a microvolt per metre.</param>
    /// <param name="frequencyMHz">Frequency in MHz, above 0.</param>
    /// <param name="gainDbi">Gain of the antenna in dBi.</param>
    public static double LevelDbm(double fieldDbuvPerM, double frequencyMHz, double gainDbi = 0) =>
        fieldDbuvPerM - LevelConstant(frequencyMHz) + gainDbi;

    /// <summary>Field in dB over a microvolt per metre that gives a level in dBm in a matched antenna.</summary>
    public static double FieldFromLevelDbuvPerM(double levelDbm, double frequencyMHz, double gainDbi = 0) =>
        levelDbm + LevelConstant(frequencyMHz) - gainDbi;

    /// <summary>Antenna factor in dB(1/m) into 50 Ω.</summary>
    public static double AntennaFactorDb(double frequencyMHz, double gainDbi = 0)
    {
        double wavelength = WavelengthM(frequencyMHz);
        return (10 * Math.Log10(4 * Math.PI * ImpedanceOhm / (50 * wavelength * wavelength))) - gainDbi;
    }

    /// <summary>Voltage in µV across a load for a power in dBf (dB over a femtowatt).</summary>
    public static double MicrovoltsFromDbf(double dbf, double loadOhm) => Math.Sqrt(Math.Pow(10, dbf / 10) * 1e-15 * loadOhm) * 1e6;

    /// <summary>Power in dBm.</summary>
    public static double DbmFromWatts(double watts) => 10 * Math.Log10(watts * 1e3);

    /// <summary>Power in W.</summary>
    public static double WattsFromDbm(double dbm) => Math.Pow(10, dbm / 10) / 1e3;

    // Level = field - this, for an isotropic antenna: 77.2 + 20 lg f(MHz).
    private static double LevelConstant(double frequencyMHz)
    {
        double wavelength = WavelengthM(frequencyMHz);
        return 120 - 30 - (10 * Math.Log10(wavelength * wavelength / (4 * Math.PI * ImpedanceOhm)));
    }
}
