using System.Globalization;
using System.Text;

namespace Quarterlight.Crew.Language;

/// <summary>Makes text from outside safe to read and to repeat.</summary>
public static class CrewText
{
    /// <summary>Longest question that is read, in characters; the rest is left out.</summary>
    public const int LongestQuestion = 400;

    /// <summary>Longest name that is repeated in an answer, in characters.</summary>
    public const int LongestName = 80;

    /// <summary>Longest sentence taken over from the planner, in characters.</summary>
    public const int LongestSentence = 500;

    private const string Markup = "*_`~|<>[]{}\\";

    /// <summary>
    /// Text as one line without control or direction-changing characters, markup or the sign that mentions people, and
    /// no longer than the limit.
    /// </summary>
    /// <param name="text">Any text.</param>
    /// <param name="longest">Most characters to keep, above 0.</param>
    public static string Clean(string text, int longest = LongestQuestion)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longest);
        var clean = new StringBuilder(Math.Min(text.Length, longest));
        bool space = false;
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (clean.Length >= longest)
            {
                break;
            }

            // Left out without a gap, or an invisible character would break a word in two.
            if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.Format)
            {
                continue;
            }

            if (IsGap(rune))
            {
                space = clean.Length > 0;
                continue;
            }

            if (space)
            {
                clean.Append(' ');
                space = false;
            }

            clean.Append(rune.ToString());
        }

        return clean.Length > longest ? clean.ToString(0, longest) : clean.ToString();
    }

    private static bool IsGap(Rune rune) =>
        Rune.IsWhiteSpace(rune) || rune.Value == '@' || rune == Rune.ReplacementChar || (rune.IsAscii && Markup.Contains((char)rune.Value, StringComparison.Ordinal))
        || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
