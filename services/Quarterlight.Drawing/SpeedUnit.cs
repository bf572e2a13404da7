namespace Quarterlight.Drawing;

/// <summary>In what speeds are written.</summary>
public enum SpeedUnit
{
    /// <summary>Kilometres an hour.</summary>
    KmPerHour,

    /// <summary>International miles of 1609.344 m an hour.</summary>
    MilesPerHour,
}

/// <summary>Writes speeds the way the pictures do.</summary>
internal static class SpeedWords
{
    private const double MileKm = 1.609344;

    /// <summary>A speed in km/h as a whole figure in a unit.</summary>
    public static string Figure(double kmPerHour, SpeedUnit unit) => FigureWords.Number(unit == SpeedUnit.MilesPerHour ? kmPerHour / MileKm : kmPerHour);

    /// <summary>Short sign of a unit: km/h or mph.</summary>
    public static string Sign(SpeedUnit unit) => unit == SpeedUnit.MilesPerHour ? "mph" : "km/h";

    /// <summary>A speed as words, such as 50 km/h.</summary>
    public static string Of(double kmPerHour, SpeedUnit unit) => $"{Figure(kmPerHour, unit)} {Sign(unit)}";
}
