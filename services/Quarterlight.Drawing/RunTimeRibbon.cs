using System.Globalization;

using Quarterlight.Endurance;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The call sheet and the changes along the day, with its end.</summary>
internal sealed class RunTimeRibbon(PictureSheet sheet, RunTimeLayout layout, RunTimeView view)
{
    public const string LaneSeries = "lane", TakeSeries = "take", ChangeSeries = "change", EndSeries = "end";

    private const float LeastPx = 3;
    private const float InsetPx = 6;
    private const float BadgeGap = 6;

    public void Draw()
    {
        End();
        sheet.LabelFrom($"By {view.Day.AxisWords}", SheetLayout.MarginPx, layout.CaptionMiddle, PlotPainter.CaptionSeries, true);
        if (view.Takes.Count > 0)
        {
            Takes();
        }

        if (layout.Changes is { } lane)
        {
            Changes(lane);
        }
    }

    /// <summary>True when there is room for a number on every change.</summary>
    private bool Numbered(SKRect lane) => view.Swaps.Count * (RunTimeSymbols.BadgePx + BadgeGap) <= lane.Width;

    private void End()
    {
        float x = layout.Time.At(view.EndMin), bottom = layout.Bars.Count > 0 ? layout.Bars[^1].Bottom : layout.Takes.Bottom, top = layout.CaptionMiddle + 22;
        using SKPaint after = PictureSheet.Brush(Palette.CarFill), pen = PictureSheet.Pen(Palette.Ink, 5);
        sheet.Canvas.DrawRect(new(x, top, layout.Time.ToPx, bottom), after);
        sheet.Line(new(x, top), new(x, bottom), pen);
        string words = $"end {view.Day.Tick(view.EndMin)}";
        float width = DrawingFonts.Width(words, PictureSheet.TextPx, true);
        sheet.LabelFrom(words, Math.Min(x - (width / 2), SheetLayout.WidthPx - SheetLayout.MarginPx - width), layout.CaptionMiddle, EndSeries, true);
    }

    private void Takes()
    {
        SKRect lane = layout.Takes;
        Name(lane, "takes");
        float free = lane.Left;
        foreach (PlannedTake take in view.Takes)
        {
            float left = layout.Time.Within(take.StartMin), right = Math.Max(layout.Time.Within(take.EndMin), left + LeastPx);
            var box = new SKRect(left, lane.Top + InsetPx, Math.Min(right, lane.Right), lane.Bottom - InsetPx);
            RunTimeSymbols.Take(sheet, box);
            string label = UserText.Clean(take.Label);
            float width = DrawingFonts.Width(label, PictureSheet.TextPx, false);
            // Only where the take is long enough for its own label; a cut label of a take would name another.
            if (label.Length > 0 && width + 28 <= box.Width && box.Left >= free)
            {
                PlotPainter.OnPaper(sheet, label, box.MidX - (width / 2), box.MidY, TakeSeries);
                free = box.Right;
            }
        }
    }

    private void Changes(SKRect lane)
    {
        Name(lane, "change");
        bool numbered = Numbered(lane);
        using SKPaint leader = PictureSheet.Pen(Palette.Ink, 2.5f);
        float[] at = [.. view.Swaps.Select(s => layout.Time.Within(s.AtMin))];
        IReadOnlyList<float> places = LabelRow.Spread(at, RunTimeSymbols.BadgePx + BadgeGap, lane.Left + (RunTimeSymbols.BadgePx / 2), lane.Right - (RunTimeSymbols.BadgePx / 2));
        for (int i = 0; i < at.Length; i++)
        {
            if (!numbered)
            {
                sheet.Line(new(at[i], lane.Top + 8), new(at[i], lane.Bottom), leader);
                continue;
            }

            var badge = SKRect.Create(places[i] - (RunTimeSymbols.BadgePx / 2), lane.Top + 4, RunTimeSymbols.BadgePx, 42);
            sheet.Line(new(places[i], badge.Bottom), new(at[i], lane.Bottom), leader);
            Callouts.Plate(sheet, (i + 1).ToString(CultureInfo.InvariantCulture), badge, ChangeSeries, Palette.Ink);
        }
    }

    private void Name(SKRect lane, string words) => sheet.LabelFrom(words, lane.Left - 14 - DrawingFonts.Width(words, PictureSheet.TextPx, false), lane.MidY, LaneSeries);
}
