using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Mount sites overhead, on the seats and behind them: headliner, headrests, seat backs, shelf, floor, bulkhead.</summary>
internal static class RoofAndSeatSites
{
    public static void AddTo(SiteCollector sites)
    {
        AddHeadliner(sites);
        foreach (Seat seat in sites.Cabin.Seats)
        {
            AddSeat(sites, seat);
        }

        AddRear(sites);
        AddFloor(sites);
    }

    private static void AddHeadliner(SiteCollector sites)
    {
        CabinLayout cabin = sites.Cabin;
        double row = cabin.M.RowSpacingM;
        var along = new List<(string Id, string Words, double X, int Row)>
        {
            ("visors", "just behind the visors", cabin.HeaderX - 0.14, 1),
            ("front", "in front of the front row's heads", 0.06, 1),
            ("above-front", "above the front row's heads", -SeatedHead.CenterBehindReferenceM, 1),
        };
        for (int behind = 2; behind <= cabin.Traits.Rows; behind++)
        {
            string name = behind == 2 ? "rear" : "third";
            double reference = -(behind - 1) * row;
            along.Add(($"between-{name}", behind == 2 ? "between front and rear row" : "between second and third row", reference + (row * 0.5) - SeatedHead.CenterBehindReferenceM, behind - 1));
            along.Add(($"{name}", $"in front of the {name} row's heads", reference + 0.06, behind));
            along.Add(($"above-{name}", $"above the {name} row's heads", reference - SeatedHead.CenterBehindReferenceM, behind));
        }

        if (cabin.LastHeadX - cabin.RearHeaderX > 0.30)
        {
            along.Add(("load", "above the load space", (cabin.LastHeadX + cabin.RearHeaderX) / 2, 0));
        }

        foreach ((string id, string words, double x, int rowNumber) in along)
        {
            double seatY = SeatY(cabin, rowNumber);
            SurfaceMaterial material = cabin.Spec.GlassRoof && x > cabin.BeltX - 0.1 ? SurfaceMaterial.Glass : SurfaceMaterial.Cloth;
            foreach ((string place, string placeWords, double y) in new[] { ("driver", "driver side", seatY), ("centre", "centre", 0.0), ("passenger", "passenger side", -seatY) })
            {
                sites.Add(MountFamily.Headliner, $"headliner-{id}-{place}", $"headliner {words}, {placeWords}", new(x, y, cabin.RoofZ(x)), -Vector3D.Up, material, VibrationGrade.Low);
            }
        }
    }

    // Above the outer seats of the row, but on the headliner, clear of the roof rail.
    private static double SeatY(CabinLayout cabin, int row)
    {
        double y = row == 0 ? cabin.M.SeatSpacingM / 2 : cabin.Seats.Where(s => s.Row == row).Max(s => s.ReferencePoint.Y);
        return Math.Min(y, cabin.RoofHalfWidth - 0.10);
    }

    private static void AddSeat(SiteCollector sites, Seat seat)
    {
        CabinLayout cabin = sites.Cabin;
        string words = SeatWords.Of(seat.Id);
        double y = seat.ReferencePoint.Y, z = (seat.Backrest.Max.Z + seat.Headrest.Min.Z) / 2;
        double x = (seat.Headrest.Min.X + seat.Headrest.Max.X) / 2;
        double post = Math.Min(0.07, seat.Headrest.Size.Y / 3);
        double outward = y >= 0 ? 1 : -1;
        if (y != 0)
        {
            Post("inner", "post on the side toward the middle", -outward);
            Post("outer", "post on the door side", outward);
        }
        else
        {
            Post("driver", "post on the driver side", 1);
            Post("passenger", "post on the passenger side", -1);
        }

        if (seat.Row == cabin.Traits.Rows)
        {
            return;
        }

        Box3D back = seat.Backrest;
        foreach ((string id, string height, double share) in new[] { ("upper", "upper", 0.92), ("middle", "middle", 0.6), ("pocket", "map pocket", 0.35) })
        {
            var position = new Vector3D(back.Min.X, y, back.Min.Z + (share * back.Size.Z));
            sites.Add(MountFamily.SeatBack, $"seatback-{seat.Id}-{id}", $"back of the {words} seat, {height}", position, -Vector3D.Forward, SiteMaterials.Seat(cabin.Spec), VibrationGrade.Low, seat.Id);
        }

        void Post(string id, string side, double sign) => sites.Add(
            MountFamily.HeadrestPost, $"headrest-{seat.Id}-{id}", $"{words} headrest, {side}", new(x, y + (sign * post), z), new(0, sign, 0), SurfaceMaterial.Metal, VibrationGrade.Low, seat.Id);
    }

    private static void AddRear(SiteCollector sites)
    {
        CabinLayout cabin = sites.Cabin;
        double y = cabin.M.SeatSpacingM / 2;
        var across = new[] { ("driver", "driver side", y), ("centre", "centre", 0.0), ("passenger", "passenger side", -y) };
        if (cabin.Traits.Bulkhead)
        {
            foreach ((string id, string words, double at) in across)
            {
                Vector3D high = new(cabin.RearX, at, cabin.M.FrontHeightM - 0.12), low = new(cabin.RearX, at * 0.5, cabin.M.CushionHeightM + 0.55);
                sites.Add(MountFamily.Bulkhead, $"bulkhead-{id}-high", $"bulkhead above the heads, {words}", high, Vector3D.Forward, SurfaceMaterial.PaintedMetal, VibrationGrade.High);
                sites.Add(MountFamily.Bulkhead, $"bulkhead-{id}-low", $"bulkhead between the seats at shoulder height, {words}", low, Vector3D.Forward, SurfaceMaterial.PaintedMetal, VibrationGrade.High);
            }

            return;
        }

        if (cabin.Traits.ParcelShelf && cabin.LastBackrestRearX - cabin.RearX >= 0.10)
        {
            double x = (cabin.LastBackrestRearX + cabin.RearX) / 2;
            foreach ((string id, string words, double at) in across)
            {
                sites.Add(MountFamily.ParcelShelf, $"shelf-{id}", $"parcel shelf, {words}", new(x, at, cabin.ShelfZ), Vector3D.Up, SurfaceMaterial.Carpet, VibrationGrade.Medium);
            }
        }

        foreach ((string id, string words, double at) in across)
        {
            sites.Add(MountFamily.FixedGlass, $"rear-glass-{id}", $"rear window, halfway up, {words}", cabin.OnRearGlass(0.5, at), cabin.RearGlassNormal, SurfaceMaterial.Glass, VibrationGrade.High);
        }
    }

    private static void AddFloor(SiteCollector sites)
    {
        CabinLayout cabin = sites.Cabin;
        foreach ((string words, int side) in Sides.Both)
        {
            double y = side * cabin.M.SeatSpacingM / 2;
            Add($"floor-{words}", $"{words} footwell, near the seat", new(Math.Min(0.36, cabin.DashRearX), y, 0), FrontSites.SeatOf(side));
            for (int row = 2; row <= cabin.Traits.Rows; row++)
            {
                string seat = $"{(row == 2 ? "rear" : "third")}-{Sides.LeftOrRight(side)}";
                double x = (-(row - 1) * cabin.M.RowSpacingM) + 0.36;
                Add($"floor-{seat}", $"{seat.Replace('-', ' ')} footwell ({words} side)", new(x, y, 0), seat);
            }
        }

        void Add(string id, string words, Vector3D position, string seatId) =>
            sites.Add(MountFamily.Floor, id, words, position, Vector3D.Up, SurfaceMaterial.Carpet, VibrationGrade.High, seatId);
    }
}
