using System.Globalization;
using System.Text;

namespace Quarterlight.Drawing;

/// <summary>Makes names that users gave safe to draw and to say: one line, no marks that steer the direction or hide, not too long.</summary>
internal static class UserText
{
    private const int MostElements = 200;

    /// <summary>One line without control, format and unpaired characters; runs of spaces become one.</summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder();
        foreach (Rune rune in text.EnumerateRunes())
        {
            bool blank = Rune.IsWhiteSpace(rune) || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
            if (blank)
            {
                _ = clean.Length > 0 && clean[^1] != ' ' ? clean.Append(' ') : clean;
            }
            else if (Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Format or UnicodeCategory.PrivateUse or UnicodeCategory.Surrogate or UnicodeCategory.OtherNotAssigned) && rune != Rune.ReplacementChar)
            {
                clean.Append(rune.ToString());
            }
        }

        return clean.ToString().TrimEnd();
    }

    /// <summary>Cut to so many letters, marks and their letter kept together, ellipsis included.</summary>
    public static string Cut(string text, int mostElements)
    {
        int[] starts = StringInfo.ParseCombiningCharacters(text);
        return starts.Length <= mostElements ? text : text[..starts[mostElements - 1]].TrimEnd() + "…";
    }

    /// <summary>Cut to a width in pixels, ellipsis included.</summary>
    public static string Fit(string text, float widthPx, bool bold = false)
    {
        string cut = Cut(text, MostElements);
        if (DrawingFonts.Width(cut, PictureSheet.TextPx, bold) <= widthPx)
        {
            return cut;
        }

        // The most that fit lie from the one up to, but without, the other.
        int fits = 1, tooMany = StringInfo.ParseCombiningCharacters(cut).Length;
        while (fits + 1 < tooMany)
        {
            int middle = (fits + tooMany) / 2;
            (fits, tooMany) = DrawingFonts.Width(Cut(text, middle), PictureSheet.TextPx, bold) <= widthPx ? (middle, tooMany) : (fits, middle);
        }

        return Cut(text, fits);
    }
}
