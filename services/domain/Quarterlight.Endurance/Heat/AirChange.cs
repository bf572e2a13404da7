namespace Quarterlight.Endurance.Heat;

/// <summary>How much air a car exchanges with outside when its fan is off, and how its skin loses heat.</summary>
/// <remarks>
/// Leaks: 0.5 an hour standing, growing with the air speed to 2.6 at 50 km/h and 5.9 at 130 km/h (judgement, inside the 1.5 to 7 that measured carbon
/// dioxide with recirculation implies, Gladyszewska-Fiedoruk 2011). Open flap: ram air in proportion to the speed (judgement, inside the published 0.42 to 76).
/// Windows: single-sided wind ventilation, 0.025 A v (Warren and Parkins 1985, from memory).
/// Skin: wind coefficient 5.7 + 3.8 v up to 5 m/s, then rising as v^0.78 (Jurges, from memory), inside 8 W/(m2 K), in series.
/// </remarks>
public static class AirChange
{
    private const double RestPerHour = 0.5, LeakPerHourPerMPerS = 0.15, RamPerHourPerMPerS = 0.4;
    private const double WindowM2 = 0.3, WindowCoefficient = 0.025, InsideWPerM2K = 8, MixWindMPerS = 0.3;

    // Skin of a 3 m3 cabin so that a light wind of 2 m/s gives the 45 W/K fitted to a parked car (reference fit, only ratios identified).
    private const double SkinM2 = 9, ReferenceVolumeM3 = 3;

    /// <summary>Speed of the air past the car, m/s, from wind and driving; directions are taken as square to each other.</summary>
    public static double AirSpeedMPerS(double windMPerS, double speedKmPerHour) => Math.Sqrt((windMPerS * windMPerS) + (speedKmPerHour * speedKmPerHour / 12.96));

    /// <summary>Air exchanged through leaks, flap and windows, m3/s.</summary>
    /// <param name="volumeM3">Air in the cabin, m3.</param>
    /// <param name="windMPerS">Wind, m/s.</param>
    /// <param name="speedKmPerHour">Speed of the car, km/h.</param>
    /// <param name="openWindows">Windows down, 0 to 4.</param>
    /// <param name="flapOpen">True when the fresh-air flap is open.</param>
    public static double FlowM3PerS(double volumeM3, double windMPerS, double speedKmPerHour, double openWindows, bool flapOpen)
    {
        double air = AirSpeedMPerS(windMPerS, speedKmPerHour);
        double perHour = RestPerHour + (LeakPerHourPerMPerS * air) + (flapOpen ? RamPerHourPerMPerS * speedKmPerHour / 3.6 : 0);
        return (perHour * volumeM3 / 3600) + (openWindows * WindowM2 * WindowCoefficient * Math.Max(air, MixWindMPerS));
    }

    /// <summary>Heat through the skin, W/K.</summary>
    /// <param name="volumeM3">Air in the cabin, m3; the skin grows with its power 2/3.</param>
    /// <param name="airSpeedMPerS">Air past the car, m/s.</param>
    public static double SkinWPerK(double volumeM3, double airSpeedMPerS)
    {
        double outside = airSpeedMPerS <= 5 ? 5.7 + (3.8 * airSpeedMPerS) : 24.7 * Math.Pow(airSpeedMPerS / 5, 0.78);
        return SkinM2 * Math.Pow(volumeM3 / ReferenceVolumeM3, 2.0 / 3) / ((1 / InsideWPerM2K) + (1 / outside));
    }
}
