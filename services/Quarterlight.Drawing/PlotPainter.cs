using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Draws what every plot has: frame, grid, ticks, captions, curves and plates.</summary>
internal static class PlotPainter
{
    public const string TickSeries = "tick", CaptionSeries = "caption";

    /// <summary>Words from a left end on a strip of paper, so that lines below do not run through them.</summary>
    public static void OnPaper(PictureSheet sheet, string words, float left, float middle, string series, bool bold = false)
    {
        float width = DrawingFonts.Width(words, PictureSheet.TextPx, bold);
        using SKPaint paper = PictureSheet.Brush(Palette.Paper);
        sheet.Canvas.DrawRoundRect(new SKRect(left - 8, middle - 18, left + width + 8, middle + 18), 6, 6, paper);
        sheet.LabelFrom(words, left, middle, series, bold);
    }

    /// <summary>Draws grid and tick labels of the distance axis below a frame; labels that would touch are left out.</summary>
    public static void DistanceTicks(PictureSheet sheet, SKRect frame, AxisScale axis, DistanceUnit unit)
    {
        using SKPaint grid = PictureSheet.Pen(Palette.Grid, 1.5f);
        double length = FigureWords.LengthM(unit);
        float free = 0;
        foreach (double tick in AxisScale.DecadeTicks(axis.Low / length, axis.High / length))
        {
            float x = axis.At(tick * length);
            sheet.Line(new(x, frame.Top), new(x, frame.Bottom), grid);
            string words = FigureWords.Number(tick, "0.###");
            float width = DrawingFonts.Width(words, PictureSheet.TextPx, false), left = Math.Min(x - (width / 2), SheetLayout.WidthPx - width - 2);
            if (left >= free)
            {
                sheet.LabelFrom(words, left, frame.Bottom + (LinkLayout.TicksPx / 2) + 2, TickSeries);
                free = left + width + 18;
            }
        }
    }

    /// <summary>Draws grid and tick labels of an upright axis left of a frame.</summary>
    public static void UprightTicks(PictureSheet sheet, SKRect frame, AxisScale axis, int mostParts)
    {
        using SKPaint grid = PictureSheet.Pen(Palette.Grid, 1.5f);
        double step = AxisScale.EvenStep(axis.High - axis.Low, mostParts);
        foreach (double tick in AxisScale.EvenTicks(axis.Low, axis.High, step))
        {
            float y = axis.At(tick);
            sheet.Line(new(frame.Left, y), new(frame.Right, y), grid);
            string words = FigureWords.Number(tick);
            sheet.LabelFrom(words, frame.Left - 12 - DrawingFonts.Width(words, PictureSheet.TextPx, false), y, TickSeries);
        }
    }

    public static void Frame(PictureSheet sheet, SKRect frame)
    {
        using SKPaint edge = PictureSheet.Pen(Palette.Ink, 2.5f);
        sheet.Canvas.DrawRect(frame, edge);
    }

    /// <summary>Draws a curve inside a frame on a halo of paper, so that it stands out from any ground.</summary>
    public static void Curve(PictureSheet sheet, SKRect frame, IReadOnlyList<SKPoint> points, SKColor color, float widthPx, params float[] dashes)
    {
        sheet.Canvas.Save();
        sheet.Canvas.ClipRect(frame);
        using SKPaint halo = PictureSheet.Pen(Palette.Paper, widthPx + 5), pen = PictureSheet.Pen(color, widthPx, dashes);
        sheet.Shape(points, false, halo);
        sheet.Shape(points, false, pen);
        sheet.Canvas.Restore();
    }

    /// <summary>Size of a plate for words.</summary>
    public static SKSize PlateSize(string words, bool bold = false) => new(DrawingFonts.Width(words, PictureSheet.TextPx, bold) + 20, 44);

    /// <summary>A plate of words with an edge; a leader joins it to what it names when they do not touch.</summary>
    public static void Plate(PictureSheet sheet, string words, SKPoint anchor, SKRect box, string series, SKColor edgeColor, bool bold = false)
    {
        SKPoint end = LabelPlacer.Nearest(box, anchor);
        if (SKPoint.Distance(anchor, end) >= 8)
        {
            Callouts.Leader(sheet, anchor, box);
        }

        using SKPaint fill = PictureSheet.Brush(Palette.Paper), edge = PictureSheet.Pen(edgeColor, 3);
        sheet.Canvas.DrawRoundRect(box, 6, 6, fill);
        sheet.Canvas.DrawRoundRect(box, 6, 6, edge);
        sheet.Label(words, box, series, Palette.Ink, bold);
    }

    /// <summary>Points every few pixels along a broken line, for labels to keep off and to anchor at.</summary>
    public static IEnumerable<SKPoint> Along(IReadOnlyList<SKPoint> points, SKRect frame, float spacingPx)
    {
        for (int i = 1; i < points.Count; i++)
        {
            float length = SKPoint.Distance(points[i - 1], points[i]);
            int steps = Math.Clamp((int)(length / spacingPx), 1, 400);
            for (int k = 0; k < steps; k++)
            {
                float t = (float)k / steps;
                var p = new SKPoint(points[i - 1].X + (t * (points[i].X - points[i - 1].X)), points[i - 1].Y + (t * (points[i].Y - points[i - 1].Y)));
                if (frame.Contains(p))
                {
                    yield return p;
                }
            }
        }
    }
}
