using System.Globalization;

using Quarterlight.Placement;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The numbered badges: a circle is a talker, a square their microphone, a plate anything else.</summary>
internal static class Callouts
{
    public const string TalkerSeries = "talker", MicrophoneSeries = "microphone", CameraSeries = "camera", PlateSeries = "plate";

    private const float BadgePx = 46;

    public static SKSize BadgeSize(string text) => new(Math.Max(BadgePx, DrawingFonts.Width(text, PictureSheet.TextPx, true) + 18), BadgePx);

    public static SKSize PlateSize(string text) => new(DrawingFonts.Width(text, PictureSheet.TextPx, false) + 18, 42);

    /// <summary>Numbers joined, such as 1+2 for a microphone two talkers share.</summary>
    public static string Numbers(Scene scene, IEnumerable<string> talkerIds) =>
        string.Join('+', talkerIds.Select(id => TalkerNumbers.Of(scene, id)).Order().Select(n => n.ToString(CultureInfo.InvariantCulture)));

    public static void Leader(PictureSheet sheet, SKPoint anchor, SKRect box)
    {
        SKPoint end = LabelPlacer.Nearest(box, anchor);
        if (SKPoint.Distance(anchor, end) < 6)
        {
            return;
        }

        using SKPaint halo = PictureSheet.Pen(Palette.Paper, 6), pen = PictureSheet.Pen(Palette.Ink, 2.5f);
        sheet.Line(anchor, end, halo);
        sheet.Line(anchor, end, pen);
    }

    /// <summary>A talker's number; the ring may be left out where the head drawn below serves as one.</summary>
    public static void Talker(PictureSheet sheet, string text, SKRect box, bool ring = true)
    {
        if (ring)
        {
            using SKPaint fill = PictureSheet.Brush(Palette.Paper), edge = PictureSheet.Pen(Palette.Ink, 4);
            sheet.Canvas.DrawRoundRect(box, box.Height / 2, box.Height / 2, fill);
            sheet.Canvas.DrawRoundRect(box, box.Height / 2, box.Height / 2, edge);
        }

        sheet.Label(text, box, TalkerSeries, Palette.Ink, true);
    }

    public static void Microphone(PictureSheet sheet, string text, SKRect box)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.Microphone), rim = PictureSheet.Pen(Palette.Paper, 5);
        sheet.Canvas.DrawRoundRect(box, 6, 6, rim);
        sheet.Canvas.DrawRoundRect(box, 6, 6, fill);
        sheet.Label(text, box, MicrophoneSeries, Palette.Paper, true);
    }

    public static void Plate(PictureSheet sheet, string text, SKRect box, string series, SKColor edgeColor)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.Paper), edge = PictureSheet.Pen(edgeColor, 2.5f);
        sheet.Canvas.DrawRoundRect(box, 6, 6, fill);
        sheet.Canvas.DrawRoundRect(box, 6, 6, edge);
        sheet.Label(text, box, series, Palette.Ink, false);
    }
}
