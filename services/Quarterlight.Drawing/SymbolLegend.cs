using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>What the signs of a picture mean, in two columns under a rule.</summary>
internal sealed class SymbolLegend
{
    public const string Series = "legend";
    public const float ColumnPx = 584;

    private const float RowPx = 56;
    private const float SymbolPx = 70;

    private readonly List<(string Words, Action<PictureSheet, SKPoint> Symbol)> entries = [];

    public float HeightPx => entries.Count == 0 ? 0 : (((entries.Count + 1) / 2) * RowPx) + 20;

    /// <summary>Adds an entry.</summary>
    /// <param name="occurs">Whether the sign occurs in the picture; else it is left out.</param>
    /// <param name="words">What it means.</param>
    /// <param name="symbol">Draws it round a point.</param>
    public void Add(bool occurs, string words, Action<PictureSheet, SKPoint> symbol)
    {
        if (occurs)
        {
            entries.Add((words, symbol));
        }
    }

    public void Draw(PictureSheet sheet, float top)
    {
        if (entries.Count == 0)
        {
            return;
        }

        using SKPaint rule = PictureSheet.Pen(Palette.CarLine, 1.5f);
        sheet.Line(new(SheetLayout.MarginPx, top), new(SheetLayout.WidthPx - SheetLayout.MarginPx, top), rule);
        for (int i = 0; i < entries.Count; i++)
        {
            float left = SheetLayout.MarginPx + (i % 2 * ColumnPx), middle = top + 14 + (((i / 2) + 0.5f) * RowPx);
            entries[i].Symbol(sheet, new(left + (SymbolPx / 2) - 4, middle));
            sheet.LabelFrom(entries[i].Words, left + SymbolPx, middle, Series);
        }
    }
}
