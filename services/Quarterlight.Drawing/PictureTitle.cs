namespace Quarterlight.Drawing;

/// <summary>The answer in bold at the head of a picture.</summary>
internal static class PictureTitle
{
    public const string Series = "title", NoteSeries = "title note";
    public const float LinePx = 44;
    private const int MostLines = 2;
    private const float FullWidth = SheetLayout.WidthPx - (2 * SheetLayout.MarginPx);

    public static IReadOnlyList<string> Lines(string headline) =>
        TextLines.WrapAtMost(headline, FullWidth, true, MostLines);

    public static void Draw(PictureSheet sheet, IReadOnlyList<string> lines)
    {
        for (int i = 0; i < lines.Count; i++)
        {
            sheet.LabelFrom(lines[i], SheetLayout.MarginPx, SheetLayout.MarginPx + ((i + 0.5f) * LinePx), Series, true);
        }
    }

    /// <summary>Plain lines under the headline, each cut to the sheet's width.</summary>
    public static IReadOnlyList<string> Notes(IEnumerable<string> words) => [.. words.Where(w => w.Length > 0).Select(w => UserText.Fit(UserText.Clean(w), FullWidth))];

    /// <summary>Draws the headline and the lines under it.</summary>
    public static void Draw(PictureSheet sheet, IReadOnlyList<string> lines, IReadOnlyList<string> notes)
    {
        Draw(sheet, lines);
        for (int i = 0; i < notes.Count; i++)
        {
            sheet.LabelFrom(notes[i], SheetLayout.MarginPx, SheetLayout.MarginPx + ((lines.Count + i + 0.5f) * LinePx), NoteSeries);
        }
    }
}
