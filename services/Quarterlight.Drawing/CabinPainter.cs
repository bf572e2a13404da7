using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Quantities;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Draws the car itself: seats, outline, wheel, mirror, open windows, engine.</summary>
internal static class CabinPainter
{
    public static void DrawCar(PictureSheet sheet, ViewProjection view, CabinGeometry cabin)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.CarFill), edge = PictureSheet.Pen(Palette.CarLine, 2);
        foreach (Seat seat in cabin.Seats)
        {
            foreach (Box3D part in (Box3D[])[seat.Cushion, seat.Backrest, seat.Headrest])
            {
                SKRect box = view.Rectangle(part);
                sheet.Canvas.DrawRoundRect(box, 8, 8, fill);
                sheet.Canvas.DrawRoundRect(box, 8, 8, edge);
            }
        }

        foreach (OutlineStroke stroke in cabin.Outline.Where(s => s.View == view.View))
        {
            using SKPaint pen = PenFor(stroke.Kind);
            sheet.Shape(stroke.Points.Select(view.Point), stroke.Closed, pen);
        }

        DrawMirror(sheet, view, cabin.Mirror);
    }

    public static IEnumerable<WindowPane> OpenPanes(CabinGeometry cabin, Scene scene) =>
        cabin.Windows.Where(p => scene.Drive.OpenWindows.Any(w => w.PaneId == p.Id && w.OpenFraction > 0));

    /// <summary>Draws open windows: a thick barred line from above, a hatched pane from the side.</summary>
    public static void DrawOpenWindows(PictureSheet sheet, ViewProjection view, CabinGeometry cabin, Scene scene)
    {
        using SKPaint edge = PictureSheet.Pen(Palette.Ink, 2), hatch = PictureSheet.Pen(Palette.CarLine, 1.5f), tint = PictureSheet.Brush(Palette.OpenWindow);
        foreach (WindowPane pane in OpenPanes(cabin, scene))
        {
            SKRect box = view.Rectangle(pane.Glass);
            if (view.View == OutlineView.Plan)
            {
                box.Inflate(0, 7);
                sheet.Canvas.DrawRect(box, tint);
            }

            sheet.Canvas.DrawRect(box, edge);
            sheet.Canvas.Save();
            sheet.Canvas.ClipRect(box);
            for (float x = box.Left - box.Height; x < box.Right; x += 18)
            {
                sheet.Line(new(x, box.Bottom), new(x + box.Height, box.Top), hatch);
            }

            sheet.Canvas.Restore();
        }
    }

    public static NoisePort? Engine(CabinGeometry cabin) => cabin.NoisePorts.FirstOrDefault(p => p.Kind == NoisePortKind.Engine);

    /// <summary>Draws the engine where its noise enters: a toothed disc, hollow when it is off.</summary>
    public static void DrawEngine(PictureSheet sheet, SKPoint at, bool running)
    {
        const int Teeth = 8;
        IEnumerable<SKPoint> gear = Enumerable.Range(0, 4 * Teeth).Select(i =>
        {
            float radius = i % 4 is 0 or 1 ? 30 : 21;
            (float sin, float cos) = MathF.SinCos((i - 0.5f) * MathF.PI / (2 * Teeth));
            return new SKPoint(at.X + (radius * cos), at.Y + (radius * sin));
        });
        using SKPaint fill = PictureSheet.Brush(running ? Palette.Engine : Palette.Paper), edge = PictureSheet.Pen(Palette.Ink, 3);
        SKPoint[] points = [.. gear];
        sheet.Shape(points, true, fill);
        sheet.Shape(points, true, edge);
        sheet.Canvas.DrawCircle(at, 8, edge);
    }

    private static SKPaint PenFor(OutlineKind kind) => kind switch
    {
        OutlineKind.Body => PictureSheet.Pen(Palette.Ink, 5),
        OutlineKind.Windscreen or OutlineKind.RearGlass => PictureSheet.Pen(Palette.CarLine, 5),
        OutlineKind.Wheel => PictureSheet.Pen(Palette.Ink, 6),
        OutlineKind.Roof => PictureSheet.Pen(Palette.CarLine, 2, 3, 7),
        _ => PictureSheet.Pen(Palette.CarLine, 3),
    };

    private static void DrawMirror(PictureSheet sheet, ViewProjection view, InteriorMirror? mirror)
    {
        if (mirror is null)
        {
            return;
        }

        Vector3D across = Vector3D.Up.Cross(mirror.Normal).Normalized(), upward = mirror.Normal.Cross(across);
        Vector3D half = view.View == OutlineView.Plan ? 0.5 * mirror.WidthM * across : 0.5 * mirror.HeightM * upward;
        using SKPaint pen = PictureSheet.Pen(Palette.Ink, 7);
        sheet.Line(view.Point(mirror.Center - half), view.Point(mirror.Center + half), pen);
    }
}
