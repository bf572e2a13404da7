namespace Quarterlight.Drawing;

/// <summary>The answer in bold at the head of a picture.</summary>
internal static class PictureTitle
{
    public const string Series = "title";
    public const float LinePx = 44;
    private const int MostLines = 2;

    public static IReadOnlyList<string> Lines(string headline) =>
        TextLines.WrapAtMost(headline, SheetLayout.WidthPx - (2 * SheetLayout.MarginPx), true, MostLines);

    public static void Draw(PictureSheet sheet, IReadOnlyList<string> lines)
    {
        for (int i = 0; i < lines.Count; i++)
        {
            sheet.LabelFrom(lines[i], SheetLayout.MarginPx, SheetLayout.MarginPx + ((i + 0.5f) * LinePx), Series, true);
        }
    }
}
