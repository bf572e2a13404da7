using System.Text.RegularExpressions;

namespace Quarterlight.Crew.Language;

/// <summary>A temperature as said.</summary>
/// <param name="Celsius">Degrees Celsius.</param>
/// <param name="Index">Word with the number.</param>
/// <param name="InFahrenheit">True when it was said in Fahrenheit, or can only be meant so.</param>
public sealed record TemperatureSaid(double Celsius, int Index, bool InFahrenheit);

/// <summary>Reads temperatures: with their unit, or bare in the crew's own.</summary>
public static partial class TemperatureReader
{
    // No air is hotter, so a bare number above it is Fahrenheit whatever the crew reads.
    private const double HottestC = 55;

    private static readonly HashSet<string> Degrees = Lexicon.Words("degree degrees deg degs");
    private static readonly HashSet<string> NoTemperature = Lexicon.Words("past to k");
    private static readonly HashSet<string> Outside = Lexicon.Words("out outside outdoors");

    /// <summary>Every temperature said, in order.</summary>
    /// <param name="text">The question as typed, for the sign.</param>
    /// <param name="tokens">Its words.</param>
    /// <param name="units">Units a number without one is in.</param>
    /// <param name="bare">True when "at 30" may be one.</param>
    public static IReadOnlyList<TemperatureSaid> Find(string text, IReadOnlyList<Token> tokens, UnitPreference units, bool bare = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tokens);
        HashSet<string> below = [.. Negative().Matches(text).Select(m => m.Groups[1].Value)];
        var found = new List<TemperatureSaid>();
        for (int i = 0; i < tokens.Count; i++)
        {
            if (Tens(tokens, i) is { } tens)
            {
                bool old = units == UnitPreference.Imperial || tens > HottestC;
                found.Add(new TemperatureSaid(old ? Math.Round((tens - 32) * 5 / 9, 6) : tens, i, old));
                continue;
            }

            if (tokens[i].Number is not { } number)
            {
                continue;
            }

            bool minus = below.Contains(tokens[i].Word) || (i > 0 && tokens[i - 1].Is("minus"));
            Token? next = i + 1 < tokens.Count ? tokens[i + 1] : null;
            bool degrees = next is not null && next.IsAny(Degrees);
            Token? unit = degrees ? (i + 2 < tokens.Count ? tokens[i + 2] : null) : next;
            bool? fahrenheit = unit?.Word switch { "f" or "fahrenheit" => true, "c" or "celsius" or "centigrade" => false, _ => null };
            bool north = unit?.Word is "north" or "south" or "east" or "west" or "n" or "s" || (i > 0 && tokens[i - 1].Word is "heading" or "facing" or "latitude");
            bool outside = next is not null && (next.IsAny(Outside) || (next.Word is "in" && i + 3 < tokens.Count && tokens[i + 2].Is("the") && tokens[i + 3].Is("shade")));
            string before = i > 1 && tokens[i - 1].Word is "of" or "is" or "at" or "about" or "around" ? tokens[i - 2].Word : i > 0 ? tokens[i - 1].Word : "";
            bool led = before is "temperature" or "temperatures" or "temp" or "temps" or "ambient" or "thermometer" or "pushing" or "touching" or "hitting" && (next is null || !QuantityReader.IsUnit(next) && !next.IsAny(NoTemperature));
            bool cold = next?.Word is "below" && !(i + 2 < tokens.Count && tokens[i + 2].Word is "the" or "that" or "it");
            bool cooledTo = i > 0 && tokens[i - 1].Is("to") && number is >= 10 and <= 90 && tokens.Take(i).TakeLast(6).Any(t => t.IsAny(ForecastWords.Cooling)) && (next is null || (next.Number is null && !QuantityReader.IsUnit(next) && !next.IsAny(NoTemperature)));
            outside |= next is { Word: "today" or "tomorrow" } && (i == 0 || tokens[i - 1].Number is null && tokens[i - 1].Word is "is" or "its" or "it" or "be" or "about" or "around" or "to" or "at" || led);
            bool alone = bare && i > 0 && tokens[i - 1].Word is "at" or "minus" or "by" or "in" && (next is null || next.Word is "and" or "with" or "how");
            alone |= number is >= 10 and <= 120 && i == 0 && next?.Word is "and" or "but" && tokens.Any(t => t.Word is "cloudy" or "overcast" or "sunny" or "humid" or "humidity" or "sun" or "clouds" or "windy");
            alone |= bare && next is null && i is 1 or 0 && number is > 24 and <= 120;
            if (north || (fahrenheit is null && !degrees && !outside && !alone && !led && !cold && !cooledTo && !(minus && (next is null || next.Number is null && !QuantityReader.IsUnit(next)))))
            {
                continue;
            }

            double value = minus || cold ? -number : number;
            bool f = fahrenheit ?? (units == UnitPreference.Imperial || value > HottestC);
            found.Add(new TemperatureSaid(f ? Math.Round((value - 32) * 5 / 9, 6) : value, i, f));
        }

        return found;
    }

    // "Low thirties", "mid 90s", "high eighties": two, five and eight above the ten (judgement).
    private static double? Tens(IReadOnlyList<Token> tokens, int i)
    {
        Token token = tokens[i];
        double? ten = token.Number is { } number && number % 10 == 0 && i + 1 < tokens.Count && tokens[i + 1].Is("s") ? number
            : token.Number is null && token.Word.EndsWith("ties", StringComparison.Ordinal) && NumberWords.TryRead(token.Word[..^3] + "y", out double written) && NumberWords.IsTens(token.Word[..^3] + "y") ? written : null;
        string before = i > 0 ? tokens[i - 1].Word : "";
        return ten + before switch { "low" or "lower" or "early" => 2, "mid" or "middle" => 5, "high" or "upper" or "late" => 8, "the" => 5, _ => null };
    }

    [GeneratedRegex(@"(?<![\w\d)])[-−](\d+(?:[.,]\d+)?)", RegexOptions.CultureInvariant)]
    private static partial Regex Negative();
}
