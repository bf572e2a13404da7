using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Quantities;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Where the two views go on the sheet, both at one scale.</summary>
internal sealed record SheetLayout(ViewProjection Plan, ViewProjection Side, float LegendTop)
{
    public const int WidthPx = 1200;
    public const float MarginPx = 24;
    public const float CaptionPx = 54;

    private const double LargestPxPerMeter = 380;

    // A camera further from the cabin than this is drawn by its fan alone; else it would shrink the car.
    private const double CameraReachM = 0.6;
    private const double SideMarginM = 0.3;
    private const double AboveAndBelowM = 0.18;

    public static SheetLayout For(CabinGeometry cabin, Scene scene)
    {
        Box3D interior = cabin.Interior;
        Vector3D min = interior.Min - new Vector3D(SideMarginM, AboveAndBelowM, AboveAndBelowM), max = interior.Max + new Vector3D(SideMarginM, AboveAndBelowM, AboveAndBelowM);
        var reach = new Vector3D(CameraReachM, CameraReachM, CameraReachM);
        var near = new Box3D(interior.Min - reach, interior.Max + reach);
        const double Around = 0.2;
        foreach (Vector3D eye in scene.Shots.Select(s => s.Position).Where(near.Contains))
        {
            min = new(Math.Min(min.X, eye.X - Around), Math.Min(min.Y, eye.Y - Around), Math.Min(min.Z, eye.Z - Around));
            max = new(Math.Max(max.X, eye.X + Around), Math.Max(max.Y, eye.Y + Around), Math.Max(max.Z, eye.Z + Around));
        }

        float width = WidthPx - (2 * MarginPx);
        double scale = Math.Min(width / (max.X - min.X), LargestPxPerMeter);
        float originX = (float)((WidthPx / 2.0) - (scale * (min.X + max.X) / 2));
        float top = CaptionPx;
        var planFrame = SKRect.Create(MarginPx, top, width, (float)Math.Ceiling(scale * (max.Y - min.Y)));
        var plan = new ViewProjection(OutlineView.Plan, new(originX, planFrame.Top + (float)(scale * max.Y)), scale, planFrame);
        var sideFrame = SKRect.Create(MarginPx, planFrame.Bottom + CaptionPx, width, (float)Math.Ceiling(scale * (max.Z - min.Z)));
        var side = new ViewProjection(OutlineView.Side, new(originX, sideFrame.Top + (float)(scale * max.Z)), scale, sideFrame);
        return new(plan, side, sideFrame.Bottom);
    }

    /// <summary>True when a camera's eye is inside the view's frame, so that its body can be drawn.</summary>
    public static bool Shows(ViewProjection view, Vector3D eye) => view.Frame.Contains(view.Point(eye));
}
