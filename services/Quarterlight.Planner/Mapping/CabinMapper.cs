using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Domain = Quarterlight.Cabin;

namespace Quarterlight.Planner.Mapping;

/// <summary>Cars and mount sites.</summary>
internal static class CabinMapper
{
    public static CabinSpec ToDomain(V1.Cabin cabin, string prefix, FieldReader reader)
    {
        var spec = new CabinSpec
        {
            Body = reader.Enum<BodyStyle>($"{prefix}.body_style", cabin.BodyStyle),
            DriveSide = reader.Enum<DriveSide>($"{prefix}.drive_side", cabin.DriveSide),
            Engine = reader.Enum<EngineLayout>($"{prefix}.engine_layout", cabin.EngineLayout),
            Upholstery = reader.Enum<Upholstery>($"{prefix}.upholstery", cabin.Upholstery, Upholstery.Cloth),
            HasAirbags = cabin.AirbagFit switch { V1.AirbagFit.Fitted => true, V1.AirbagFit.None => false, _ => null },
            GlassRoof = cabin.GlassRoof,
            Measurements = cabin.Measurements is { } m ? ToDomain(m) : null,
        };
        if (cabin.HasCylinderCount)
        {
            DriveConditionsRules.Cylinders.Check($"{prefix}.cylinder_count", cabin.CylinderCount, reader.Violations);
        }

        reader.AddUnsaid(CabinRules.Validate(spec, prefix));
        return spec;
    }

    public static NoiseCar ToNoiseCar(V1.Cabin cabin) =>
        new(cabin.EngineLayout == V1.EngineLayout.Electric, cabin.HasCylinderCount ? cabin.CylinderCount : 4);

    public static V1.CabinMeasurements ToContract(CabinMeasurements m) => new()
    {
        ShoulderWidthM = m.ShoulderWidthM,
        FrontHeightM = m.FrontHeightM,
        RearHeightM = m.RearHeightM,
        DashToBackrestM = m.DashToBackrestM,
        DashDepthM = m.DashDepthM,
        DashHeightM = m.DashHeightM,
        RowSpacingM = m.RowSpacingM,
        BehindLastRowM = m.BehindLastRowM,
        SeatSpacingM = m.SeatSpacingM,
        CushionHeightM = m.CushionHeightM,
        SillHeightM = m.SillHeightM,
    };

    public static V1.Seat ToContract(Domain.Seat seat) => new()
    {
        Id = seat.Id,
        Row = seat.Row,
        ReferencePoint = GeometryMapper.ToContract(seat.ReferencePoint),
    };

    public static V1.MountSite ToContract(Domain.MountSite site)
    {
        var contract = new V1.MountSite
        {
            Id = site.Id,
            Words = site.Words,
            Family = site.Family.ToContract<V1.MountFamily>(),
            Position = GeometryMapper.ToContract(site.Position),
            Normal = GeometryMapper.ToDirection(site.Normal),
            Material = site.Material.ToContract<V1.SurfaceMaterial>(),
            FreeDepthM = site.FreeDepthM,
            AirbagZone = site.AirbagZone ?? "",
            InDriverView = site.InDriverView,
            OnMovingGlass = site.OnMovingGlass,
            NearVent = site.NearVent,
            VibrationGrade = site.Vibration.ToContract<V1.VibrationGrade>(),
            SeatId = site.SeatId ?? "",
        };
        contract.PermittedFixings.AddRange(FixingMapper.ToContract(site.PermittedFixings));
        return contract;
    }

    private static CabinMeasurements ToDomain(V1.CabinMeasurements m) => new()
    {
        ShoulderWidthM = m.ShoulderWidthM,
        FrontHeightM = m.FrontHeightM,
        RearHeightM = m.RearHeightM,
        DashToBackrestM = m.DashToBackrestM,
        DashDepthM = m.DashDepthM,
        DashHeightM = m.DashHeightM,
        RowSpacingM = m.RowSpacingM,
        BehindLastRowM = m.BehindLastRowM,
        SeatSpacingM = m.SeatSpacingM,
        CushionHeightM = m.CushionHeightM,
        SillHeightM = m.SillHeightM,
    };
}

/// <summary>Fixings: a set in the domain, a list in the contract.</summary>
internal static class FixingMapper
{
    private const int Kinds = 7;

    public static Fixings ToDomain(V1.Fixing fixing, string field, FieldReader reader)
    {
        int bit = (int)fixing - 1;
        if (bit is >= 0 and < Kinds)
        {
            return (Fixings)(1 << bit);
        }

        reader.Add(field, "this is no fixing", "Choose one of: SpringClip, SuctionCup, ArticulatedArm, PaperTape, ElasticTie, WeightedBase, BodyMount");
        return Fixings.None;
    }

    public static V1.Fixing ToContract1(Fixings fixing) => (V1.Fixing)(System.Numerics.BitOperations.TrailingZeroCount((int)fixing) + 1);

    public static IEnumerable<V1.Fixing> ToContract(Fixings set) =>
        Enumerable.Range(0, Kinds).Where(bit => ((int)set & (1 << bit)) != 0).Select(bit => (V1.Fixing)(bit + 1));
}
