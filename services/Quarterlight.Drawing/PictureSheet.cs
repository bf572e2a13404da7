using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>A label as drawn: what it says, where, and what it belongs to.</summary>
/// <param name="Text">The words.</param>
/// <param name="Box">Where, pixels.</param>
/// <param name="Series">What it belongs to, such as talker or microphone.</param>
/// <param name="TextHeightPx">Size of the lettering, pixels.</param>
internal sealed record DrawnLabel(string Text, SKRect Box, string Series, float TextHeightPx);

/// <summary>A white sheet to draw on, with the pens, shapes and labels all pictures share.</summary>
internal sealed class PictureSheet : IDisposable
{
    /// <summary>Lettering that stays readable when the picture is 360 pixels wide on a phone: 32 of 1200 pixels.</summary>
    public const float TextPx = 32;

    /// <summary>Height of the box of one line of words.</summary>
    public const float LineBoxPx = 40;

    private readonly SKSurface surface;
    private readonly List<DrawnLabel> labels = [];

    public PictureSheet(int widthPx, int heightPx)
    {
        surface = SKSurface.Create(new SKImageInfo(widthPx, heightPx, SKColorType.Rgba8888, SKAlphaType.Opaque))
            ?? throw new InvalidOperationException($"No memory for a picture of {widthPx} by {heightPx} pixels.");
        Canvas.Clear(Palette.Paper);
    }

    public SKCanvas Canvas => surface.Canvas;

    public IReadOnlyList<DrawnLabel> Labels => labels;

    public static SKPaint Pen(SKColor color, float widthPx, params float[] dashes)
    {
        var pen = new SKPaint { Color = color, StrokeWidth = widthPx, Style = SKPaintStyle.Stroke, IsAntialias = true, StrokeJoin = SKStrokeJoin.Round };
        if (dashes.Length > 0)
        {
            using SKPathEffect effect = SKPathEffect.CreateDash(dashes, 0);
            pen.PathEffect = effect;
        }
        else
        {
            pen.StrokeCap = SKStrokeCap.Round;
        }

        return pen;
    }

    public static SKPaint Brush(SKColor color) => new() { Color = color, Style = SKPaintStyle.Fill, IsAntialias = true };

    public void Line(SKPoint a, SKPoint b, SKPaint pen) => Canvas.DrawLine(a, b, pen);

    public void Shape(IEnumerable<SKPoint> points, bool closed, SKPaint paint)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. points], closed);
        using SKPath path = builder.Detach();
        Canvas.DrawPath(path, paint);
    }

    public void Words(string text, float left, float baseline, bool bold = false, float sizePx = TextPx) =>
        DrawingFonts.Draw(Canvas, text, left, baseline, sizePx, bold, Palette.Ink);

    /// <summary>Writes words centered in a box and records them as a label.</summary>
    public void Label(string text, SKRect box, string series, SKColor ink, bool bold, float sizePx = TextPx)
    {
        float width = DrawingFonts.Width(text, sizePx, bold);
        // Capitals and digits of Inter are 0.727 em high.
        DrawingFonts.Draw(Canvas, text, box.MidX - (width / 2), box.MidY + (0.3635f * sizePx), sizePx, bold, ink);
        labels.Add(new(text, box, series, sizePx));
    }

    /// <summary>Writes one line of words from a left end, recorded as a label; returns its box.</summary>
    public SKRect LabelFrom(string text, float left, float middle, string series, bool bold = false)
    {
        var box = SKRect.Create(left, middle - (LineBoxPx / 2), DrawingFonts.Width(text, TextPx, bold), LineBoxPx);
        Label(text, box, series, Palette.Ink, bold);
        return box;
    }

    public byte[] ToPng()
    {
        using SKImage image = surface.Snapshot();
        using SKPixmap pixels = image.PeekPixels();
        return IndexedPng.Encode(pixels);
    }

    public void Dispose() => surface.Dispose();
}
