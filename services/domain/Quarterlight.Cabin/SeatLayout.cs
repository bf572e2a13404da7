using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Places the seats. Shapes of a seat about its reference point are judgement, kept clear of the head that sits in it.</summary>
internal static class SeatLayout
{
    public const double ReferenceAboveCushionM = 0.01;
    public const double BackrestFrontBehindReferenceM = 0.22;
    public const double BackrestThicknessM = 0.12;
    public const double BackrestTopM = 0.58;
    public const double LowestRearCushionM = 0.15;
    private const double WidestHalfM = 0.245;

    public static IReadOnlyList<Seat> Seats(CabinLayout cabin)
    {
        CabinMeasurements m = cabin.M;
        double front = m.SeatSpacingM / 2;
        bool three = cabin.Traits.FrontCentreSeat;
        double frontHalf = Math.Min(WidestHalfM, Math.Min(three ? front / 2 : front - 0.02, cabin.HalfWidth - front));
        var seats = new List<Seat> { Make(cabin, "driver", 1, front, frontHalf, true) };
        if (three)
        {
            seats.Add(Make(cabin, "front-centre", 1, 0, Math.Min(WidestHalfM, front / 2), false));
        }

        seats.Add(Make(cabin, "front-passenger", 1, -front, frontHalf, true));
        if (cabin.Traits.Rows >= 2)
        {
            AddBench(cabin, seats, "rear", 2, cabin.Traits.RearCentreSeat, cabin.Traits.RearDoors);
        }

        if (cabin.Traits.Rows == 3)
        {
            AddBench(cabin, seats, "third", 3, false, false);
        }

        return seats;
    }

    private static void AddBench(CabinLayout cabin, List<Seat> seats, string row, int number, bool centre, bool door)
    {
        double y = cabin.HalfWidth - (centre ? 0.33 : 0.36);
        double half = Math.Min(WidestHalfM, centre ? y / 2 : y - 0.02);
        seats.Add(Make(cabin, row + "-left", number, y, half, door));
        if (centre)
        {
            seats.Add(Make(cabin, row + "-centre", number, 0, y / 2, false));
        }

        seats.Add(Make(cabin, row + "-right", number, -y, half, door));
    }

    private static Seat Make(CabinLayout cabin, string id, int row, double y, double half, bool door)
    {
        double x = -(row - 1) * cabin.M.RowSpacingM;
        double cushion = cabin.M.CushionHeightM;
        if (row > 1)
        {
            // Rear rows sit a little higher where the roof allows it and lower where it does not.
            double fits = cabin.RoofZ(x - SeatedHead.CenterBehindReferenceM) - CabinRules.HeadHeightOverCushionM - 0.01;
            cushion = Math.Max(LowestRearCushionM, Math.Min(cushion + (0.03 * (row - 1)), fits));
        }

        double z = cushion + ReferenceAboveCushionM;
        double back = x - BackrestFrontBehindReferenceM;
        double rest = Math.Min(0.13, half);
        return new Seat
        {
            Id = id,
            Row = row,
            ReferencePoint = new(x, y, z),
            Cushion = new Box3D(new(back, y - half, cushion - 0.12), new(x + 0.30, y + half, cushion)),
            Backrest = new Box3D(new(back - BackrestThicknessM, y - half, cushion), new(back, y + half, z + BackrestTopM)),
            Headrest = new Box3D(new(back - BackrestThicknessM, y - rest, z + 0.62), new(x - 0.275, y + rest, z + 0.80)),
            NextToDoor = door,
        };
    }
}
