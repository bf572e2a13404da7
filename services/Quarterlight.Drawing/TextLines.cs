namespace Quarterlight.Drawing;

/// <summary>Breaks text into lines.</summary>
internal static class TextLines
{
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
