using System.Globalization;

namespace Quarterlight.Crew.Commands;

/// <summary>Bounds of what an option takes: the contract's, so that a bad value is refused before anything is asked.</summary>
internal static class OptionRange
{
    /// <summary>Bounds in words.</summary>
    public static string Words(double least, double most, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{least:0.######} to {most:0.######}{(unit.Length == 0 ? "" : " ")}{unit}");

    /// <summary>What is said when it holds, else that the value is out of range.</summary>
    /// <param name="value">The value.</param>
    /// <param name="least">Least that is taken.</param>
    /// <param name="most">Most that is taken.</param>
    /// <param name="range">The bounds in words.</param>
    /// <param name="said">What is said with the value.</param>
    public static OptionReading Held(double value, double least, double most, string range, CommandSaid said) =>
        value >= least && value <= most ? said : OptionReading.Refused($"is out of range, {range}");
}
