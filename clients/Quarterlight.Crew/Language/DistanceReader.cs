using System.Globalization;
using System.Text.RegularExpressions;

namespace Quarterlight.Crew.Language;

/// <summary>A distance as said.</summary>
/// <param name="Metres">Distance in metres.</param>
/// <param name="CarLengths">Car lengths when it was said in them.</param>
/// <param name="Start">First word of it.</param>
/// <param name="Count">Words of it.</param>
public sealed record DistanceSaid(double Metres, double? CarLengths, int Start, int Count);

/// <summary>Reads distances along a road.</summary>
public static class DistanceReader
{
    /// <summary>What a car length is taken as, in metres: a mid-size car with a little air (judgement).</summary>
    public const double MetresPerCarLength = 5;

    /// <summary>What a city block is taken as, in metres (judgement; they run from about 80 to 270).</summary>
    public const double MetresPerBlock = 100;

    /// <summary>Metres in a foot: 0.3048 exactly (yard and pound agreement of 1959).</summary>
    public const double MetresPerFoot = 0.3048;

    /// <summary>Metres in a yard: 0.9144 exactly (yard and pound agreement of 1959).</summary>
    public const double MetresPerYard = 0.9144;

    private const double MetresPerMile = QuantityReader.KilometresPerMile * 1000;

    /// <summary>Every distance said, in order. "3 m" behind a field strength is not one.</summary>
    public static IReadOnlyList<DistanceSaid> Find(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var found = new List<DistanceSaid>();
        for (int i = 0; i < tokens.Count; i++)
        {
            if (Unit(tokens, i, out int words) is not { } unit || (i > 0 && IsFieldUnit(tokens[i - 1])))
            {
                continue;
            }

            // "A mile and a half", "mile and a quarter".
            double more = i + 3 < tokens.Count && words == 1 && tokens[i + 1].Is("and") && tokens[i + 2].Is("a") ? tokens[i + 3].Word switch { "half" => 0.5, "quarter" => 0.25, _ => 0 } : 0;
            (double Value, int Start)? amount = Amount(tokens, i) ?? (more > 0 && tokens[i].Word is "mile" or "kilometre" or "kilometer" ? (1, i) : null);
            if (amount is { } a)
            {
                double value = a.Value >= 1 ? a.Value + more : a.Value;
                int end = i + words + (value > a.Value ? 3 : 0);
                found.Add(new DistanceSaid(value * unit, unit == MetresPerCarLength ? value : null, a.Start, end - a.Start));
            }
        }

        return found;
    }

    private static bool IsFieldUnit(Token token) => token.Word is "uv" or "µv" or "μv" or "mv" or "dbuv" or "dbµv" or "dbμv" or "microvolts" or "microvolt";

    private static double? Unit(IReadOnlyList<Token> tokens, int i, out int words)
    {
        words = 1;
        Token token = tokens[i];
        if (token.Number is not null)
        {
            return null;
        }

        switch (token.Word)
        {
            case "m" or "metre" or "metres" or "meter" or "meters":
                return 1;
            case "km" or "kms" or "klick" or "klicks" or "kilometre" or "kilometres" or "kilometer" or "kilometers":
                return 1000;
            case "ft" or "foot" or "feet":
                return MetresPerFoot;
            case "yd" or "yds" or "yard" or "yards":
                return MetresPerYard;
            case "mi" or "mile" or "miles":
                return MetresPerMile;
            case "block" or "blocks" when i + 1 < tokens.Count && tokens[i + 1].Word is "back" or "behind" or "away" or "off":
                return MetresPerBlock;
            case "carlength" or "carlengths":
                return MetresPerCarLength;
            case "car" or "cars" when i + 1 < tokens.Count && tokens[i + 1].Word is "length" or "lengths":
                words = 2;
                return MetresPerCarLength;
            case "cars" when i + 1 < tokens.Count && tokens[i + 1].Word is "back" or "behind":
                return MetresPerCarLength;
            default:
                return null;
        }
    }

    // "200", "a quarter", "half a", "three quarters of a", "a".
    private static (double Value, int Start)? Amount(IReadOnlyList<Token> tokens, int unit)
    {
        int i = unit - 1;
        if (i >= 0 && (tokens[i].Is("couple") || (tokens[i].Is("of") && i > 0 && tokens[i - 1].Is("couple"))))
        {
            return (2, tokens[i].Is("of") ? i - 1 : i);
        }

        bool article = false;
        while (i >= 0 && tokens[i].Word is "a" or "an" or "of" or "one")
        {
            article |= !tokens[i].Is("of");
            i--;
        }

        // "One and a half"; a larger number is joined with its half already.
        if (i > 1 && tokens[i].Is("half") && tokens[i - 1].Is("a") && tokens[i - 2].Is("and"))
        {
            return i > 2 && tokens[i - 3].Is("one") ? (1.5, i - 3) : null;
        }

        if (i >= 0 && tokens[i].Word is "half")
        {
            return (0.5, i);
        }

        if (i >= 0 && tokens[i].Word is "quarter" or "quarters")
        {
            return i > 0 && tokens[i - 1].Number is 3 ? (0.75, i - 1) : (0.25, i);
        }

        if (i >= 0 && tokens[i].Word is "third" or "thirds" or "tenth" && i < unit - 1)
        {
            double part = tokens[i].Is("tenth") ? 0.1 : 1.0 / 3;
            return i > 0 && tokens[i - 1].Number is 2 ? (2 * part, i - 1) : (part, i);
        }

        if (i >= 0 && i == unit - 1 && tokens[i].Number is { } number)
        {
            return (Thousands(tokens[i].Word) ?? number, i);
        }

        return article && unit > 0 && tokens[unit - 1].Word is "a" or "an" or "one" ? (1, unit - 1) : null;
    }

    // "1,500 m" is one and a half kilometres, not one and a half metres.
    private static double? Thousands(string word) => Regex.IsMatch(word, @"^[1-9]\d{0,2},\d{3}$", RegexOptions.CultureInvariant)
        ? double.Parse(word.Replace(",", "", StringComparison.Ordinal), CultureInfo.InvariantCulture) : null;
}
