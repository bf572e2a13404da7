using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>A time axis in minutes and seconds, or by the clock.</summary>
internal static class TimeAxis
{
    private const int MostParts = 7;

    private static readonly double[] StepsSeconds = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200, 1800, 3600];

    /// <summary>Time from one tick to the next in seconds.</summary>
    public static double StepSeconds(double durationSeconds)
    {
        foreach (double step in StepsSeconds)
        {
            if (durationSeconds / step <= MostParts + 1e-9)
            {
                return step;
            }
        }

        return 3600 * Math.Ceiling(durationSeconds / 3600 / MostParts);
    }

    /// <summary>Upright grid lines through a frame.</summary>
    public static void Grid(PictureSheet sheet, SKRect frame, AxisScale time) => Grid(sheet, frame, time, AxisScale.EvenTicks(0, time.High, StepSeconds(time.High)));

    /// <summary>Upright grid lines through a frame at given ticks.</summary>
    public static void Grid(PictureSheet sheet, SKRect frame, AxisScale time, IEnumerable<double> ticks)
    {
        using SKPaint grid = PictureSheet.Pen(Palette.Grid, 1.5f);
        foreach (double tick in ticks)
        {
            sheet.Line(new(time.At(tick), frame.Top), new(time.At(tick), frame.Bottom), grid);
        }
    }

    /// <summary>Ticks and their times below a frame.</summary>
    public static void Ticks(PictureSheet sheet, SKRect frame, AxisScale time)
    {
        double step = StepSeconds(time.High);
        int decimals = step < 0.1 ? 2 : step < 1 ? 1 : 0;
        Ticks(sheet, frame, time, AxisScale.EvenTicks(0, time.High, step), tick => ClipWords.Time(tick, decimals));
    }

    /// <summary>Given ticks and their words below a frame; words that would touch are left out.</summary>
    public static void Ticks(PictureSheet sheet, SKRect frame, AxisScale time, IEnumerable<double> ticks, Func<double, string> wordsOf)
    {
        using SKPaint pen = PictureSheet.Pen(Palette.Ink, 2.5f);
        float free = frame.Left;
        foreach (double tick in ticks)
        {
            float x = time.At(tick);
            sheet.Line(new(x, frame.Bottom), new(x, frame.Bottom + 8), pen);
            string words = wordsOf(tick);
            float width = DrawingFonts.Width(words, PictureSheet.TextPx, false);
            // The first stands right of the frame's edge, out of the way of the lowest figure of the upright axis.
            float left = Math.Clamp(x - (width / 2), frame.Left, SheetLayout.WidthPx - width - 10);
            if (left >= free)
            {
                sheet.LabelFrom(words, left, frame.Bottom + (ClipLayout.TicksPx / 2) + 6, PlotPainter.TickSeries);
                free = left + width + 18;
            }
        }
    }

    /// <summary>A caption above a frame, from the sheet's edge.</summary>
    public static SKRect Caption(PictureSheet sheet, SKRect frame, string words) =>
        sheet.LabelFrom(words, SheetLayout.MarginPx, frame.Top - (ClipLayout.CaptionPx / 2), PlotPainter.CaptionSeries, true);
}
