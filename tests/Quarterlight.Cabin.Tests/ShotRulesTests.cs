using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class ShotRulesTests
{
    private static readonly CabinGeometry Saloon = Cabins.Of(BodyStyle.Saloon);
    private static readonly SeatedHead[] Heads = [.. Saloon.Seats.Select(s => SeatedHead.In(s, new HeadPose()))];

    private static readonly Shot Good = new()
    {
        Id = "A",
        Position = new(2.0, 0.2, 1.1),
        AimPoint = new(-0.17, 0.37, 1.0),
        FocalLengthMm = 35,
        SensorWidthMm = 24.9,
        SensorHeightMm = 14,
    };

    [Fact]
    public void Validate_GoodShots_Empty()
    {
        Assert.Empty(Check(Good));
        // Between the front heads, on the dash, outside a side window.
        Assert.Empty(Check(Good with { Position = new(-0.1, 0, 1.0) }));
        Assert.Empty(Check(Good with { Position = new(0.7, 0, 0.82) }));
        Assert.Empty(Check(Good with { Position = new(0.1, 1.4, 1.0) }));
    }

    [Theory]
    [InlineData(3.9)]
    [InlineData(301)]
    [InlineData(double.NaN)]
    [InlineData(-35)]
    public void Validate_FocalLength_NamesTheField(double focalMm) =>
        Assert.Equal("scene.shots[0].focal_length_mm", Assert.Single(Check(Good with { FocalLengthMm = focalMm })).Field);

    [Fact]
    public void Validate_SensorAndCoordinates_NamesEachField()
    {
        Shot bad = Good with { SensorWidthMm = 2, SensorHeightMm = 60, Position = new(double.NaN, 0, 0), AimPoint = new(0, 99, 0) };
        Assert.Equal(
            ["scene.shots[0].sensor_width_mm", "scene.shots[0].sensor_height_mm", "scene.shots[0].position.x_m", "scene.shots[0].aim_point.y_m"],
            Check(bad).Select(v => v.Field));
    }

    [Fact]
    public void Validate_AimTooNear_NamesTheAim() =>
        Assert.Equal("scene.shots[0].aim_point", Assert.Single(Check(Good with { AimPoint = Good.Position + new Vector3D(0.05, 0, 0) })).Field);

    public static TheoryData<double, double, double, string> SolidPlaces => new()
    {
        { Saloon.Seats[0].Backrest.Center.X, Saloon.Seats[0].Backrest.Center.Y, Saloon.Seats[0].Backrest.Center.Z, "driver's backrest" },
        { Saloon.Seats[1].Cushion.Center.X, Saloon.Seats[1].Cushion.Center.Y, Saloon.Seats[1].Cushion.Center.Z, "front passenger's cushion" },
        { Heads[0].Center.X, Heads[0].Center.Y, Heads[0].Center.Z, "head of a talker" },
        { 0.7, 0, 0.7, "dash" },
        { 0, 0, 1.2, "roof" },
        { 0, 0.78, 0.4, "driver side below the glass" },
    };

    [Theory]
    [MemberData(nameof(SolidPlaces))]
    public void Validate_CameraInsideSomething_SaysWhatAndTheWayOut(double x, double y, double z, string what)
    {
        Violation found = Assert.Single(Check(Good with { Position = new(x, y, z), AimPoint = new(x + 1, y, z) }));
        Assert.Equal("scene.shots[0].position", found.Field);
        Assert.Contains(what, found.Problem, StringComparison.Ordinal);
        Assert.Contains("Move it", found.Remedy, StringComparison.Ordinal);
    }

    private static IReadOnlyList<Violation> Check(Shot shot) => ShotRules.Validate(shot, Saloon, Heads, "scene.shots[0]");
}
