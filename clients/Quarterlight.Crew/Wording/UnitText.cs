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

    // From here on a distance along a road, not a length in a car: judgement.
    private const double ShortestDistanceM = 10;
    private const double LongestInSmallUnitM = 1000;
    private const double LongestInFeet = 200;

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

    /// <summary>A distance along a road: metres and kilometres, or feet, yards and miles, in round figures.</summary>
    /// <param name="metres">Distance in metres, 0 or more.</param>
    /// <param name="units">Units to say it in.</param>
    /// <param name="roundDown">True for a limit, which rounding must not stretch.</param>
    public static string Distance(double metres, UnitPreference units, bool roundDown = false)
    {
        if (units == UnitPreference.Metric)
        {
            return metres < LongestInSmallUnitM ? Say($"{Round(metres, metres < 10 ? 0.5 : 1, roundDown):0.#} m") : Say($"{Round(metres / 1000, 0.1, roundDown):0.0} km");
        }

        double feet = metres / DistanceReader.MetresPerFoot;
        return feet < LongestInFeet ? Say($"{Round(feet, 1, roundDown):0} ft")
            : metres < LongestInSmallUnitM ? Say($"{Round(metres / DistanceReader.MetresPerYard, 1, roundDown):0} yd")
            : Say($"{Round(metres / (QuantityReader.KilometresPerMile * 1000), 0.1, roundDown):0.0} miles");
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

    /// <summary>A sentence from the planner with its metric lengths, distances, speeds and temperatures in the crew's units; millimetres stay, as lenses are named by them, and so do Hz, dB and dBm.</summary>
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
                "m" => Math.Abs(value) < ShortestDistanceM ? Length(value, units) : Distance(value, units),
                "km" => Distance(value * 1000, units),
                "cm" => Length(value / 100, units),
                "km/h" => Speed(value, units),
                _ => Temperature(value, units),
            };
        });
    }

    private static double Round(double value, double step, bool down)
    {
        double steps = value / step;
        return (down ? Math.Floor(steps + 1e-9) : Math.Round(steps, MidpointRounding.AwayFromZero)) * step;
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // The distance of a legal field limit stays as the law states it.
    [GeneratedRegex(@"(?<![\w.]|V/m at )(-?\d+(?:\.\d+)?) ?(km/h|km|cm|m|°C)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();

    [GeneratedRegex(@"(?<![\w.])(-?\d+(?:\.\d+)?) to (-?\d+(?:\.\d+)?) ?(km/h|km|cm|m|°C)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Range();

    [GeneratedRegex(@"(?<![\w.])(\d+(?:\.\d+)?) ?(km/h|cm|m)( [^.;,\d]*instead of )(\d+(?:\.\d+)?)(?![\w.]| ?(?:km/h|cm|m|dB|°)(?!\w))", RegexOptions.CultureInvariant)]
    private static partial Regex Instead();
}
