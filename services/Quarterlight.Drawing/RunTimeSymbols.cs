using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The fills and marks of a picture of batteries and media; each differs from the others without color.</summary>
internal static class RunTimeSymbols
{
    public const float BadgePx = 44;

    /// <summary>A set in use, its margin kept.</summary>
    public static void Usable(PictureSheet sheet, SKRect box) => Box(sheet, box, Hatch.Falling, Palette.OpenWindow, Palette.Ink);

    /// <summary>Running on the margin.</summary>
    public static void Margin(PictureSheet sheet, SKRect box) => Box(sheet, box, Hatch.Dotted, Palette.Paper, Palette.Ink);

    /// <summary>Nothing left.</summary>
    public static void Empty(PictureSheet sheet, SKRect box) => Box(sheet, box, Hatch.Crossed, Palette.Demand, Palette.Paper);

    /// <summary>A take.</summary>
    public static void Take(PictureSheet sheet, SKRect box) => Box(sheet, box, Hatch.Rising, Palette.Engine, Palette.Ink);

    /// <summary>A change: an upright bar with a ring at its middle.</summary>
    public static void Change(PictureSheet sheet, SKPoint at, float halfHeight)
    {
        using SKPaint halo = PictureSheet.Pen(Palette.Paper, 10), pen = PictureSheet.Pen(Palette.Ink, 4), paper = PictureSheet.Brush(Palette.Paper);
        sheet.Line(new(at.X, at.Y - halfHeight), new(at.X, at.Y + halfHeight), halo);
        sheet.Line(new(at.X, at.Y - halfHeight), new(at.X, at.Y + halfHeight), pen);
        sheet.Canvas.DrawCircle(at, 8, paper);
        sheet.Canvas.DrawCircle(at, 8, pen);
    }

    /// <summary>Runs out: a solid triangle on a disc of paper, so that no words and no hatching are in its way.</summary>
    public static void Out(PictureSheet sheet, SKPoint at)
    {
        using SKPaint paper = PictureSheet.Brush(Palette.Paper);
        sheet.Canvas.DrawCircle(at, 20, paper);
        ClipSymbols.Clipping(sheet, new(at.X, at.Y + (ClipSymbols.ClippingPx / 2)));
    }

    /// <summary>What the fills and marks mean.</summary>
    public static SymbolLegend Key(RunTimeView view)
    {
        static SKRect Around(SKPoint at) => new(at.X - 26, at.Y - 18, at.X + 26, at.Y + 18);
        var legend = new SymbolLegend();
        legend.Add(true, "in use, margin kept", (s, p) => Usable(s, Around(p)));
        legend.Add(view.Rows.Any(r => r.Sets.Any(t => t.MarginMin > t.UsableMin)), "running on the margin", (s, p) => Margin(s, Around(p)));
        legend.Add(view.Short.Count > 0, "nothing left", (s, p) => Empty(s, Around(p)));
        legend.Add(view.Takes.Count > 0, "take", (s, p) => Take(s, Around(p)));
        legend.Add(view.Swaps.Count > 0, "change", (s, p) => Change(s, p, 20));
        legend.Add(view.FirstOutMin is not null && view.First is not null, "runs out first", Out);
        return legend;
    }

    private static void Box(PictureSheet sheet, SKRect box, Hatch hatch, SKColor ground, SKColor lines)
    {
        Hatching.Fill(sheet, box, hatch, ground, lines, 14, 2);
        // An edge round a sliver would hide it.
        if (box.Width > 8)
        {
            using SKPaint edge = PictureSheet.Pen(Palette.Ink, 2);
            sheet.Canvas.DrawRect(box, edge);
        }
    }
}
