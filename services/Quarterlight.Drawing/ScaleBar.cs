using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Draws a bar of one metre over a bar of three feet, both to the views' scale.</summary>
internal static class ScaleBar
{
    public const double FootM = 0.3048;
    public const float HeightPx = 96;
    private const double MetricM = 1;
    private const double ImperialFt = 3;

    /// <summary>Draws both bars with their left end at a point; returns their lengths in pixels.</summary>
    public static (float MeterPx, float FeetPx) Draw(PictureSheet sheet, SKPoint leftTop, double pxPerMeter)
    {
        float meter = (float)(pxPerMeter * MetricM), feet = (float)(pxPerMeter * ImperialFt * FootM);
        Bar(sheet, leftTop.X, leftTop.Y + 24, meter, 2, "1 m");
        Bar(sheet, leftTop.X, leftTop.Y + 68, feet, 3, "3 ft");
        return (meter, feet);
    }

    private static void Bar(PictureSheet sheet, float left, float y, float length, int parts, string words)
    {
        using SKPaint edge = PictureSheet.Pen(Palette.Ink, 2), fill = PictureSheet.Brush(Palette.Ink);
        for (int i = 0; i < parts; i++)
        {
            var box = SKRect.Create(left + (i * length / parts), y - 7, length / parts, 14);
            sheet.Canvas.DrawRect(box, i % 2 == 0 ? fill : edge);
        }

        sheet.Canvas.DrawRect(SKRect.Create(left, y - 7, length, 14), edge);
        float width = DrawingFonts.Width(words, PictureSheet.TextPx, false);
        sheet.Label(words, SKRect.Create(left + length + 14, y - 20, width, 40), "scale", Palette.Ink, false);
    }
}
