using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>How an area is hatched; each differs from the others without color.</summary>
internal enum Hatch
{
    /// <summary>Lines both ways.</summary>
    Crossed,

    /// <summary>Lines rising to the right.</summary>
    Rising,

    /// <summary>Lines falling to the right.</summary>
    Falling,

    /// <summary>Dots.</summary>
    Dotted,

    /// <summary>Upright lines.</summary>
    Upright,
}

/// <summary>Fills areas with a ground and a hatch.</summary>
internal static class Hatching
{
    /// <summary>Fills a box; lines of neighboring boxes meet, for they count from the sheet's corner.</summary>
    public static void Fill(PictureSheet sheet, SKRect box, Hatch hatch, SKColor ground, SKColor lines, float spacingPx = 22, float widthPx = 2)
    {
        if (box.Width <= 0 || box.Height <= 0)
        {
            return;
        }

        SKCanvas canvas = sheet.Canvas;
        canvas.Save();
        canvas.ClipRect(box);
        using SKPaint fill = PictureSheet.Brush(ground), pen = PictureSheet.Pen(lines, widthPx), dot = PictureSheet.Brush(lines);
        canvas.DrawRect(box, fill);
        if (hatch is Hatch.Rising or Hatch.Crossed)
        {
            // On one of these lines x + y is the same everywhere.
            for (float sum = Start(box.Left + box.Top, spacingPx); sum < box.Right + box.Bottom; sum += spacingPx)
            {
                sheet.Line(new(sum - box.Top, box.Top), new(sum - box.Bottom, box.Bottom), pen);
            }
        }

        if (hatch is Hatch.Falling or Hatch.Crossed)
        {
            for (float difference = Start(box.Left - box.Bottom, spacingPx); difference < box.Right - box.Top; difference += spacingPx)
            {
                sheet.Line(new(difference + box.Top, box.Top), new(difference + box.Bottom, box.Bottom), pen);
            }
        }

        for (float x = Start(box.Left, spacingPx); hatch == Hatch.Upright && x < box.Right; x += spacingPx)
        {
            sheet.Line(new(x, box.Top), new(x, box.Bottom), pen);
        }

        for (float y = Start(box.Top, spacingPx); hatch == Hatch.Dotted && y < box.Bottom + spacingPx; y += spacingPx)
        {
            for (float x = Start(box.Left, spacingPx); x < box.Right + spacingPx; x += spacingPx)
            {
                canvas.DrawCircle(x, y, 1.6f * widthPx, dot);
            }
        }

        canvas.Restore();
    }

    private static float Start(float from, float spacing) => MathF.Floor(from / spacing) * spacing;
}
