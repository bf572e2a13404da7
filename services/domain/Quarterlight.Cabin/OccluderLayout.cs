using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Everything opaque, heads aside. Thicknesses are judgement.</summary>
internal static class OccluderLayout
{
    /// <summary>Half the thickness of a pillar, metres.</summary>
    public const double PillarRadiusM = 0.04;

    private const double WheelRadiusM = 0.185;
    private const int WheelChords = 8;
    private const double RoofThicknessM = 0.05;
    private const double DoorThicknessM = 0.12;

    public static List<Occluder> Occluders(CabinLayout cabin, InteriorMirror? mirror)
    {
        var found = new List<Occluder>();
        AddSeats(found, cabin);
        AddFront(found, cabin, mirror);
        AddRoof(found, cabin);
        AddBody(found, cabin);
        AddPillars(found, cabin);
        return found;
    }

    /// <summary>The wheel rim as a closed ring of points, leaning 25 degrees from upright (judgement).</summary>
    public static IReadOnlyList<Vector3D> WheelRing(CabinLayout cabin)
    {
        double lean = Angles.DegToRad(25);
        var up = new Vector3D(Math.Sin(lean), 0, Math.Cos(lean));
        return [.. Enumerable.Range(0, WheelChords).Select(i =>
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * i / WheelChords);
            return cabin.WheelCenter + (WheelRadiusM * cos * Vector3D.Left) + (WheelRadiusM * sin * up);
        })];
    }

    private static void AddSeats(List<Occluder> found, CabinLayout cabin)
    {
        foreach (Seat seat in cabin.Seats)
        {
            string words = SeatWords.Of(seat.Id);
            found.Add(new BoxOccluder(words + " backrest", seat.Backrest));
            found.Add(new BoxOccluder(words + " headrest", seat.Headrest));
            found.Add(new BoxOccluder(words + " cushion", seat.Cushion));
        }
    }

    private static void AddFront(List<Occluder> found, CabinLayout cabin, InteriorMirror? mirror)
    {
        double w = cabin.HalfWidth, dash = cabin.M.DashHeightM;
        found.Add(new BoxOccluder("dash", new Box3D(new(cabin.DashRearX, -w, Math.Max(0, dash - 0.30)), new(cabin.ScreenBaseX, w, dash))));
        found.Add(new BoxOccluder("front bulkhead", new Box3D(new(cabin.ScreenBaseX, -w, 0), new(cabin.ScreenBaseX + 0.05, w, dash))));
        found.Add(new BoxOccluder("steering wheel hub", Box3D.Around(cabin.WheelCenter, 0.08, 0.16, 0.12)));
        IReadOnlyList<Vector3D> ring = WheelRing(cabin);
        for (int i = 0; i < ring.Count; i++)
        {
            found.Add(new PostOccluder("steering wheel", ring[i], ring[(i + 1) % ring.Count], 0.016));
        }

        if (mirror is not null)
        {
            // The housing stands clear of the glass on the far side, so that it never cuts the mirror's own sight lines.
            Vector3D c = mirror.Center;
            double far = c.X + MirrorLayout.HousingGapM;
            found.Add(new BoxOccluder("interior mirror", new Box3D(
                new(far, c.Y - (mirror.WidthM / 2), c.Z - (mirror.HeightM / 2)), new(far + 0.02, c.Y + (mirror.WidthM / 2), c.Z + (mirror.HeightM / 2)))));
        }
    }

    private static void AddRoof(List<Occluder> found, CabinLayout cabin)
    {
        // A sloping roof in slices; a glass roof over the front seats hides nothing.
        double w = cabin.RoofHalfWidth, split = cabin.GlassRoofRearX;
        if (!cabin.Spec.GlassRoof)
        {
            Slice(cabin.HeaderX, split);
        }

        const int RearSlices = 3;
        double from = Math.Min(split, cabin.HeaderX);
        if (cabin.RearHeaderX >= from)
        {
            return;
        }

        double step = (from - cabin.RearHeaderX) / RearSlices;
        for (int i = 0; i < RearSlices; i++)
        {
            Slice(from - (i * step), from - ((i + 1) * step));
        }

        void Slice(double front, double rear)
        {
            double z = Math.Max(cabin.RoofZ(front), cabin.RoofZ(rear));
            found.Add(new BoxOccluder("roof", new Box3D(new(rear, -w, z), new(front, w, z + RoofThicknessM))));
        }
    }

    private static void AddBody(List<Occluder> found, CabinLayout cabin)
    {
        double w = cabin.HalfWidth, sill = cabin.M.SillHeightM;
        foreach ((string words, int side) in Sides.Both)
        {
            double inner = side * w, outer = side * (w + DoorThicknessM);
            double low = Math.Min(inner, outer), high = Math.Max(inner, outer);
            found.Add(new BoxOccluder($"{words} side below the glass", new Box3D(new(cabin.RearX, low, 0), new(cabin.ScreenBaseX, high, sill))));
        }

        double rearTop = cabin.Traits.Bulkhead ? cabin.Interior.Max.Z : sill;
        string rearWords = cabin.Traits.Bulkhead ? "bulkhead" : "rear end below the glass";
        found.Add(new BoxOccluder(rearWords, new Box3D(new(cabin.RearX - 0.1, -w, 0), new(cabin.RearX, w, rearTop))));
        found.Add(new BoxOccluder("floor", new Box3D(new(cabin.RearX, -w, -0.1), new(cabin.ScreenBaseX, w, 0))));
        if (cabin.Traits.ParcelShelf && cabin.LastBackrestRearX - cabin.RearX > 0.05)
        {
            found.Add(new BoxOccluder("parcel shelf", new Box3D(new(cabin.RearX, -w, sill - 0.03), new(cabin.LastBackrestRearX, w, sill))));
        }
    }

    private static void AddPillars(List<Occluder> found, CabinLayout cabin)
    {
        foreach ((string words, int side) in Sides.Both)
        {
            found.Add(new PostOccluder($"{words} windscreen pillar", cabin.OnScreenPillar(0, side), cabin.OnScreenPillar(1, side), PillarRadiusM));
            foreach (PillarLine pillar in PillarLine.Behind(cabin))
            {
                found.Add(new PostOccluder($"{words} {pillar.Words}", pillar.At(cabin, cabin.M.SillHeightM, side), pillar.At(cabin, pillar.TopZ(cabin), side), PillarRadiusM));
            }
        }
    }
}
