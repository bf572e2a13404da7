using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class CameraViewTests
{
    // Pinhole geometry, field of view = 2 atan(w / 2f), worked by hand: 36 mm at 50 mm is 39.60 degrees, 24 mm is 26.99.
    [Theory]
    [InlineData(36, 50, 39.598)]
    [InlineData(36, 18, 90.0)]
    [InlineData(24.9, 35, 39.16)]
    [InlineData(6.17, 4.4, 70.07)]
    public void HalfAngle_SensorAndLens_IsTheClosedForm(double sensorMm, double focalMm, double fieldDeg)
    {
        var view = new CameraView(Shot(focalMm, sensorMm, sensorMm * 0.5625));
        Assert.Equal(fieldDeg, 2 * Angles.RadToDeg(view.HorizontalHalfAngleRad), 0.01);
        Assert.Equal(Math.Atan(0.5625 * Math.Tan(view.HorizontalHalfAngleRad)), view.VerticalHalfAngleRad, 12);
    }

    [Fact]
    public void InFrame_AtTheEdge_TurnsAtTheHalfAngleAndAtTheMargin()
    {
        var view = new CameraView(Shot(18, 36, 24));
        Vector3D At(double azimuthDeg) => view.Eye + Vector3D.FromAngles(Angles.DegToRad(azimuthDeg), 0);
        Assert.True(view.InFrame(At(44.9), 0));
        Assert.False(view.InFrame(At(45.1), 0));
        // 5 % of the half picture: atan(1.05) = 46.397 degrees.
        Assert.True(view.InFrame(At(46.3)));
        Assert.False(view.InFrame(At(46.5)));
        Assert.False(view.InFrame(At(180)));
        Assert.False(view.InFrame(view.Eye));
    }

    [Fact]
    public void Corners_AnyDistance_LieOnTheEdgeOfTheFrame()
    {
        var view = new CameraView(Shot(28, 36, 24) with { AimPoint = new(-1, 0.3, 0.8) });
        Vector3D[] corners = view.Corners(2);
        Assert.All(corners, c => Assert.True(view.InFrame(c, 1e-9) && !view.InFrame(c, -1e-6)));
        Assert.Equal(2 * 36.0 / 28, corners[0].DistanceTo(corners[1]), 9);
        Assert.Equal(2 * 24.0 / 28, corners[1].DistanceTo(corners[2]), 9);
        Assert.True(corners[0].Z > corners[3].Z);
        Assert.Equal(2 * view.HorizontalHalfAngleRad, (view.PlanFan(1)[1] - view.Eye).AngleTo(view.PlanFan(1)[2] - view.Eye), 9);
        Assert.Equal(2 * view.VerticalHalfAngleRad, (view.SideFan(1)[1] - view.Eye).AngleTo(view.SideFan(1)[2] - view.Eye), 9);
    }

    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(0, 0, -1)]
    [InlineData(0.3, -0.5, 0.8)]
    public void Axes_AnyDirection_AreAUnitRightHandedFrame(double x, double y, double z)
    {
        Shot shot = Shot(35, 36, 24);
        var view = new CameraView(shot with { AimPoint = shot.Position + new Vector3D(x, y, z) });
        Assert.Equal(0, view.Axis.Dot(view.Right), 12);
        Assert.Equal(0, view.Axis.Dot(view.Up), 12);
        Assert.Equal(1, view.Right.Length, 12);
        Assert.Equal(1, view.Right.Cross(view.Axis).Dot(view.Up), 12);
        Assert.Equal(0, view.Right.Z, 12);
    }

    [Fact]
    public void Constructor_NoDirection_Throws()
    {
        Shot shot = Shot(35, 36, 24);
        Assert.Throws<ArgumentException>(() => new CameraView(shot with { AimPoint = shot.Position }));
    }

    private static Shot Shot(double focalMm, double widthMm, double heightMm) => new()
    {
        Id = "A",
        Position = new(0.5, 0, 1),
        AimPoint = new(1.5, 0, 1),
        FocalLengthMm = focalMm,
        SensorWidthMm = widthMm,
        SensorHeightMm = heightMm,
    };
}
