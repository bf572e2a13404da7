namespace Quarterlight.Acoustics;

/// <summary>How fast sound travels in air.</summary>
public static class SpeedOfSound
{
    /// <summary>Speed in m/s that the sound field and the closed forms of this room use: air at about 20 degrees.</summary>
    public const double NominalMps = 343;

    /// <summary>Speed in m/s at an air temperature in degrees Celsius: 343.2 sqrt((273.15 + t)/293.15), the form of ISO 9613-1.</summary>
    /// <param name="airTemperatureC">Above -273.15 degrees Celsius.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is at or below absolute zero, or not a number.</exception>
    public static double AtCelsius(double airTemperatureC) => airTemperatureC > -273.15
        ? 343.2 * Math.Sqrt((273.15 + airTemperatureC) / 293.15)
        : throw new ArgumentOutOfRangeException(nameof(airTemperatureC), airTemperatureC, "Above absolute zero, -273.15 degrees Celsius.");
}
