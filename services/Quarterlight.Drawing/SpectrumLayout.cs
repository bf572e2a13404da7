using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>How carriers are labelled: in full when there is room, else by number with a list below the map.</summary>
internal sealed record CarrierLabels(bool Numbered, int Rows, float RowPx, IReadOnlyList<float> Centers, IReadOnlyList<float> Widths)
{
    private const float LinePx = 40;
    private const float Gap = 16;
    private const float LongestPx = 210;
    private const int MostFullRows = 2;

    /// <summary>The two lines of a label in full.</summary>
    public static (string Name, string Frequency) Full(SpectrumView view, SpectrumChannel channel) => (channel.Label, view.Frequency(channel.FrequencyMHz));

    /// <summary>Number of a carrier, counted from the lowest.</summary>
    public static string Number(int index) => FigureWords.Number(index + 1);

    public static CarrierLabels For(SpectrumView view, SpectrumAxis axis)
    {
        float[] full = [.. view.Shown.Select(c => Math.Max(Width(c.Label), Width(view.Frequency(c.FrequencyMHz))) + 16)];
        float room = axis.ToPx - axis.FromPx;
        int rows = full.Length == 0 ? 1 : RowsFor(full.Max(), full.Length, room);
        if (full.Length == 0 || (rows <= MostFullRows && full.Max() <= LongestPx))
        {
            return Spread(view, axis, false, rows, (2 * LinePx) + 14, full);
        }

        float[] numbers = [.. view.Shown.Select((_, i) => Math.Max(44, Width(Number(i)) + 14))];
        return Spread(view, axis, true, RowsFor(numbers.Max(), numbers.Length, room), LinePx + 14, numbers);
    }

    private static int RowsFor(float widest, int count, float room) => Math.Max(1, (int)Math.Ceiling((widest + Gap) * (count - 1) / Math.Max(1, room - widest)));

    private static CarrierLabels Spread(SpectrumView view, SpectrumAxis axis, bool numbered, int rows, float rowPx, float[] widths)
    {
        float widest = widths.Length == 0 ? 0 : widths.Max();
        float[] wanted = [.. view.Shown.Select(c => axis.At(c.FrequencyMHz))];
        // Labels of one row stand a whole width apart; those between them stand in the rows above.
        return new(numbered, rows, rowPx, LabelRow.Spread(wanted, (widest + Gap) / rows, axis.FromPx + (widest / 2), axis.ToPx - (widest / 2)), widths);
    }

    private static float Width(string words) => DrawingFonts.Width(words, PictureSheet.TextPx, true);
}

/// <summary>Where the parts of a spectrum picture go.</summary>
internal sealed record SpectrumLayout(IReadOnlyList<string> TitleLines, IReadOnlyList<string> CropLines, float CropTop, float LabelsTop, CarrierLabels Labels, SKRect Bars, SKRect Third, SKRect Fifth, float KeyTop, SpectrumAxis Axis)
{
    public const float LinePx = 42;
    public const float LaneLabelPx = 66;
    private const float Left = SheetLayout.MarginPx + LaneLabelPx;
    private const float Right = SheetLayout.WidthPx - SheetLayout.MarginPx - 8;
    private const float BarsPx = 300;
    private const float LeadersPx = 70;
    private const float LanePx = 84;
    private const float AxisPx = 104;

    public static SpectrumLayout For(SpectrumView view)
    {
        var axis = new SpectrumAxis(view.Stretched, Left, Right);
        IReadOnlyList<string> title = PictureTitle.Lines(view.Map.Headline);
        List<string> crop = TextLines.Wrap(view.CropWords(), SheetLayout.WidthPx - (2 * SheetLayout.MarginPx), false);
        var labels = CarrierLabels.For(view, axis);
        float cropTop = SheetLayout.MarginPx + (title.Count * PictureTitle.LinePx) + 6;
        float labelsTop = cropTop + (crop.Count * LinePx) + 12;
        float y = labelsTop + (labels.Rows * labels.RowPx) + LeadersPx;
        var bars = new SKRect(Left, y, Right, y + BarsPx);
        var third = new SKRect(Left, bars.Bottom, Right, bars.Bottom + LanePx);
        bool fifths = view.Map.Products.Any(p => p.Order >= 5);
        var fifth = new SKRect(Left, third.Bottom, Right, third.Bottom + (fifths ? LanePx : 0));
        return new(title, crop, cropTop, labelsTop, labels, bars, third, fifth, fifth.Bottom + AxisPx + (view.Blocks.Count > 0 ? LinePx : 0), axis);
    }
}
