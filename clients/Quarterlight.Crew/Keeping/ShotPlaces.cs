using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Where a camera named in plain words stands in a car, and what it looks at, when nobody measured it.</summary>
internal enum ShotPlace
{
    /// <summary>On the bonnet, through the windscreen.</summary>
    Bonnet,

    /// <summary>On a tray outside the left front door.</summary>
    HostessLeft,

    /// <summary>On a tray outside the right front door.</summary>
    HostessRight,

    /// <summary>On the dash.</summary>
    Dash,

    /// <summary>Between the front seats, from the row behind.</summary>
    BackSeat,

    /// <summary>Behind the car, through the rear glass.</summary>
    RearWindow,
}

/// <summary>
/// Typical positions of cameras by the sizes of a car, in the car's frame. All of it is common practice, no source: about where
/// riggers put them, 0.58 m outside a door, 1.8 m ahead on a bonnet, at the height of the sitters' eyes.
/// </summary>
internal sealed class ShotPlaces(ListMountSitesResponse car)
{
    // A seated head over and behind the reference point of the hip: docs/models/cabin.md.
    private const double HeadAboveHipM = 0.72;
    private const double HeadBehindHipM = 0.17;

    private readonly CabinMeasurements sizes = car.Measurements ?? new CabinMeasurements();

    /// <summary>Height of the heads in front, metres above the floor.</summary>
    public double EyeHeightM => (car.Seats.FirstOrDefault(s => s.Row == 1)?.ReferencePoint.ZM ?? sizes.CushionHeightM) + HeadAboveHipM;

    /// <summary>Where a camera stands.</summary>
    public Position Stand(ShotPlace place) => place switch
    {
        ShotPlace.Bonnet => At(1.8, 0, sizes.DashHeightM + 0.3),
        ShotPlace.HostessLeft => At(0.3, (sizes.ShoulderWidthM / 2) + 0.58, EyeHeightM),
        ShotPlace.HostessRight => At(0.3, -(sizes.ShoulderWidthM / 2) - 0.58, EyeHeightM),
        ShotPlace.Dash => Above("dash-top-centre", 0.08) ?? At(0.6, 0, sizes.DashHeightM + 0.08),
        ShotPlace.BackSeat => At(0.12 - sizes.RowSpacingM, 0.05, EyeHeightM - 0.02),
        _ => At(-((Rows - 1) * sizes.RowSpacingM) - 0.34 - sizes.BehindLastRowM - 0.5, 0, EyeHeightM + 0.1),
    };

    /// <summary>What it looks at unless somebody is named, with words for it.</summary>
    public (Position Aim, string Words) Look(ShotPlace place) => place switch
    {
        ShotPlace.HostessLeft => (At(-HeadBehindHipM, -sizes.SeatSpacingM / 2, EyeHeightM - 0.05), "across at the right front seat"),
        ShotPlace.HostessRight => (At(-HeadBehindHipM, sizes.SeatSpacingM / 2, EyeHeightM - 0.05), "across at the left front seat"),
        ShotPlace.BackSeat => (At(0.1, 0, EyeHeightM - 0.08), "ahead between the front seats"),
        _ => (At(-HeadBehindHipM, 0, EyeHeightM - 0.1), "between the front seats"),
    };

    /// <summary>The head of somebody on a seat.</summary>
    public static Position Head(Seat seat) => At(seat.ReferencePoint.XM - HeadBehindHipM, seat.ReferencePoint.YM, seat.ReferencePoint.ZM + HeadAboveHipM);

    private int Rows => car.Seats.Count == 0 ? 1 : car.Seats.Max(s => s.Row);

    private Position? Above(string siteId, double byM) => car.Sites.FirstOrDefault(s => s.Id == siteId)?.Position is { } site ? At(site.XM, site.YM, site.ZM + byM) : null;

    // To a centimetre: more would only look measured.
    private static Position At(double x, double y, double z) => new() { XM = Math.Round(x, 2), YM = Math.Round(y, 2), ZM = Math.Round(z, 2) };
}
