using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

/// <summary>Cabins and measurements the tests share.</summary>
internal static class Cabins
{
    public static readonly BodyStyle[] Bodies = Enum.GetValues<BodyStyle>();

    public static TheoryData<BodyStyle> AllBodies => [.. Bodies];

    public static CabinSpec Spec(BodyStyle body, CabinMeasurements? measurements = null) =>
        new() { Body = body, DriveSide = DriveSide.Left, Engine = EngineLayout.Front, Measurements = measurements };

    public static CabinGeometry Of(BodyStyle body) => CabinBuilder.Build(Spec(body));

    public static IEnumerable<(string Name, SeatedHead Head)> Heads(CabinGeometry cabin) =>
        cabin.Seats.Select(s => (SeatWords.Of(s.Id) + " head", SeatedHead.In(s, new HeadPose())));

    /// <summary>Every measurement scaled by its own factor, in field order.</summary>
    public static CabinMeasurements Scaled(CabinMeasurements m, double[] factors) => new()
    {
        ShoulderWidthM = m.ShoulderWidthM * factors[0],
        FrontHeightM = m.FrontHeightM * factors[1],
        RearHeightM = m.RearHeightM * factors[2],
        DashToBackrestM = m.DashToBackrestM * factors[3],
        DashDepthM = m.DashDepthM * factors[4],
        DashHeightM = m.DashHeightM * factors[5],
        RowSpacingM = m.RowSpacingM * factors[6],
        BehindLastRowM = m.BehindLastRowM * factors[7],
        SeatSpacingM = m.SeatSpacingM * factors[8],
        CushionHeightM = m.CushionHeightM * factors[9],
        SillHeightM = m.SillHeightM * factors[10],
    };

    /// <summary>The same measurements with one set by its field name.</summary>
    public static CabinMeasurements With(CabinMeasurements m, string field, double value) => field switch
    {
        CabinRules.ShoulderWidthField => m with { ShoulderWidthM = value },
        CabinRules.FrontHeightField => m with { FrontHeightM = value },
        CabinRules.RearHeightField => m with { RearHeightM = value },
        CabinRules.DashToBackrestField => m with { DashToBackrestM = value },
        CabinRules.DashDepthField => m with { DashDepthM = value },
        CabinRules.DashHeightField => m with { DashHeightM = value },
        CabinRules.RowSpacingField => m with { RowSpacingM = value },
        CabinRules.BehindLastRowField => m with { BehindLastRowM = value },
        CabinRules.SeatSpacingField => m with { SeatSpacingM = value },
        CabinRules.CushionHeightField => m with { CushionHeightM = value },
        CabinRules.SillHeightField => m with { SillHeightM = value },
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Unknown field."),
    };

    /// <summary>Distance from a point to a box, metres; zero inside.</summary>
    public static double Distance(Box3D box, Vector3D point) => box.Clamp(point).DistanceTo(point);
}
