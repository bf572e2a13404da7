using System.Globalization;
using System.Text;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// Makes any text safe to put into a message: it shows as it was written, with no formatting, no mention, no embedded address. What the platform reads as markup is
/// listed under Message Formatting in its reference; how its programs treat numbered lists, quotes and headings is from memory.
/// </summary>
internal static class Markdown
{
    /// <summary>Stands between characters that would be read together; shows as nothing.</summary>
    public const char Nothing = '\u200B';

    private const string Always = "\\*_~|`[]";
    private const string AtLineStart = ">#-+";

    /// <summary>One line without characters that move, hide or break text.</summary>
    /// <param name="text">Any text; line ends become spaces, half a surrogate pair becomes the replacement character.</param>
    public static string Plain(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var plain = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            switch (Rune.GetUnicodeCategory(rune))
            {
                case UnicodeCategory.Format or UnicodeCategory.PrivateUse:
                    break;
                case UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.SpaceSeparator:
                    plain.Append(' ');
                    break;
                default:
                    plain.Append(rune.ToString());
                    break;
            }
        }

        return plain.ToString().Trim();
    }

    /// <summary>One line that shows as the text does when it is plain.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="startsLine">True when it stands at the start of a line, where more is markup.</param>
    public static string Escape(string text, bool startsLine = true)
    {
        string plain = Plain(text);
        var escaped = new StringBuilder(plain.Length + 16);
        int afterNumber = startsLine ? NumberAtStart(plain) : -1;
        for (int i = 0; i < plain.Length; i++)
        {
            char c = plain[i];
            bool backslash = Always.Contains(c, StringComparison.Ordinal)
                || (i == 0 && startsLine && AtLineStart.Contains(c, StringComparison.Ordinal))
                || i == afterNumber
                || (c == '(' && i > 0 && plain[i - 1] == ']')
                || (c == ':' && (Follows(plain, i, "//") || StartsShortcode(plain, i)));
            if (backslash)
            {
                escaped.Append('\\');
            }

            escaped.Append(c);
            if (c == '<' || (c == '@' && (Follows(plain, i, "everyone") || Follows(plain, i, "here"))))
            {
                escaped.Append(Nothing);
            }
        }

        return escaped.ToString();
    }

    private static bool Follows(string text, int at, string what) => string.Compare(text, at + 1, what, 0, what.Length, StringComparison.OrdinalIgnoreCase) == 0;

    // "12." or "12)" at the start makes a numbered list.
    private static int NumberAtStart(string text)
    {
        int i = 0;
        while (i < text.Length && char.IsAsciiDigit(text[i]))
        {
            i++;
        }

        return i > 0 && i < text.Length && text[i] is '.' or ')' ? i : -1;
    }

    // The first colon of ":name:", which would show as a small picture.
    private static bool StartsShortcode(string text, int colon)
    {
        int i = colon + 1;
        while (i < text.Length && (char.IsAsciiLetterOrDigit(text[i]) || text[i] is '_' or '+' or '-' or '~'))
        {
            i++;
        }

        return i > colon + 1 && i < text.Length && text[i] == ':';
    }
}
