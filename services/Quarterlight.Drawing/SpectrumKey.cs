using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The words under a spectrum map: what the signs mean, numbered carriers, excluded blocks.</summary>
internal sealed class SpectrumKey
{
    public const string LegendSeries = SymbolLegend.Series, ListSeries = "list";

    /// <summary>Excluded blocks named one by one; the rest are counted.</summary>
    public const int MostBlocks = 12;

    private const float LinePx = 46;
    private const float ColumnPx = SymbolLegend.ColumnPx;
    private const float BadgePx = 62;
    private const float CrossPx = 34;
    private const int MostEntryLines = 3;

    private readonly SymbolLegend legend = new();
    private readonly List<(int Index, SpectrumChannel Channel, List<string> Lines)> list = [];
    private readonly List<string> blocks = [];
    private readonly SpectrumLayout layout;

    public SpectrumKey(SpectrumLayout layout, SpectrumView view)
    {
        this.layout = layout;
        Signs(view);
        if (layout.Labels.Numbered)
        {
            list = [.. view.Shown.Select((c, i) => (i, c, TextLines.WrapAtMost(Entry(view, c), ColumnPx - BadgePx - CrossPx - 16, false, MostEntryLines)))];
        }

        float width = SheetLayout.WidthPx - (2 * SheetLayout.MarginPx);
        blocks = [.. view.Blocks.Take(MostBlocks).SelectMany((b, i) => TextLines.WrapAtMost($"{BlockLetter(i)}: not {SpectrumView.Edge(b.LowMHz)} to {SpectrumView.Edge(b.HighMHz)} MHz, {b.Reason}", width, false, 2))];
        if (view.Blocks.Count > MostBlocks)
        {
            blocks.Add($"and {view.Blocks.Count - MostBlocks} more excluded blocks");
        }
    }

    public float HeightPx => legend.HeightPx + ListPx + (blocks.Count * LinePx) + SheetLayout.MarginPx;

    private float ListPx => list.Count == 0 ? 0 : Math.Max(ColumnHeight(0), ColumnHeight(1)) + 16;

    private int FirstOfSecondColumn => (list.Count + 1) / 2;

    public static string BlockLetter(int index) => ((char)('A' + index)).ToString();

    /// <summary>Number of a carrier: white on solid when own, on paper with an edge when a neighbour's.</summary>
    public static void Badge(PictureSheet sheet, string words, SKRect box, SpectrumChannel channel)
    {
        using SKPaint fill = PictureSheet.Brush(channel.IsNeighbour ? Palette.Paper : Palette.Curve), edge = PictureSheet.Pen(Palette.Ink, 2.5f);
        sheet.Canvas.DrawRoundRect(box, 6, 6, fill);
        if (channel.IsNeighbour)
        {
            sheet.Canvas.DrawRoundRect(box, 6, 6, edge);
        }

        sheet.Label(words, box, SpectrumPainter.CarrierSeries, channel.IsNeighbour ? Palette.Ink : Palette.Paper, true);
    }

    public void Draw(PictureSheet sheet)
    {
        float y = layout.KeyTop;
        legend.Draw(sheet, y);
        y += legend.HeightPx;
        DrawList(sheet, y);
        y += ListPx;
        foreach (string line in blocks)
        {
            sheet.LabelFrom(line, SheetLayout.MarginPx, y + (LinePx / 2), ListSeries);
            y += LinePx;
        }
    }

    private static string Entry(SpectrumView view, SpectrumChannel channel) =>
        $"{view.Frequency(channel.FrequencyMHz)} MHz {channel.Label}{(channel.IsNeighbour ? ", neighbour" : "")}{(channel.IsClean ? "" : ", hit")}";

    private void DrawList(PictureSheet sheet, float top)
    {
        float y = top;
        for (int i = 0; i < list.Count; i++)
        {
            bool second = i >= FirstOfSecondColumn;
            y = i == FirstOfSecondColumn ? top : y;
            float left = SheetLayout.MarginPx + (second ? ColumnPx : 0);
            (int index, SpectrumChannel channel, List<string> lines) = list[i];
            // The numbers on the map are labels too; here they only repeat.
            Badge(sheet, CarrierLabels.Number(index), SKRect.Create(left, y + 3, 52, LinePx - 6), channel);
            if (!channel.IsClean)
            {
                SpectrumSymbols.Cross(sheet, new(left + BadgePx + 12, y + (LinePx / 2)), 10);
            }

            foreach (string line in lines)
            {
                sheet.LabelFrom(line, left + BadgePx + (channel.IsClean ? 0 : CrossPx), y + (LinePx / 2), ListSeries);
                y += LinePx;
            }
        }
    }

    private float ColumnHeight(int column) =>
        LinePx * (column == 0 ? list.Take(FirstOfSecondColumn) : list.Skip(FirstOfSecondColumn)).Sum(e => e.Lines.Count);

    private void Signs(SpectrumView view)
    {
        static SKRect Bar(SKPoint at) => new(at.X - 8, at.Y - 12, at.X + 8, at.Y + 24);
        static SKRect Box(SKPoint at) => new(at.X - 26, at.Y - 18, at.X + 26, at.Y + 18);
        legend.Add(view.Shown.Any(c => !c.IsNeighbour && c.IsClean), "carrier, clean", (s, p) => SpectrumSymbols.Clean(s, new(p.X - 8, p.Y - 22, p.X + 8, p.Y + 24)));
        legend.Add(view.Shown.Any(c => !c.IsNeighbour && !c.IsClean), "carrier, hit by a product", (s, p) => SpectrumSymbols.Hit(s, Bar(p)));
        legend.Add(view.Shown.Any(c => c.IsNeighbour), "neighbour's carrier", (s, p) => SpectrumSymbols.Neighbour(s, Bar(p), true));
        bool levels = view.Products.Select(p => p.LevelDbm).OfType<double>().Distinct().Skip(1).Any();
        legend.Add(view.Products.Any(p => p.Order < 5), "3rd-order product (lane 3rd)", (s, p) => SpectrumSymbols.Third(s, p.X, p.Y - 22, p.Y + 20, true));
        legend.Add(view.Products.Any(p => p.Order >= 5), "5th-order product (lane 5th)", (s, p) => SpectrumSymbols.Fifth(s, p.X, p.Y - 22, p.Y + 20, true));
        legend.Add(levels, "longer: stronger", (s, p) =>
        {
            SpectrumSymbols.Third(s, p.X - 8, p.Y - 22, p.Y - 4, false);
            SpectrumSymbols.Third(s, p.X + 8, p.Y - 22, p.Y + 22, false);
        });
        legend.Add(view.Products.Any(p => p.IsHit), "product on a carrier", (s, p) => SpectrumSymbols.Cross(s, p, 13));
        legend.Add(view.Blocks.Count > 0, "not to be used", (s, p) => SpectrumSymbols.Block(s, Box(p)));
        float guardPx = layout.Axis.Length(view.Map.GuardKHz / 500);
        legend.Add(view.Map.GuardKHz > 0 && view.Shown.Count > 0 && guardPx >= 4, $"guard of {FigureWords.Number(view.Map.GuardKHz, "0.#")} kHz", (s, p) => SpectrumSymbols.Guard(s, Box(p)));
    }
}
