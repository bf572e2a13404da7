using System.Globalization;
using System.Text.RegularExpressions;

namespace Quarterlight.Drawing;

/// <summary>In what distances are written.</summary>
public enum DistanceUnit
{
    /// <summary>Metres.</summary>
    Metres,

    /// <summary>International feet of 0.3048 m.</summary>
    Feet,
}

/// <summary>Writes distances, shares and levels the way the pictures do.</summary>
internal static partial class FigureWords
{
    /// <summary>A sentence whose distances in metres are written in a unit.</summary>
    public static string Rewritten(string sentence, DistanceUnit unit) => unit == DistanceUnit.Metres ? sentence
        : Metres().Replace(sentence, match => Distance(double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture), unit));

    /// <summary>Length in metres of one unit.</summary>
    public static double LengthM(DistanceUnit unit) => unit == DistanceUnit.Feet ? ScaleBar.FootM : 1;

    /// <summary>Short sign of a unit: m or ft.</summary>
    public static string Sign(DistanceUnit unit) => unit == DistanceUnit.Feet ? "ft" : "m";

    /// <summary>A distance in metres as words in a unit, such as 45 m; with one decimal below ten, to the ten from a thousand.</summary>
    public static string Distance(double distanceM, DistanceUnit unit)
    {
        double value = distanceM / LengthM(unit);
        // Judged after rounding, so that 9.97 is 10 and not 10.0.
        string digits = Math.Round(value, 1) < 10 ? Number(value, "0.#") : Number(value < 1000 ? value : 10 * Math.Round(value / 10));
        return $"{digits} {Sign(unit)}";
    }

    /// <summary>A number without a sign on zero.</summary>
    public static string Number(double value, string format = "0")
    {
        string text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith('-') && text.AsSpan(1).IndexOfAnyInRange('1', '9') < 0 && double.IsFinite(value) ? text[1..] : text;
    }

    /// <summary>A share as per cent, such as 99 %; never rounded up to certainty.</summary>
    public static string Share(double fraction) => fraction switch
    {
        > 0.999 => "over 99.9 %",
        < 0.001 => "under 0.1 %",
        _ => $"{Number(100 * fraction, "0.#")} %",
    };

    [GeneratedRegex(@"(\d+(?:\.\d+)?) m(?![\w/])", RegexOptions.CultureInvariant)]
    private static partial Regex Metres();
}
