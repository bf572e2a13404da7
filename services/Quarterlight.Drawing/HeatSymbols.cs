using Quarterlight.Endurance.Heat;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The fills of a heat picture; each differs from the others without color.</summary>
internal static class HeatSymbols
{
    /// <summary>A block of the day.</summary>
    public static void Block(PictureSheet sheet, HeatBlockKind kind, SKRect box)
    {
        (Hatch hatch, SKColor ground) = kind switch
        {
            HeatBlockKind.Roll => (Hatch.Rising, Palette.Engine),
            HeatBlockKind.Cool => (Hatch.Dotted, Palette.OpenWindow),
            _ => (Hatch.Crossed, Palette.BandGrounds[0]),
        };
        Box(sheet, box, hatch, ground, Palette.Ink);
    }

    /// <summary>Minutes of comfort.</summary>
    public static void Comfort(PictureSheet sheet, SKRect box) => Box(sheet, box, Hatch.Upright, Palette.Usable, Palette.Paper);

    /// <summary>What the fills mean.</summary>
    public static SymbolLegend Key(HeatView view)
    {
        static SKRect Around(SKPoint at) => new(at.X - 26, at.Y - 18, at.X + 26, at.Y + 18);
        var legend = new SymbolLegend();
        bool Has(HeatBlockKind kind) => view.Blocks.Any(b => b.Kind == kind);
        legend.Add(Has(HeatBlockKind.Roll), "rolling, fan off", (s, p) => Block(s, HeatBlockKind.Roll, Around(p)));
        legend.Add(Has(HeatBlockKind.Cool), "cooling between takes", (s, p) => Block(s, HeatBlockKind.Cool, Around(p)));
        legend.Add(Has(HeatBlockKind.Precool), "cooling before the first take", (s, p) => Block(s, HeatBlockKind.Precool, Around(p)));
        legend.Add(view.ComfortSpans.Count > 0, "comfort: PMV within 0.7", (s, p) => Comfort(s, Around(p)));
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
