using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class DriveConditionsRulesTests
{
    [Fact]
    public void Validate_EverythingWrong_NamesEveryField()
    {
        var drive = new DriveConditions
        {
            SpeedKmPerHour = double.NaN,
            FanStep = 5,
            EngineRpm = 100,
            Engine = EngineState.Off,
            OpenWindows = [new("boot", 0.5), new("front-left", -1), new("front-left", 0.5)],
        };
        string[] fields = [.. DriveConditionsRules.Validate(drive, "d").Select(v => v.Field)];
        Assert.Equal(
            ["d.speed_km_per_hour", "d.fan_step", "d.engine_speed_rpm", "d.engine_speed_rpm", "d.open_windows[0].pane_id", "d.open_windows[1].open_fraction", "d.open_windows[2].pane_id"],
            fields);
    }

    [Theory]
    [InlineData(0, 0, 500.0, 0)]
    [InlineData(130, 4, 8000.0, 1)]
    [InlineData(64.4, 2, null, 0.5)]
    public void Validate_EdgesOfEveryRange_AreAllowed(double speed, int fan, double? rpm, double open) => Assert.Empty(DriveConditionsRules.Validate(new DriveConditions
    {
        SpeedKmPerHour = speed,
        FanStep = fan,
        EngineRpm = rpm,
        OpenWindows = [new("front-left", open), new("front-right", open), new("rear-left", open), new("rear-right", open)],
    }));

    [Theory]
    [InlineData(-0.1, 0, 800.0, 0)]
    [InlineData(130.1, 0, 800.0, 0)]
    [InlineData(50, -1, 800.0, 0)]
    [InlineData(50, 5, 800.0, 0)]
    [InlineData(50, 0, 499.0, 0)]
    [InlineData(50, 0, 8001.0, 0)]
    [InlineData(50, 0, double.NaN, 0)]
    [InlineData(50, 0, 800.0, -0.01)]
    [InlineData(50, 0, 800.0, 1.01)]
    [InlineData(50, 0, 800.0, double.PositiveInfinity)]
    public void Validate_JustOutside_IsTheOneViolation(double speed, int fan, double rpm, double open)
    {
        var drive = new DriveConditions { SpeedKmPerHour = speed, FanStep = fan, EngineRpm = rpm, OpenWindows = [new("rear-left", open)] };
        Assert.NotEmpty(Assert.Single(DriveConditionsRules.Validate(drive)).Remedy);
    }

    [Theory]
    [InlineData(-40, 200, 0)]
    [InlineData(40, 0, 0)]
    [InlineData(-40.1, 200, 1)]
    [InlineData(40.1, 201, 2)]
    [InlineData(double.NaN, 1, 1)]
    public void Validate_NoiseCorrection_KeepsItsLimits(double shift, int characters, int violations)
    {
        var drive = new DriveConditions { NoiseCorrection = new(new BandLevels(0, 0, shift, 0, 0, 0, 0), new string('x', characters)) };
        IReadOnlyList<Violation> found = DriveConditionsRules.Validate(drive);
        Assert.Equal(violations, found.Count);
        if (violations > 0)
        {
            Assert.Equal("drive_conditions.noise_correction.shifts.levels_db[2]", found[0].Field);
        }

        if (violations > 1)
        {
            Assert.Equal("drive_conditions.noise_correction.source", found[1].Field);
        }
    }
}
