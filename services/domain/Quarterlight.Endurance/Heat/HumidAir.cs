namespace Quarterlight.Endurance.Heat;

/// <summary>Water in air at sea level.</summary>
/// <remarks>Saturation over water: Magnus form of Alduchov and Eskridge 1996, within 0.4 % from -40 to 50 C.</remarks>
public static class HumidAir
{
    /// <summary>Air pressure in pascals.</summary>
    public const double PressurePa = 101_325;

    /// <summary>Density of cabin air, kg/m3.</summary>
    public const double DensityKgPerM3 = 1.19;

    /// <summary>Heat of a kilogram of air, J/(kg K).</summary>
    public const double HeatJPerKgK = 1006;

    /// <summary>Heat that turns a kilogram of water to vapour, J/kg.</summary>
    public const double LatentJPerKg = 2.45e6;

    /// <summary>Saturation vapour pressure in pascals.</summary>
    public static double SaturationPa(double temperatureC) => 610.94 * Math.Exp(17.625 * temperatureC / (243.04 + temperatureC));

    /// <summary>Kilograms of water with each kilogram of dry air.</summary>
    public static double RatioFromPressure(double vapourPa) => 0.622 * vapourPa / (PressurePa - vapourPa);

    /// <summary>Vapour pressure in pascals from the ratio.</summary>
    public static double PressureFromRatio(double ratio) => ratio * PressurePa / (0.622 + ratio);

    /// <summary>Ratio of air at a relative humidity.</summary>
    public static double Ratio(double temperatureC, double relativeHumidityPercent) => RatioFromPressure(SaturationPa(temperatureC) * relativeHumidityPercent / 100);

    /// <summary>Relative humidity in percent, 0 to 100.</summary>
    public static double RelativeHumidityPercent(double temperatureC, double ratio) => Math.Clamp(100 * PressureFromRatio(ratio) / SaturationPa(temperatureC), 0, 100);
}
