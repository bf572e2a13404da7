using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Takes the glass off the cabin's own lines: the windscreen between its pillars, the rear glass, the leaning side panes, a glass roof.</summary>
internal static class GlazingLayout
{
    public static IReadOnlyList<GlazingPane> Panes(CabinLayout cabin, IReadOnlyList<WindowPane> windows)
    {
        double pillar = OccluderLayout.PillarRadiusM;
        var panes = new List<GlazingPane>(windows.Count + 3)
        {
            new("windscreen", -cabin.ScreenNormal, Area(cabin.OnScreen(0, 0), cabin.OnScreen(1, 0), cabin.HalfWidth - pillar, cabin.RoofHalfWidth - pillar)),
        };
        if (!cabin.Traits.Bulkhead)
        {
            Vector3D low = cabin.OnRearGlass(0, 0), high = cabin.OnRearGlass(1, 0);
            double share = CabinLayout.RearGlassWidthFraction;
            panes.Add(new("rear", -cabin.RearGlassNormal, Area(low, high, share * cabin.SideY(low.Z), share * cabin.SideY(high.Z))));
        }

        // The windows are rectangles seen from the side; the glass leans in with the side and is that much larger.
        double rise = cabin.M.FrontHeightM - cabin.M.SillHeightM, inward = cabin.HalfWidth - cabin.RoofHalfWidth;
        double slant = Math.Sqrt((rise * rise) + (inward * inward)) / rise;
        foreach (WindowPane window in windows)
        {
            int side = window.Face == CabinFace.Left ? 1 : -1;
            panes.Add(new(window.Id, new Vector3D(0, side * rise, inward).Normalized(), slant * window.Glass.Size.X * window.Glass.Size.Z));
        }

        if (cabin.Spec.GlassRoof)
        {
            double length = cabin.HeaderX - cabin.GlassRoofRearX, width = 2 * cabin.RoofHalfWidth * CabinLayout.GlassRoofWidthFraction;
            panes.Add(new("roof", Vector3D.Up, length * width));
        }

        return panes;
    }

    // A trapezium from a lower to an upper edge.
    private static double Area(Vector3D low, Vector3D high, double lowHalfWidthM, double highHalfWidthM) =>
        low.DistanceTo(high) * (lowHalfWidthM + highHalfWidthM);
}
