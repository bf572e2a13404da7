using Quarterlight.Acoustics;
using Quarterlight.Placement;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>
/// Draws a microphone: dot at the capsule, pattern outline, solid arrow along the aim, dashed line with an end bar along
/// each null. Positions are to scale; pattern, arrow and null lines have sizes of their own.
/// </summary>
internal static class MicrophonePainter
{
    /// <summary>Radius of the pattern on axis, pixels.</summary>
    public const float PatternPx = 62;

    private const float ArrowPx = 104;
    private const float NullPx = 84;
    private const float CapsulePx = 9;

    /// <summary>The pattern of a placed microphone; drawn below heads, which it may reach over.</summary>
    public static void DrawOutline(PictureSheet sheet, ViewProjection view, TalkerPlacement placement, PolarPattern pattern)
    {
        (double angle, double length) = AimSeen(view, placement);
        DrawOutline(sheet, view.Point(placement.Capsule), pattern, angle, length, 1);
    }

    /// <summary>Capsule, aim and nulls of a placed microphone.</summary>
    public static void DrawLines(PictureSheet sheet, ViewProjection view, TalkerPlacement placement, PolarPattern pattern)
    {
        (double angle, double length) = AimSeen(view, placement);
        DrawLines(sheet, view.Point(placement.Capsule), pattern, angle, length, 1);
    }

    /// <summary>The aim's angle on the page (radians, counter-clockwise from right) and its length in the view, 0 to 1.</summary>
    public static (double AngleRad, double Length) AimSeen(ViewProjection view, TalkerPlacement placement)
    {
        (double right, double up) = view.Direction(placement.Aim);
        return (Math.Atan2(up, right), Math.Min(1, Math.Sqrt((right * right) + (up * up))));
    }

    /// <summary>Capsule, aim and nulls at a point, aimed at an angle on the page.</summary>
    public static void DrawLines(PictureSheet sheet, SKPoint capsule, PolarPattern pattern, double aimRad, double aimLength, float size)
    {
        foreach (double angle in PatternShape.Nulls(pattern, aimLength))
        {
            DrawNull(sheet, capsule, aimRad + angle, size);
        }

        if (HasAim(pattern, aimLength))
        {
            DrawAim(sheet, capsule, aimRad, size * ArrowShare(aimLength));
        }

        using SKPaint ring = PictureSheet.Brush(Palette.Paper), dot = PictureSheet.Brush(Palette.Microphone);
        sheet.Canvas.DrawCircle(capsule, CapsulePx + 3, ring);
        sheet.Canvas.DrawCircle(capsule, CapsulePx, dot);
    }

    /// <summary>The pattern alone.</summary>
    public static void DrawOutline(PictureSheet sheet, SKPoint capsule, PolarPattern pattern, double aimRad, double aimLength, float size)
    {
        using SKPaint tint = PictureSheet.Brush(Palette.Microphone.Faded(0.18)), edge = PictureSheet.Pen(Palette.Microphone, 3);
        SKPoint[] outline = [.. PatternShape.Outline(pattern, aimLength).Select(p => At(capsule, aimRad + p.AngleRad, size * PatternPx * p.Radius))];
        sheet.Shape(outline, true, tint);
        sheet.Shape(outline, true, edge);
    }

    public static SKPoint At(SKPoint from, double angleRad, double lengthPx) =>
        new(from.X + (float)(lengthPx * Math.Cos(angleRad)), from.Y - (float)(lengthPx * Math.Sin(angleRad)));

    /// <summary>Ends of the arrow and the null lines, for labels to keep off.</summary>
    public static IEnumerable<SKPoint> Tips(SKPoint capsule, PolarPattern pattern, double aimRad, double aimLength)
    {
        IEnumerable<SKPoint> nulls = PatternShape.Nulls(pattern, aimLength).Select(a => At(capsule, aimRad + a, NullPx - 10));
        return HasAim(pattern, aimLength) ? nulls.Append(At(capsule, aimRad, (ArrowPx * ArrowShare(aimLength)) - 12)) : nulls;
    }

    // An omni hears alike from everywhere, so an arrow on it would say something untrue.
    private static bool HasAim(PolarPattern pattern, double aimLength) => pattern.B > 0 && aimLength >= PatternShape.LeastAimLength;

    private static double ArrowShare(double aimLength) => 0.35 + (0.65 * aimLength);

    /// <summary>An arrow along the aim: solid line, filled head.</summary>
    public static void DrawAim(PictureSheet sheet, SKPoint from, double angleRad, double size)
    {
        using SKPaint pen = PictureSheet.Pen(Palette.Microphone, 6), halo = PictureSheet.Pen(Palette.Paper, 10), head = PictureSheet.Brush(Palette.Microphone);
        SKPoint tip = At(from, angleRad, ArrowPx * size), neck = At(tip, angleRad, -20);
        sheet.Line(from, neck, halo);
        sheet.Line(from, neck, pen);
        SKPoint[] triangle = [tip, At(neck, angleRad + (Math.PI / 2), 13), At(neck, angleRad - (Math.PI / 2), 13)];
        using SKPaint rim = PictureSheet.Pen(Palette.Paper, 4);
        sheet.Shape(triangle, true, rim);
        sheet.Shape(triangle, true, head);
    }

    /// <summary>A null: dashed line, bar across its end.</summary>
    public static void DrawNull(PictureSheet sheet, SKPoint from, double angleRad, float size)
    {
        using SKPaint halo = PictureSheet.Pen(Palette.Paper, 8), pen = PictureSheet.Pen(Palette.Null, 5, 11, 7), bar = PictureSheet.Pen(Palette.Null, 6);
        SKPoint end = At(from, angleRad, NullPx * size);
        sheet.Line(from, end, halo);
        sheet.Line(from, end, pen);
        sheet.Line(At(end, angleRad + (Math.PI / 2), 13), At(end, angleRad - (Math.PI / 2), 13), bar);
    }
}
