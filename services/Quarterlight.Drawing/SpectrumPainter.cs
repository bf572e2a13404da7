using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Draws carriers, products, excluded blocks and the frequency axis.</summary>
internal sealed class SpectrumPainter(PictureSheet sheet, SpectrumLayout layout, SpectrumView view)
{
    public const string CarrierSeries = "carrier", FrequencySeries = "frequency", LaneSeries = "lane", BlockSeries = "block";

    private const float WidestBar = 16, NarrowestBar = 4;

    // Feet of products nearer than this would run into each other; they are left out and the lines stay.
    private const float FootPitch = 17;
    private const float CrossPitch = 20;

    private float Bottom => layout.Fifth.Bottom;

    public void Draw()
    {
        Blocks();
        Guards();
        SpectrumAxisPainter.Draw(sheet, layout);
        Lane(layout.Third, "3rd", view.Products.Where(p => p.Order < 5), SpectrumSymbols.Third);
        if (layout.Fifth.Height > 0)
        {
            Lane(layout.Fifth, "5th", view.Products.Where(p => p.Order >= 5), SpectrumSymbols.Fifth);
        }

        Carriers();
    }

    private void Blocks()
    {
        if (view.Blocks.Count == 0)
        {
            return;
        }

        foreach ((float left, float right) in view.Blocks.SelectMany(b => layout.Axis.Parts(b.LowMHz, b.HighMHz)))
        {
            SpectrumSymbols.Block(sheet, new(left, layout.Bars.Top, right, Bottom));
        }

        float[] middles = [.. view.Blocks.Take(SpectrumKey.MostBlocks).Select(b => layout.Axis.Parts(b.LowMHz, b.HighMHz).First()).Select(p => (p.Left + p.Right) / 2)];
        int[] order = [.. Enumerable.Range(0, middles.Length).OrderBy(i => middles[i])];
        IReadOnlyList<float> centers = LabelRow.Spread([.. order.Select(i => middles[i])], 48, layout.Axis.FromPx + 20, layout.Axis.ToPx - 20);
        using SKPaint pen = PictureSheet.Pen(Palette.CarLine, 2);
        for (int k = 0; k < order.Length; k++)
        {
            sheet.Line(new(middles[order[k]], Bottom), new(centers[k], Bottom + 10), pen);
            sheet.Label(SpectrumKey.BlockLetter(order[k]), SKRect.Create(centers[k] - 20, Bottom + 8, 40, 38), BlockSeries, Palette.Ink, true);
        }
    }

    private void Guards()
    {
        double guard = view.Map.GuardKHz / 1000;
        foreach (SpectrumChannel channel in view.Shown)
        {
            float at = layout.Axis.At(channel.FrequencyMHz), reach = layout.Axis.Length(guard);
            (float left, float right) = (Math.Max(at - reach, layout.Axis.FromPx), Math.Min(at + reach, layout.Axis.ToPx));
            if (right - left >= 4)
            {
                SpectrumSymbols.Guard(sheet, new(left, layout.Bars.Top + 60, right, Bottom));
            }
        }
    }

    private void Lane(SKRect lane, string name, IEnumerable<SpectrumProduct> products, Action<PictureSheet, float, float, float, bool> symbol)
    {
        sheet.LabelFrom(name, SheetLayout.MarginPx, lane.MidY, LaneSeries);
        // Thousands of products fall on a few hundred columns of pixels: one line each, as long as the strongest asks.
        (float X, double? LevelDbm, bool IsHit)[] columns =
        [
            .. products.GroupBy(p => MathF.Round(layout.Axis.At(p.FrequencyMHz) / 2) * 2).Select(g => (g.Key, g.Max(p => p.LevelDbm), g.Any(p => p.IsHit))).OrderBy(c => c.Key),
        ];
        if (columns.Length == 0)
        {
            sheet.LabelFrom("no products", layout.Bars.Left + 12, lane.MidY, LaneSeries);
        }

        double[] levels = [.. columns.Select(c => c.LevelDbm).OfType<double>().Where(double.IsFinite)];
        for (int i = 0; i < columns.Length; i++)
        {
            bool foot = (i == 0 || columns[i].X - columns[i - 1].X >= FootPitch) && (i + 1 == columns.Length || columns[i + 1].X - columns[i].X >= FootPitch);
            symbol(sheet, columns[i].X, lane.Top + 2, lane.Top + 2 + ((lane.Height - 12) * Share(columns[i].LevelDbm)), foot);
        }

        float last = float.NegativeInfinity;
        foreach ((float x, _, _) in columns.Where(c => c.IsHit))
        {
            if (x - last >= CrossPitch)
            {
                SpectrumSymbols.Cross(sheet, new(x, lane.MidY), 12);
                last = x;
            }
        }

        // From 45 % of the lane for the weakest to all of it for the strongest.
        float Share(double? dbm) => dbm is { } level && double.IsFinite(level) && levels.Max() > levels.Min()
            ? (float)(0.45 + (0.55 * (level - levels.Min()) / (levels.Max() - levels.Min())))
            : 0.8f;
    }

    private void Carriers()
    {
        float[] at = [.. view.Shown.Select(c => layout.Axis.At(c.FrequencyMHz))];
        float nearest = at.Zip(at.Skip(1)).Select(p => p.Second - p.First).Where(d => d > 0.5f).DefaultIfEmpty(WidestBar * 2).Min();
        float width = Math.Clamp(0.6f * nearest, NarrowestBar, WidestBar);
        using SKPaint halo = PictureSheet.Pen(Palette.Paper, 5), pen = PictureSheet.Pen(Palette.CarLine, 2);
        for (int i = 0; i < at.Length; i++)
        {
            // A neighbour stands lower than an own carrier, so that its head is free.
            SpectrumChannel channel = view.Shown[i];
            var bar = new SKRect(at[i] - (width / 2), layout.Bars.Top + (channel.IsNeighbour ? 110 : 50), at[i] + (width / 2), layout.Bars.Bottom);
            SKRect label = LabelBox(i);
            float turn = layout.LabelsTop + (layout.Labels.Rows * layout.Labels.RowPx) + 4;
            SKPoint[] leader = [new(at[i], channel is { IsClean: true, IsNeighbour: false } ? bar.Top : bar.Top - 20), new(at[i], layout.Bars.Top + 16), new(label.MidX, turn), new(label.MidX, label.Bottom)];
            sheet.Shape(leader, false, halo);
            sheet.Shape(leader, false, pen);
            if (channel.IsNeighbour)
            {
                SpectrumSymbols.Neighbour(sheet, bar, channel.IsClean);
            }
            else if (channel.IsClean)
            {
                SpectrumSymbols.Clean(sheet, bar);
            }
            else
            {
                SpectrumSymbols.Hit(sheet, bar);
            }
        }

        for (int i = 0; i < at.Length; i++)
        {
            CarrierLabel(i);
        }
    }

    private SKRect LabelBox(int index)
    {
        CarrierLabels labels = layout.Labels;
        float width = labels.Widths[index];
        int row = labels.Rows - 1 - (index % labels.Rows);
        return SKRect.Create(labels.Centers[index] - (width / 2), layout.LabelsTop + (row * labels.RowPx), width, labels.RowPx - 10);
    }

    private void CarrierLabel(int index)
    {
        SKRect box = LabelBox(index);
        SpectrumChannel channel = view.Shown[index];
        if (layout.Labels.Numbered)
        {
            SpectrumKey.Badge(sheet, CarrierLabels.Number(index), box, channel);
            return;
        }

        (string name, string frequency) = CarrierLabels.Full(view, channel);
        sheet.Label(name, new(box.Left, box.Top, box.Right, box.MidY), CarrierSeries, Palette.Ink, true);
        sheet.Label(frequency, new(box.Left, box.MidY, box.Right, box.Bottom), FrequencySeries, Palette.Ink, false);
    }
}
