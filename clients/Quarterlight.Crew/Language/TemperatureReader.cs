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
            bool alone = bare && i > 0 && tokens[i - 1].Word is "at" or "minus" or "by" or "in" && (next is null || next.Word is "and" or "with" or "how");
            if (north || (fahrenheit is null && !degrees && !outside && !alone && !(minus && next is null)))
            {
                continue;
            }

            double value = minus ? -number : number;
            bool f = fahrenheit ?? (units == UnitPreference.Imperial || value > HottestC);
            found.Add(new TemperatureSaid(f ? Math.Round((value - 32) * 5 / 9, 6) : value, i, f));
        }

        return found;
    }

    [GeneratedRegex(@"(?<![\w\d)])[-−](\d+(?:[.,]\d+)?)", RegexOptions.CultureInvariant)]
    private static partial Regex Negative();
}
