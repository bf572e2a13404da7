using Quarterlight.Clips.Judgement;
using Quarterlight.Placement.Noise;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The lines, markers, fills and signs of a noise picture; each differs from the others without color.</summary>
internal static class NoiseSymbols
{
    public const float MarkPx = 13;

    private static readonly float[][] Dashes = [[], [16, 8], [4, 8], [16, 7, 4, 7], [26, 10]];

    private static readonly SKColor[] Colors = [Palette.Engine, Palette.OpenWindow, Palette.Gaze, Palette.Camera, Palette.CarLine];

    /// <summary>A kind's line through points, with its marker on each.</summary>
    public static void Kind(PictureSheet sheet, int kind, IReadOnlyList<SKPoint> points)
    {
        using SKPaint under = PictureSheet.Pen(Palette.Ink, 2.5f, Dashes[kind]), pen = PictureSheet.Pen(Colors[kind], 5, Dashes[kind]);
        sheet.Shape(points, false, pen);
        sheet.Shape(points, false, under);
        foreach (SKPoint p in points)
        {
            Mark(sheet, kind, p);
        }
    }

    /// <summary>A kind's marker: disc, open square, triangle, cross, or a triangle on its point.</summary>
    public static void Mark(PictureSheet sheet, int kind, SKPoint at)
    {
        using SKPaint fill = PictureSheet.Brush(kind == 1 ? Palette.Paper : Colors[kind]), edge = PictureSheet.Pen(Palette.Ink, kind == 1 ? 4 : 2.5f);
        if (kind == 3)
        {
            using SKPaint halo = PictureSheet.Pen(Palette.Ink, 10), inner = PictureSheet.Pen(Colors[kind], 5);
            foreach (SKPaint pen in new[] { halo, inner })
            {
                sheet.Line(new(at.X - (0.8f * MarkPx), at.Y - (0.8f * MarkPx)), new(at.X + (0.8f * MarkPx), at.Y + (0.8f * MarkPx)), pen);
                sheet.Line(new(at.X - (0.8f * MarkPx), at.Y + (0.8f * MarkPx)), new(at.X + (0.8f * MarkPx), at.Y - (0.8f * MarkPx)), pen);
            }

            return;
        }

        foreach (SKPaint paint in new[] { fill, edge })
        {
            if (kind == 0)
            {
                sheet.Canvas.DrawCircle(at, MarkPx * 0.8f, paint);
            }
            else
            {
                sheet.Shape(Outline(kind).Select(p => new SKPoint(at.X + (MarkPx * p.X), at.Y + (MarkPx * p.Y))), true, paint);
            }
        }
    }

    /// <summary>All noise together: a thick line of ink.</summary>
    public static void Total(PictureSheet sheet, IReadOnlyList<SKPoint> points)
    {
        using SKPaint halo = PictureSheet.Pen(Palette.Paper, 12), pen = PictureSheet.Pen(Palette.Ink, 7);
        sheet.Shape(points, false, halo);
        sheet.Shape(points, false, pen);
    }

    /// <summary>Sign of a verdict: a disc with a tick, a lozenge with a bar and a dot, a square with a cross.</summary>
    public static void Verdict(PictureSheet sheet, SceneVerdict verdict, SKPoint at, float radius) => OutcomeSign.Draw(
        sheet, verdict switch { SceneVerdict.Works => ClipOutcome.Use, SceneVerdict.WithCare => ClipOutcome.UseWithCare, _ => ClipOutcome.Redo }, at, radius);

    /// <summary>Speech stands above noise.</summary>
    public static void Over(PictureSheet sheet, SKRect box) => Hatching.Fill(sheet, box, Hatch.Rising, Palette.BandGrounds[0], Palette.BandHatch, 16, 2.5f);

    /// <summary>Noise stands above speech.</summary>
    public static void Under(PictureSheet sheet, SKRect box) => Hatching.Fill(sheet, box, Hatch.Crossed, Palette.Noise, Palette.Ink, 18, 2);

    /// <summary>What the lines of the driver's ear mean.</summary>
    public static SymbolLegend Kinds(NoiseView view)
    {
        var legend = new SymbolLegend();
        legend.Add(true, $"all together, {FigureWords.Number(view.Report.Noise.LevelDba)} dB(A)", (s, p) => Total(s, [new(p.X - 30, p.Y), new(p.X + 26, p.Y)]));
        for (int i = 0; i < view.Kinds.Count; i++)
        {
            int kind = i;
            string level = $" {FigureWords.Number(view.Kinds[i].LevelDba)} dB(A)";
            string words = UserText.Fit(view.Kinds[i].Words, SymbolLegend.ColumnPx - 90 - DrawingFonts.Width(level, PictureSheet.TextPx, false));
            legend.Add(double.IsFinite(view.Kinds[i].LevelDba), words + level, (s, p) =>
            {
                using SKPaint under = PictureSheet.Pen(Palette.Ink, 2.5f, Dashes[kind]), pen = PictureSheet.Pen(Colors[kind], 5, Dashes[kind]);
                s.Line(new(p.X - 30, p.Y), new(p.X + 26, p.Y), pen);
                s.Line(new(p.X - 30, p.Y), new(p.X + 26, p.Y), under);
                Mark(s, kind, new(p.X - 2, p.Y));
            });
        }

        return legend;
    }

    /// <summary>What the signs of the table mean.</summary>
    public static SymbolLegend Key(NoiseView view)
    {
        var legend = new SymbolLegend();
        foreach (SceneVerdict verdict in view.Judged ? Enum.GetValues<SceneVerdict>() : [])
        {
            legend.Add(true, verdict == SceneVerdict.WithCare ? "with care: get wild lines" : NoiseWords.Of(verdict), (s, p) => Verdict(s, verdict, p, 22));
        }

        return legend;
    }

    private static SKPoint[] Outline(int kind) => kind switch
    {
        1 => [new(-0.8f, -0.8f), new(0.8f, -0.8f), new(0.8f, 0.8f), new(-0.8f, 0.8f)],
        2 => [new(0, -1.05f), new(1, 0.75f), new(-1, 0.75f)],
        _ => [new(0, 1.05f), new(1, -0.75f), new(-1, -0.75f)],
    };
}
