using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>A figure over time as broken lines, parted where it is not known.</summary>
internal static class TimeCurves
{
    private const float LonePointPx = 6;
    private const float LeastTurnPx = 6;
    private const float BandColumnPx = 10;

    /// <summary>Lines through the points that can be drawn; a point between two gaps is a line of one.</summary>
    public static IReadOnlyList<IReadOnlyList<SKPoint>> Of<T>(IEnumerable<T> samples, Func<T, double> minute, Func<T, double?> figure, AxisScale time, AxisScale axis)
    {
        List<IReadOnlyList<SKPoint>> lines = [];
        List<SKPoint> line = [];
        foreach (T sample in samples)
        {
            if (figure(sample) is { } value && double.IsFinite(value))
            {
                line.Add(new(time.At(minute(sample)), axis.At(value)));
            }
            else if (line.Count > 0)
            {
                lines.Add(line);
                line = [];
            }
        }

        if (line.Count > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    /// <summary>Draws the lines; a lone point is a dot, and what swings too fast to be followed is a band between its lowest and highest.</summary>
    public static void Draw(PictureSheet sheet, SKRect frame, IReadOnlyList<IReadOnlyList<SKPoint>> lines, SKColor color, float widthPx, params float[] dashes)
    {
        using SKPaint dot = PictureSheet.Brush(color);
        foreach (IReadOnlyList<SKPoint> line in lines)
        {
            if (line.Count == 1)
            {
                sheet.Canvas.DrawCircle(Math.Clamp(line[0].X, frame.Left, frame.Right), Math.Clamp(line[0].Y, frame.Top, frame.Bottom), LonePointPx, dot);
            }
            else if (IsRestless(line))
            {
                Band(sheet, frame, line, color, widthPx / 2);
            }
            else
            {
                PlotPainter.Curve(sheet, frame, line, color, widthPx, dashes);
            }
        }
    }

    /// <summary>True when a line turns back every few pixels all along.</summary>
    private static bool IsRestless(IReadOnlyList<SKPoint> line)
    {
        int turns = 0;
        for (int i = 2; i < line.Count; i++)
        {
            turns += (line[i].Y - line[i - 1].Y) * (line[i - 1].Y - line[i - 2].Y) < 0 ? 1 : 0;
        }

        return turns > 20 && (line[^1].X - line[0].X) / turns < LeastTurnPx;
    }

    private static void Band(PictureSheet sheet, SKRect frame, IReadOnlyList<SKPoint> line, SKColor color, float widthPx)
    {
        List<SKPoint> upper = [], lower = [];
        foreach (IGrouping<int, SKPoint> column in line.GroupBy(p => (int)(p.X / BandColumnPx)))
        {
            float x = column.Average(p => p.X);
            upper.Add(new(x, column.Min(p => p.Y)));
            lower.Add(new(x, column.Max(p => p.Y)));
        }

        sheet.Canvas.Save();
        sheet.Canvas.ClipRect(frame);
        using SKPaint fill = PictureSheet.Brush(color.Faded(0.3)), edge = PictureSheet.Pen(color, Math.Max(2, widthPx));
        sheet.Shape([.. upper, .. Enumerable.Reverse(lower)], true, fill);
        sheet.Shape(upper, false, edge);
        sheet.Shape(lower, false, edge);
        sheet.Canvas.Restore();
    }

    /// <summary>Points along lines for labels to keep off or to name, a few hundred at most.</summary>
    public static IReadOnlyList<SKPoint> Along(IReadOnlyList<IReadOnlyList<SKPoint>> lines, SKRect frame, float spacingPx)
    {
        double length = lines.Sum(l => l.Zip(l.Skip(1)).Sum(p => (double)SKPoint.Distance(p.First, p.Second)));
        float spacing = Math.Max(spacingPx, (float)(length / 300));
        SKPoint[] all = [.. lines.SelectMany(l => l.Count > 1 ? PlotPainter.Along(l, frame, spacing) : l.Where(frame.Contains))];
        // A jagged line has a point for each of its pieces, however short.
        return all.Length <= 600 ? all : [.. all.Where((_, i) => i % ((all.Length / 600) + 1) == 0)];
    }
}
