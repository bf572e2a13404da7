using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Wording;

/// <summary>Lengths, speeds and temperatures in the crew's units.</summary>
public static partial class UnitText
{
    /// <summary>Metres in an inch: 0.0254 exactly (yard and pound agreement of 1959).</summary>
    public const double MetresPerInch = 0.0254;

    private const int InchesPerFoot = 12;

    /// <summary>A length: centimetres below a metre, else metres; inches below two feet, else feet and inches.</summary>
    /// <param name="metres">Length in metres, any sign.</param>
    /// <param name="units">Units to say it in.</param>
    public static string Length(double metres, UnitPreference units)
    {
        if (units == UnitPreference.Metric)
        {
            return Math.Abs(metres) < 0.995 ? Say($"{metres * 100:0} cm") : Say($"{metres:0.00} m");
        }

        double inches = metres / MetresPerInch;
        int whole = (int)Math.Round(Math.Abs(inches), MidpointRounding.AwayFromZero);
        if (whole < 2 * InchesPerFoot)
        {
            return Math.Abs(inches) < 3 ? Say($"{inches:0.0} in") : Say($"{inches:0} in");
        }

        string sign = inches < 0 ? "-" : "";
        int rest = whole % InchesPerFoot;
        return rest == 0 ? Say($"{sign}{whole / InchesPerFoot} ft") : Say($"{sign}{whole / InchesPerFoot} ft {rest} in");
    }

    /// <summary>A road speed.</summary>
    /// <param name="kmPerHour">Speed in km/h.</param>
    /// <param name="units">Units to say it in.</param>
    public static string Speed(double kmPerHour, UnitPreference units) =>
        units == UnitPreference.Metric ? Say($"{kmPerHour:0} km/h") : Say($"{kmPerHour / QuantityReader.KilometresPerMile:0} mph");

    /// <summary>A temperature.</summary>
    /// <param name="celsius">Temperature in degrees Celsius.</param>
    /// <param name="units">Units to say it in.</param>
    public static string Temperature(double celsius, UnitPreference units) =>
        units == UnitPreference.Metric ? Say($"{celsius:0} °C") : Say($"{(celsius * 9 / 5) + 32:0} °F");

    /// <summary>A sentence from the planner with its metric lengths, speeds and temperatures in the crew's units; millimetres stay, as lenses are named by them.</summary>
    public static string Rewrite(string sentence, UnitPreference units)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        if (units == UnitPreference.Metric)
        {
            return sentence;
        }

        // "0.9 to 2.2 m" and "43 cm from the mouth instead of 27" name their unit once: it is written out before it changes.
        string whole = Range().Replace(sentence, "$1 $3 to $2 $3");
        whole = Instead().Replace(whole, "$1 $2$3$4 $2");
        return Metric().Replace(whole, match =>
        {
            double value = double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
            return match.Groups[2].Value switch
            {
                "m" => Length(value, units),
                "cm" => Length(value / 100, units),
                "km/h" => Speed(value, units),
                _ => Temperature(value, units),
            };
        });
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<![\w.])(-?\d+(?:\.\d+)?) ?(km/h|cm|m|°C)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();

    [GeneratedRegex(@"(?<![\w.])(-?\d+(?:\.\d+)?) to (-?\d+(?:\.\d+)?) ?(km/h|cm|m|°C)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Range();

    [GeneratedRegex(@"(?<![\w.])(\d+(?:\.\d+)?) ?(km/h|cm|m)( [^.;,\d]*instead of )(\d+(?:\.\d+)?)(?![\w.]| ?(?:km/h|cm|m|dB|°)(?!\w))", RegexOptions.CultureInvariant)]
    private static partial Regex Instead();
}
