using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>Where the sun stands.</summary>
/// <remarks>
/// J. Meeus, Astronomical Algorithms, 2nd edition, chapter 25 (low accuracy) with chapter 12 for sidereal time, as NOAA's solar calculator uses it;
/// refraction by Saemundsson at sea level (chapter 16). About 0.01 degrees from 1900 to 2100.
/// </remarks>
public static class SolarPosition
{
    private const double J2000 = 2451545.0, UnixEpochJd = 2440587.5;
    private const double DeltaTDays = 67.0 / 86400; // Dynamical less universal time about now; the sun moves 0.0008 degrees in it.

    /// <summary>Years it holds for.</summary>
    public static ValidRange Year { get; } = new(1900, 2100, "");

    /// <summary>Height of the sun's centre above the horizon, refraction included, and compass bearing.</summary>
    /// <param name="time">The moment.</param>
    /// <param name="latitudeDeg">Latitude in degrees, north positive.</param>
    /// <param name="longitudeDeg">Longitude in degrees, east positive.</param>
    public static (double ElevationDeg, double AzimuthDeg) Of(DateTimeOffset time, double latitudeDeg, double longitudeDeg)
    {
        (double x, double y, double z) = Direction(time, latitudeDeg, longitudeDeg);
        double elevation = Angles.RadToDeg(Math.Asin(Math.Clamp(z, -1, 1))), azimuth = Angles.RadToDeg(Math.Atan2(x, y));
        return (elevation + RefractionDeg(elevation), azimuth < 0 ? azimuth + 360 : azimuth);
    }

    /// <summary>Unit vector to the sun: east, north, up; without refraction.</summary>
    internal static (double East, double North, double Up) Direction(DateTimeOffset time, double latitudeDeg, double longitudeDeg)
    {
        double days = (time - DateTimeOffset.UnixEpoch).TotalDays + UnixEpochJd - J2000, t = (days + DeltaTDays) / 36525;
        double l0 = 280.46646 + (t * (36000.76983 + (0.0003032 * t))); // (25.2)
        double m = Angles.DegToRad(357.52911 + (t * (35999.05029 - (0.0001537 * t)))); // (25.3)
        double c = (Math.Sin(m) * (1.914602 - (t * (0.004817 + (0.000014 * t))))) + (Math.Sin(2 * m) * (0.019993 - (0.000101 * t))) + (Math.Sin(3 * m) * 0.000289);
        double node = Angles.DegToRad(125.04 - (1934.136 * t)), nutation = -0.00478 * Math.Sin(node);
        double lambda = Angles.DegToRad(l0 + c - 0.00569 + nutation);
        double epsilon = Angles.DegToRad(23.4392911 - (0.0130042 * t) + (0.00256 * Math.Cos(node))); // (22.2), (25.8)
        double sinDecl = Math.Sin(epsilon) * Math.Sin(lambda), cosDecl = Math.Sqrt(1 - (sinDecl * sinDecl));
        double ascension = Math.Atan2(Math.Cos(epsilon) * Math.Sin(lambda), Math.Cos(lambda));
        double sidereal = 280.46061837 + (360.98564736629 * days) + (0.000387933 * t * t) + (nutation * Math.Cos(epsilon)); // (12.4), apparent
        double hour = Angles.DegToRad((sidereal + longitudeDeg) % 360) - ascension;
        double phi = Angles.DegToRad(latitudeDeg), cosHour = Math.Cos(hour);
        return (
            -cosDecl * Math.Sin(hour),
            (sinDecl * Math.Cos(phi)) - (cosDecl * cosHour * Math.Sin(phi)),
            (sinDecl * Math.Sin(phi)) + (cosDecl * cosHour * Math.Cos(phi)));
    }

    // (16.4), at 1010 hPa and 10 C; nothing once the sun is below the horizon by more than its refraction.
    private static double RefractionDeg(double elevationDeg) => elevationDeg < -0.6
        ? 0
        : 1.02 / 60 / Math.Tan(Angles.DegToRad(elevationDeg + (10.3 / (elevationDeg + 5.11))));
}
