using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The signs of a spectrum picture; each differs from the others in shape.</summary>
internal static class SpectrumSymbols
{
    /// <summary>An own carrier that is clean: a solid bar.</summary>
    public static void Clean(PictureSheet sheet, SKRect bar)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.Curve);
        sheet.Canvas.DrawRect(bar, fill);
    }

    /// <summary>An own carrier that is hit: a broken bar with a cross on its top.</summary>
    public static void Hit(PictureSheet sheet, SKRect bar)
    {
        const float Piece = 20, Break = 9;
        using SKPaint fill = PictureSheet.Brush(Palette.Demand);
        for (float bottom = bar.Bottom; bottom > bar.Top; bottom -= Piece + Break)
        {
            sheet.Canvas.DrawRect(new SKRect(bar.Left, Math.Max(bottom - Piece, bar.Top), bar.Right, bottom), fill);
        }

        Cross(sheet, new(bar.MidX, bar.Top), Math.Min(15, 5 + (0.7f * bar.Width)));
    }

    /// <summary>A neighbour's carrier: a hollow bar with a lozenge on its top.</summary>
    public static void Neighbour(PictureSheet sheet, SKRect bar, bool isClean)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.Paper), edge = PictureSheet.Pen(Palette.Ink, 3), head = PictureSheet.Brush(Palette.Engine);
        var hollow = SKRect.Inflate(bar, -1, 0);
        sheet.Canvas.DrawRect(hollow, fill);
        sheet.Canvas.DrawRect(hollow, edge);
        float reach = Math.Min(15, 6 + (0.6f * bar.Width));
        SKPoint[] lozenge = [new(bar.MidX, bar.Top - reach), new(bar.MidX + reach, bar.Top), new(bar.MidX, bar.Top + reach), new(bar.MidX - reach, bar.Top)];
        sheet.Shape(lozenge, true, head);
        sheet.Shape(lozenge, true, edge);
        if (!isClean)
        {
            Cross(sheet, new(bar.MidX, bar.Top - (2 * reach) - 4), 13);
        }
    }

    /// <summary>A third-order product: a line with a solid triangle at its foot.</summary>
    public static void Third(PictureSheet sheet, float x, float top, float bottom, bool foot)
    {
        using SKPaint pen = PictureSheet.Pen(Palette.Ink, 2.5f), fill = PictureSheet.Brush(Palette.Ink);
        sheet.Line(new(x, top), new(x, bottom), pen);
        if (foot)
        {
            sheet.Shape([new(x - 8, bottom + 3), new(x + 8, bottom + 3), new(x, bottom - 13)], true, fill);
        }
    }

    /// <summary>A fifth-order product: a line with an open ring at its foot.</summary>
    public static void Fifth(PictureSheet sheet, float x, float top, float bottom, bool foot)
    {
        using SKPaint pen = PictureSheet.Pen(Palette.CarLine, 2.5f), paper = PictureSheet.Brush(Palette.Paper);
        sheet.Line(new(x, top), new(x, bottom), pen);
        if (foot)
        {
            sheet.Canvas.DrawCircle(x, bottom - 5, 7, paper);
            sheet.Canvas.DrawCircle(x, bottom - 5, 7, pen);
        }
    }

    /// <summary>A hit: a vermilion cross.</summary>
    public static void Cross(PictureSheet sheet, SKPoint at, float reach)
    {
        using SKPaint halo = PictureSheet.Pen(Palette.Paper, 0.75f * reach), pen = PictureSheet.Pen(Palette.Demand, 0.42f * reach);
        foreach (SKPaint paint in new[] { halo, pen })
        {
            sheet.Line(new(at.X - reach, at.Y - reach), new(at.X + reach, at.Y + reach), paint);
            sheet.Line(new(at.X - reach, at.Y + reach), new(at.X + reach, at.Y - reach), paint);
        }
    }

    /// <summary>An excluded block: dense hatching with an edge.</summary>
    public static void Block(PictureSheet sheet, SKRect box)
    {
        Hatching.Fill(sheet, box, Hatch.Rising, Palette.CarFill, Palette.CarLine, 14, 2);
        using SKPaint edge = PictureSheet.Pen(Palette.CarLine, 2.5f);
        sheet.Canvas.DrawRect(box, edge);
    }

    /// <summary>The guard round a carrier: a pale ground with dots.</summary>
    public static void Guard(PictureSheet sheet, SKRect box) => Hatching.Fill(sheet, box, Hatch.Dotted, Palette.BandGrounds[0], Palette.BandHatch, 16, 1.6f);
}
