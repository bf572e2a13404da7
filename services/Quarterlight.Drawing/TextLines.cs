namespace Quarterlight.Drawing;

/// <summary>Breaks text into lines.</summary>
internal static class TextLines
{
    private const string Ellipsis = "…";

    /// <summary>Lines no wider than a width in pixels, broken between words; a word wider than that is broken inside.</summary>
    public static List<string> Wrap(string text, float widthPx, bool bold)
    {
        var lines = new List<string>();
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(w, widthPx, bold)))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && DrawingFonts.Width(longer, PictureSheet.TextPx, bold) > widthPx)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    /// <summary>The same, but no more than so many lines; what does not fit is cut after a word and ends in an ellipsis.</summary>
    public static List<string> WrapAtMost(string text, float widthPx, bool bold, int mostLines)
    {
        List<string> lines = Wrap(text, widthPx, bold);
        if (lines.Count <= mostLines)
        {
            return lines;
        }

        string last = lines[mostLines - 1];
        while (last.Length > 0 && DrawingFonts.Width(last + Ellipsis, PictureSheet.TextPx, bold) > widthPx)
        {
            int space = last.LastIndexOf(' ');
            last = last[..(space > 0 ? space : last.Length - 1)];
        }

        return [.. lines.Take(mostLines - 1), last.TrimEnd(',', ';', ':', '.', ' ') + Ellipsis];
    }

    private static IEnumerable<string> Pieces(string word, float widthPx, bool bold)
    {
        int start = 0;
        for (int end = 1; end <= word.Length; end++)
        {
            bool last = end == word.Length;
            if (last || (DrawingFonts.Width(word[start..(end + 1)], PictureSheet.TextPx, bold) > widthPx && !char.IsLowSurrogate(word[end])))
            {
                yield return word[start..end];
                start = end;
            }
        }
    }
}
