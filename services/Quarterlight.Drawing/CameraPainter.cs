using System.Globalization;

using Quarterlight.Cabin;
using Quarterlight.Quantities;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Draws cameras: the fan of what the lens sees, clipped to the view, and a camera body at its tip.</summary>
internal static class CameraPainter
{
    private const double FanM = 12;

    public static string LabelOf(Shot shot) => string.Create(CultureInfo.InvariantCulture, $"{shot.Id} {shot.FocalLengthMm:0.#} mm");

    /// <summary>Draws the fan; neighbours differ in the dash of their edge, and the tint is fainter the more fans there are.</summary>
    public static void DrawFan(PictureSheet sheet, ViewProjection view, Shot shot, int index, int count)
    {
        SKPoint[] fan = Fan(view, shot);
        using SKPaint tint = PictureSheet.Brush(Palette.Camera.Faded(0.2 / (count + 1.2)));
        using SKPaint edge = (index % 3) switch
        {
            0 => PictureSheet.Pen(Palette.Camera, 3, 22, 9),
            1 => PictureSheet.Pen(Palette.Camera, 3, 22, 8, 4, 8),
            _ => PictureSheet.Pen(Palette.Camera, 3, 4, 8),
        };
        sheet.Shape(fan, true, tint);
        sheet.Line(fan[0], fan[1], edge);
        sheet.Line(fan[0], fan[2], edge);
    }

    /// <summary>The fan's tip and the far ends of its edges, pixels.</summary>
    public static SKPoint[] Fan(ViewProjection view, Shot shot)
    {
        var camera = new CameraView(shot);
        Vector3D[] fan = view.View == OutlineView.Plan ? camera.PlanFan(FanM) : camera.SideFan(FanM);
        return [.. fan.Select(view.Point)];
    }

    public static void DrawBody(PictureSheet sheet, ViewProjection view, Shot shot)
    {
        (double right, double up) = view.Direction(new CameraView(shot).Axis);
        DrawBody(sheet, view.Point(shot.Position), Math.Atan2(up, right));
    }

    /// <summary>A box with a lens cone, looking along an angle on the page.</summary>
    public static void DrawBody(PictureSheet sheet, SKPoint eye, double angleRad)
    {
        SKPoint back = MicrophonePainter.At(eye, angleRad, -44), neck = MicrophonePainter.At(eye, angleRad, -16);
        double side = angleRad + (Math.PI / 2);
        SKPoint[] body =
        [
            MicrophonePainter.At(back, side, 14), MicrophonePainter.At(neck, side, 14), MicrophonePainter.At(neck, side, 6), MicrophonePainter.At(eye, side, 13),
            MicrophonePainter.At(eye, side, -13), MicrophonePainter.At(neck, side, -6), MicrophonePainter.At(neck, side, -14), MicrophonePainter.At(back, side, -14),
        ];
        using SKPaint fill = PictureSheet.Brush(Palette.Camera), edge = PictureSheet.Pen(Palette.Ink, 3);
        sheet.Shape(body, true, fill);
        sheet.Shape(body, true, edge);
    }
}
