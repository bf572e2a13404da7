namespace Quarterlight.Endurance.Heat;

/// <summary>Carbon dioxide in a cabin whose air is well mixed.</summary>
/// <remarks>Mass balance V dC/dt = G - q (C - Co), solved exactly.</remarks>
public static class CarbonDioxide
{
    /// <summary>Carbon dioxide outside, ppm.</summary>
    public const double OutsidePpm = 420;

    /// <summary>What an adult at 1.2 met breathes out, litres a second (ASHRAE 62.1, from memory).</summary>
    public const double AdultLPerS = 0.0052;

    /// <summary>Threshold of concern, ppm (abstract of a 2018 study of carbon dioxide in vehicles).</summary>
    public const double StalePpm = 2500;

    /// <summary>Occupational limit, mean over eight hours, ppm (from memory).</summary>
    public const double FoulPpm = 5000;

    /// <summary>Concentration after some time, ppm.</summary>
    /// <param name="startPpm">Concentration at the start, ppm.</param>
    /// <param name="sourceLPerS">What people give off, litres a second.</param>
    /// <param name="volumeM3">Air in the cabin, m3, above 0.</param>
    /// <param name="changesPerHour">Exchange with outside, volumes an hour, 0 or more.</param>
    /// <param name="minutes">Time, minutes.</param>
    public static double After(double startPpm, double sourceLPerS, double volumeM3, double changesPerHour, double minutes)
    {
        double rise = sourceLPerS * 1000 * 60 / volumeM3, rate = changesPerHour / 60; // ppm a minute, 1 a minute
        if (rate * minutes < 1e-9)
        {
            return startPpm + (rise * minutes);
        }

        double steady = OutsidePpm + (rise / rate);
        return steady + ((startPpm - steady) * Math.Exp(-rate * minutes));
    }
}
