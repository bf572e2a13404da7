using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Keeping;

/// <summary>A length as written.</summary>
/// <param name="Metres">Its value.</param>
/// <param name="Units">The units it was written in.</param>
internal readonly record struct LengthSaid(double Metres, UnitPreference Units)
{
    /// <summary>The kept length when it would be shown just as this was written, so that nothing is lost by showing it; else this one.</summary>
    public double OrKept(double? kept) => kept is { } before && LengthWords.Say(before, Units) == LengthWords.Say(Metres, Units) ? before : Metres;
}

/// <summary>Lengths measured with a tape, as written and as shown.</summary>
internal static partial class LengthWords
{
    private const int InchesPerFoot = 12;

    /// <summary>Metres of a length that stands alone, such as "145 cm", "1.45 m", "4 ft 9 1/2 in" or 57"; null when it is none or has no unit.</summary>
    public static LengthSaid? Read(string text)
    {
        if (FeetAndInches().Match(text) is { Success: true } imperial)
        {
            double feet = imperial.Groups["ft"].Success ? Number(imperial.Groups["ft"].Value) : 0;
            double inches = imperial.Groups["in"].Success ? Number(imperial.Groups["in"].Value) : 0;
            double part = imperial.Groups["top"].Success ? Number(imperial.Groups["top"].Value) / Number(imperial.Groups["bottom"].Value) : 0;
            double metres = ((feet * InchesPerFoot) + inches + part) * UnitText.MetresPerInch;
            return double.IsFinite(metres) ? new(metres, UnitPreference.Imperial) : null;
        }

        if (MetricLength().Match(text) is not { Success: true } metric)
        {
            return null;
        }

        double value = Number(metric.Groups[1].Value);
        string unit = metric.Groups[2].Value;
        bool small = unit.Equals("mm", StringComparison.OrdinalIgnoreCase) || unit.StartsWith("milli", StringComparison.OrdinalIgnoreCase);
        return new(small ? value / 1000 : unit[0] is 'c' or 'C' ? value / 100 : value, UnitPreference.Metric);
    }

    /// <summary>A length to a millimetre, or to a tenth of an inch, in words that can be read again.</summary>
    public static string Say(double metres, UnitPreference units)
    {
        if (units == UnitPreference.Metric)
        {
            return Wordings.Say($"{metres * 100:0.#} cm");
        }

        double inches = Math.Round(metres / UnitText.MetresPerInch, 1, MidpointRounding.AwayFromZero);
        int feet = (int)(inches / InchesPerFoot);
        return feet < 2 ? Wordings.Say($"{inches:0.#} in") : Wordings.Say($"{feet} ft {inches - (feet * InchesPerFoot):0.#} in");
    }

    private static double Number(string digits) => double.Parse(digits.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?:(?<ft>\d{1,3}(?:[.,]\d+)?)\s*(?:ft|foot|feet|')\.?(?:\s*(?:and\s+)?(?<in>\d{1,4}(?:[.,]\d+)?)(?:\s+(?<top>\d)/(?<bottom>[248]|16))?\s*(?:in|inch|inches|""|'')?\.?)?|(?<in>\d{1,4}(?:[.,]\d+)?)(?:\s+(?<top>\d)/(?<bottom>[248]|16))?\s*(?:in|inch|inches|""|'')\.?)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex FeetAndInches();

    [GeneratedRegex(@"^(\d{1,6}(?:[.,]\d{1,6})?)\s*(mm|cm|m|millimet(?:re|er)s?|centimet(?:re|er)s?|met(?:re|er)s?)\.?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex MetricLength();
}
