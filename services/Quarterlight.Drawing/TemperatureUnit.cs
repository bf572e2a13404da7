namespace Quarterlight.Drawing;

/// <summary>In what temperatures are written.</summary>
public enum TemperatureUnit
{
    /// <summary>Degrees Celsius.</summary>
    Celsius,

    /// <summary>Degrees Fahrenheit.</summary>
    Fahrenheit,
}

/// <summary>Writes temperatures the way the pictures do.</summary>
internal static class TemperatureWords
{
    /// <summary>A temperature in degrees Celsius as a figure in a unit.</summary>
    public static double Value(double celsius, TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? (celsius * 9 / 5) + 32 : celsius;

    /// <summary>Short sign of a unit: °C or °F.</summary>
    public static string Sign(TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? "°F" : "°C";

    /// <summary>A temperature as words, such as 21 °C.</summary>
    public static string Of(double celsius, TemperatureUnit unit) => $"{FigureWords.Number(Value(celsius, unit))} {Sign(unit)}";
}
