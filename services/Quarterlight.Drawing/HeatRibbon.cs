using Quarterlight.Endurance.Heat;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The day in lanes: when it rolls, when it cools, and when people are comfortable.</summary>
internal sealed class HeatRibbon(PictureSheet sheet, HeatLayout layout, HeatView view)
{
    public const string LaneSeries = "lane", NoneSeries = "none";

    private const float LeastPx = 2;
    private const float InsetPx = 5;

    public void Draw()
    {
        Lane(layout.Roll, "roll", "no take stays under the limit", Spans(HeatBlockKind.Roll), box => HeatSymbols.Block(sheet, HeatBlockKind.Roll, box));
        Lane(layout.Cool, "cool", "", Spans(HeatBlockKind.Cool), box => HeatSymbols.Block(sheet, HeatBlockKind.Cool, box));
        foreach ((double from, double to) in Spans(HeatBlockKind.Precool))
        {
            HeatSymbols.Block(sheet, HeatBlockKind.Precool, BoxOf(layout.Cool, from, to));
        }

        Lane(layout.Comfort, "comfort", view.Samples.Count == 0 ? "" : view.Samples.All(s => HeatView.Finite(s.Pmv) is null) ? "not told: outside the range of PMV" : "never", view.ComfortSpans, box => HeatSymbols.Comfort(sheet, box));
    }

    private IReadOnlyList<(double FromMin, double ToMin)> Spans(HeatBlockKind kind) => [.. view.Blocks.Where(b => b.Kind == kind).Select(b => (b.StartMin, b.EndMin))];

    private SKRect BoxOf(SKRect lane, double from, double to)
    {
        float left = layout.Time.Within(from), right = Math.Max(layout.Time.Within(to), left + LeastPx);
        return new(left, lane.Top + InsetPx, Math.Min(right, lane.Right), lane.Bottom - InsetPx);
    }

    private void Lane(SKRect lane, string words, string none, IReadOnlyList<(double FromMin, double ToMin)> spans, Action<SKRect> draw)
    {
        foreach ((double from, double to) in spans)
        {
            draw(BoxOf(lane, from, to));
        }

        PlotPainter.Frame(sheet, lane);
        sheet.LabelFrom(words, lane.Left - 14 - DrawingFonts.Width(words, PictureSheet.TextPx, false), lane.MidY + 1, LaneSeries);
        if (spans.Count == 0 && none.Length > 0)
        {
            sheet.LabelFrom(none, lane.Left + 16, lane.MidY + 1, NoneSeries);
        }
    }
}
