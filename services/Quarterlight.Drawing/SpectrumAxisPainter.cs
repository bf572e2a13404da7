using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Draws base lines, ticks, breaks and the caption of a frequency axis.</summary>
internal static class SpectrumAxisPainter
{
    public static void Draw(PictureSheet sheet, SpectrumLayout layout)
    {
        using SKPaint baseline = PictureSheet.Pen(Palette.Ink, 3), rule = PictureSheet.Pen(Palette.CarLine, 1.5f);
        float top = layout.KeyTop - 100, free = 0, bottom = layout.Fifth.Bottom;
        double widest = AxisScale.EvenStep(layout.Axis.Scales.Sum(s => s.High - s.Low), 8);
        foreach (AxisScale scale in layout.Axis.Scales)
        {
            sheet.Line(new(scale.FromPx, layout.Bars.Bottom), new(scale.ToPx, layout.Bars.Bottom), baseline);
            sheet.Line(new(scale.FromPx, bottom), new(scale.ToPx, bottom), baseline);
            if (layout.Fifth.Height > 0)
            {
                sheet.Line(new(scale.FromPx, layout.Third.Bottom), new(scale.ToPx, layout.Third.Bottom), rule);
            }

            // A short stretch beside a long one needs figures of its own.
            double step = Math.Min(widest, AxisScale.EvenStep(scale.High - scale.Low, 3));
            foreach (double tick in AxisScale.EvenTicks(scale.Low, scale.High, step))
            {
                float x = scale.At(tick);
                string words = SpectrumView.Edge(tick);
                float width = DrawingFonts.Width(words, PictureSheet.TextPx, false), left = Math.Min(x - (width / 2), SheetLayout.WidthPx - width - 2);
                sheet.Line(new(x, bottom - 7), new(x, bottom + 7), baseline);
                if (left >= free)
                {
                    sheet.LabelFrom(words, left, top + 22, PlotPainter.TickSeries);
                    free = left + width + 24;
                }
            }
        }

        // Two strokes at every break of the axis.
        foreach (AxisScale scale in layout.Axis.Scales.SkipLast(1))
        {
            foreach (float y in new[] { layout.Bars.Bottom, bottom })
            {
                sheet.Line(new(scale.ToPx + 4, y + 14), new(scale.ToPx + 16, y - 14), baseline);
                sheet.Line(new(scale.ToPx + SpectrumAxis.BreakPx - 16, y + 14), new(scale.ToPx + SpectrumAxis.BreakPx - 4, y - 14), baseline);
            }
        }

        const string Unit = "Frequency, MHz";
        sheet.LabelFrom(Unit, layout.Bars.Right - DrawingFonts.Width(Unit, PictureSheet.TextPx, false), top + 64, PlotPainter.CaptionSeries);
    }
}
