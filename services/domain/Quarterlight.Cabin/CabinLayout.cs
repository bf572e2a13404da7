using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>
/// The lines of a cabin, worked out once from the measurements and used by all who place things in it. Always built with
/// the driver on the left; <see cref="LeftRight"/> turns the finished cabin over for right-hand drive.
/// </summary>
internal sealed class CabinLayout
{
    /// <summary>Roof narrower than the shoulders on each side, as a share of the width (judgement).</summary>
    private const double TumblehomeFraction = 0.08;

    /// <summary>Width of the rear glass as a share of the width inside (judgement).</summary>
    public const double RearGlassWidthFraction = 0.8;

    /// <summary>Width of a glass roof as a share of the roof's (judgement).</summary>
    public const double GlassRoofWidthFraction = 0.8;

    public CabinLayout(CabinSpec spec, CabinMeasurements m)
    {
        Spec = spec;
        M = m;
        Traits = BodyTraits.Of(spec.Body);
        DashRearX = m.DashToBackrestM - SeatLayout.BackrestFrontBehindReferenceM;
        ScreenBaseX = DashRearX + m.DashDepthM;
        double run = (m.FrontHeightM - m.DashHeightM) / Math.Tan(Angles.DegToRad(Traits.RakeDeg));
        HeaderX = Math.Clamp(ScreenBaseX - run, 0.10, ScreenBaseX - 0.10);
        LastReferenceX = -(Traits.Rows - 1) * m.RowSpacingM;
        LastBackrestRearX = LastReferenceX - SeatLayout.BackrestFrontBehindReferenceM - SeatLayout.BackrestThicknessM;
        RearX = LastBackrestRearX - m.BehindLastRowM;
        LastHeadX = LastReferenceX - SeatedHead.CenterBehindReferenceM;
        RearHeaderX = Math.Clamp(RearX + Traits.RearGlassRunM, RearX, LastHeadX - 0.05);
        HalfWidth = m.ShoulderWidthM / 2;
        RoofHalfWidth = HalfWidth - (TumblehomeFraction * m.ShoulderWidthM);
        BeltX = -0.30;
        double height = Traits.Rows == 1 ? m.FrontHeightM : Math.Max(m.FrontHeightM, m.RearHeightM);
        Interior = new Box3D(new(RearX, -HalfWidth, 0), new(ScreenBaseX, HalfWidth, height));
        WheelCenter = new(DashRearX - 0.13, m.SeatSpacingM / 2, m.DashHeightM - 0.07);
        Seats = SeatLayout.Seats(this);
        DriverEye = Seats[0].ReferencePoint + new Vector3D(-SeatedHead.CenterBehindReferenceM + 0.08, 0, SeatedHead.CenterAboveReferenceM + 0.02);
    }

    public CabinSpec Spec { get; }

    public CabinMeasurements M { get; }

    public BodyTraits Traits { get; }

    public bool HasAirbags => Spec.HasAirbags ?? CabinTemplates.For(Spec.Body).HasAirbags;

    public double DashRearX { get; }

    public double ScreenBaseX { get; }

    /// <summary>Top edge of the windscreen.</summary>
    public double HeaderX { get; }

    public double LastReferenceX { get; }

    public double LastBackrestRearX { get; }

    public double RearX { get; }

    public double LastHeadX { get; }

    /// <summary>Top edge of the rear glass.</summary>
    public double RearHeaderX { get; }

    public double HalfWidth { get; }

    public double RoofHalfWidth { get; }

    /// <summary>Middle pillar, where the front belts hang.</summary>
    public double BeltX { get; }

    /// <summary>Rear edge of a glass roof: over the front seats.</summary>
    public double GlassRoofRearX => BeltX - 0.1;

    public Box3D Interior { get; }

    public Vector3D WheelCenter { get; }

    public IReadOnlyList<Seat> Seats { get; }

    public Vector3D DriverEye { get; }

    /// <summary>Shelf or rear sill height.</summary>
    public double ShelfZ => M.SillHeightM;

    /// <summary>Front edge of the front side glass: as far as a rectangle reaches under the leaning pillar.</summary>
    public double FrontPaneFrontX => OnScreen(0.85, 0).X;

    /// <summary>Rear end of the second row's side glass.</summary>
    public double SecondPaneRearX => Math.Max(-M.RowSpacingM - 0.30, RearX + 0.02);

    /// <summary>Headliner height at a place along the car.</summary>
    public double RoofZ(double x)
    {
        double frontX = -SeatedHead.CenterBehindReferenceM;
        if (Traits.Rows == 1 || x >= frontX)
        {
            return M.FrontHeightM;
        }

        double share = Math.Clamp((frontX - x) / (frontX - LastHeadX), 0, 1);
        return M.FrontHeightM + (share * (M.RearHeightM - M.FrontHeightM));
    }

    /// <summary>Distance of the side trim or glass from the centre line at a height: upright to the sill, then leaning in.</summary>
    public double SideY(double z)
    {
        double share = Math.Clamp((z - M.SillHeightM) / (M.FrontHeightM - M.SillHeightM), 0, 1);
        return HalfWidth + (share * (RoofHalfWidth - HalfWidth));
    }

    /// <summary>A point on the windscreen: 0 at the base, 1 at the header.</summary>
    public Vector3D OnScreen(double share, double y) => new(
        ScreenBaseX + (share * (HeaderX - ScreenBaseX)), y, M.DashHeightM + (share * (M.FrontHeightM - M.DashHeightM)));

    /// <summary>Unit vector out of the windscreen into the cabin: back and down.</summary>
    public Vector3D ScreenNormal => new Vector3D(-(M.FrontHeightM - M.DashHeightM), 0, HeaderX - ScreenBaseX).Normalized();

    /// <summary>A point on the windscreen pillar's centre line: 0 at the base, 1 at the roof; side +1 is the driver's.</summary>
    public Vector3D OnScreenPillar(double share, int side) =>
        OnScreen(share, side * (HalfWidth + (share * (RoofHalfWidth - HalfWidth))));

    /// <summary>A point on the rear glass: 0 at the shelf, 1 at the rear header.</summary>
    public Vector3D OnRearGlass(double share, double y) => new(
        RearX + (share * (RearHeaderX - RearX)), y, ShelfZ + (share * (RoofZ(RearHeaderX) - ShelfZ)));

    /// <summary>Unit vector out of the rear glass into the cabin: forward and down.</summary>
    public Vector3D RearGlassNormal => new Vector3D(RoofZ(RearHeaderX) - ShelfZ, 0, -(RearHeaderX - RearX)).Normalized();
}
