using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Draws a cabin as lines from above and from the side.</summary>
internal static class CabinOutline
{
    public static IReadOnlyList<OutlineStroke> Strokes(CabinLayout cabin)
    {
        var strokes = new List<OutlineStroke>();
        AddPlan(strokes, cabin);
        AddSide(strokes, cabin);
        return strokes;
    }

    private static void AddPlan(List<OutlineStroke> strokes, CabinLayout cabin)
    {
        double w = cabin.HalfWidth, front = cabin.ScreenBaseX, rear = cabin.RearX, z = cabin.M.SillHeightM;
        double round = Math.Min(0.12, (front - cabin.DashRearX) / 2);
        Plan(OutlineKind.Body, true,
            (front, w - round), (front - round, w), (rear + round, w), (rear, w - round),
            (rear, -(w - round)), (rear + round, -w), (front - round, -w), (front, -(w - round)));

        // The windscreen seen from above bows forward in the middle by a hand's breadth (judgement).
        const double BowM = 0.08;
        Plan(OutlineKind.Windscreen, false, (front - BowM, w - 0.06), (front, 0.4 * w), (front, -0.4 * w), (front - BowM, -(w - 0.06)));
        double roof = cabin.RoofHalfWidth;
        Plan(OutlineKind.Roof, true, (cabin.HeaderX, roof), (cabin.RearHeaderX, roof), (cabin.RearHeaderX, -roof), (cabin.HeaderX, -roof));
        Plan(OutlineKind.RearGlass, false, (rear + 0.02, w - 0.1), (rear + 0.02, -(w - 0.1)));
        Plan(OutlineKind.Dash, false, (cabin.DashRearX, w), (cabin.DashRearX, -w));
        strokes.Add(new OutlineStroke(OutlineKind.Wheel, OutlineView.Plan, OccluderLayout.WheelRing(cabin), true));
        if (cabin.Traits.ParcelShelf)
        {
            Plan(OutlineKind.Shelf, false, (cabin.LastBackrestRearX, w), (cabin.LastBackrestRearX, -w));
        }

        void Plan(OutlineKind kind, bool closed, params (double X, double Y)[] points) =>
            strokes.Add(new OutlineStroke(kind, OutlineView.Plan, [.. points.Select(p => new Vector3D(p.X, p.Y, z))], closed));
    }

    private static void AddSide(List<OutlineStroke> strokes, CabinLayout cabin)
    {
        CabinMeasurements m = cabin.M;
        double front = cabin.ScreenBaseX, rear = cabin.RearX, dash = m.DashHeightM, sill = m.SillHeightM;
        double headX = -SeatedHead.CenterBehindReferenceM;
        (double, double)[] roof =
        [
            (cabin.HeaderX, m.FrontHeightM), (headX, m.FrontHeightM), (cabin.LastHeadX, cabin.RoofZ(cabin.LastHeadX)), (cabin.RearHeaderX, cabin.RoofZ(cabin.RearHeaderX)),
        ];
        Side(OutlineKind.Body, true, [(front, 0), (front, dash), .. roof, (rear, sill), (rear, 0)]);
        Side(OutlineKind.Windscreen, false, (front, dash), (cabin.HeaderX, m.FrontHeightM));
        Side(OutlineKind.Roof, false, roof);
        Side(OutlineKind.RearGlass, false, (cabin.RearHeaderX, cabin.RoofZ(cabin.RearHeaderX)), (rear, sill));
        double under = Math.Max(0, dash - 0.30);
        Side(OutlineKind.Dash, true, (front, dash), (cabin.DashRearX, dash), (cabin.DashRearX, dash - 0.12), (cabin.DashRearX + 0.1, under), (front, under));
        Side(OutlineKind.Sill, false, (cabin.FrontPaneFrontX, sill), (rear, sill));
        foreach (PillarLine pillar in PillarLine.Behind(cabin))
        {
            Side(OutlineKind.Pillar, false, (pillar.BottomX, sill), (pillar.TopX, pillar.TopZ(cabin)));
        }

        IReadOnlyList<Vector3D> ring = OccluderLayout.WheelRing(cabin);
        Vector3D top = ring.MaxBy(p => p.Z), bottom = ring.MinBy(p => p.Z);
        Side(OutlineKind.Wheel, false, (bottom.X, bottom.Z), (top.X, top.Z));
        if (cabin.Traits.ParcelShelf)
        {
            Side(OutlineKind.Shelf, false, (cabin.LastBackrestRearX, cabin.ShelfZ), (rear, cabin.ShelfZ));
        }

        void Side(OutlineKind kind, bool closed, params (double X, double Z)[] points) =>
            strokes.Add(new OutlineStroke(kind, OutlineView.Side, [.. points.Select(p => new Vector3D(p.X, 0, p.Z))], closed));
    }
}
