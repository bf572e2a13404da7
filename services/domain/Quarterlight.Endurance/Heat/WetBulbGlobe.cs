namespace Quarterlight.Endurance.Heat;

/// <summary>Wet-bulb globe temperature and the occupational limits on it.</summary>
/// <remarks>ISO 7243 for the sums; NIOSH publication 2016-106, section 8.1, for the limits (means over an hour, healthy adults).</remarks>
public static class WetBulbGlobe
{
    // Skin of the person that the metabolic rate in met is for, from memory: a standard adult of 1.8 m2 at 58.15 W/m2.
    private const double WattsPerMet = 58.15 * 1.8;

    /// <summary>Out of the sun: 0.7 wet bulb + 0.3 globe, degrees Celsius.</summary>
    public static double ShadeC(double wetBulbC, double globeC) => (0.7 * wetBulbC) + (0.3 * globeC);

    /// <summary>In the sun: 0.7 wet bulb + 0.2 globe + 0.1 air, degrees Celsius.</summary>
    public static double SunC(double wetBulbC, double globeC, double airC) => (0.7 * wetBulbC) + (0.2 * globeC) + (0.1 * airC);

    /// <summary>Recommended exposure limit, for people used to heat, degrees Celsius.</summary>
    /// <param name="metabolicW">Metabolic rate, watts, above 0.</param>
    public static double ExposureLimitC(double metabolicW) => 56.7 - (11.5 * Math.Log10(metabolicW));

    /// <summary>Recommended alert limit, for people not used to heat, degrees Celsius.</summary>
    /// <param name="metabolicW">Metabolic rate, watts, above 0.</param>
    public static double AlertLimitC(double metabolicW) => 59.9 - (14.1 * Math.Log10(metabolicW));

    /// <summary>Metabolic rate in watts from met.</summary>
    public static double MetabolicW(double met) => met * WattsPerMet;
}
