using Quarterlight.Acoustics;
using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests.Noise;

public class NoiseRulesTests
{
    private static readonly RouteStretch s_stretch = new("high street", 500, 50);

    [Fact]
    public void TopSpeed_IsThatOfTheDriveConditions() => Assert.Equal(NoiseRules.TopSpeedKmPerHour, DriveConditionsRules.Speed.Max);

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("0 130")]
    [InlineData("0 1 2 3 4 5 6 7 8 9 10 11")]
    public void ValidateTableSpeeds_AtTheEdges_TakesAllButNone(string speeds) =>
        Assert.Equal(speeds.Length == 0 ? ["table_speeds_km_per_hour"] : [], Fields(NoiseRules.ValidateTableSpeeds(Numbers(speeds))));

    [Theory]
    [InlineData("-0.1", "table_speeds_km_per_hour[0]")]
    [InlineData("10 130.1", "table_speeds_km_per_hour[1]")]
    [InlineData("10 NaN", "table_speeds_km_per_hour[1]")]
    [InlineData("10 10", "table_speeds_km_per_hour[1]")]
    [InlineData("20 30 25", "table_speeds_km_per_hour[2]")]
    [InlineData("0 1 2 3 4 5 6 7 8 9 10 11 12", "table_speeds_km_per_hour")]
    public void ValidateTableSpeeds_OutsideOrNotRising_NamesTheSpeed(string speeds, string field) =>
        Assert.Equal([field], Fields(NoiseRules.ValidateTableSpeeds(Numbers(speeds))));

    [Theory]
    [InlineData(10, 5, 5.0)]
    [InlineData(100_000, 130, 130.0)]
    [InlineData(10, 5, null)]
    public void ValidateStretches_AtTheEdges_Takes(double length, double limit, double? traffic) =>
        Assert.Empty(NoiseRules.ValidateStretches([s_stretch with { LengthM = length, SpeedLimitKmPerHour = limit, TrafficSpeedKmPerHour = traffic, Label = new string('x', 60) }]));

    [Fact]
    public void ValidateStretches_AllWrong_SaysSoAllAtOnce()
    {
        RouteStretch[] bad =
        [
            s_stretch,
            new(" ", 9.9, 4.9, null, 130.1),
            new(new string('x', 61), 100_001, double.NaN, null, double.NaN),
        ];
        Assert.Equal(
            [
                "scene.route[1].label", "scene.route[1].length_m", "scene.route[1].speed_limit_km_per_hour", "scene.route[1].traffic_speed_km_per_hour",
                "scene.route[2].label", "scene.route[2].length_m", "scene.route[2].speed_limit_km_per_hour", "scene.route[2].traffic_speed_km_per_hour",
            ],
            Fields(NoiseRules.ValidateStretches(bad, "scene.route")));
    }

    [Fact]
    public void ValidateStretches_NoneOrTooMany_IsRefused()
    {
        Assert.Equal(["stretches"], Fields(NoiseRules.ValidateStretches([])));
        Assert.Empty(NoiseRules.ValidateStretches([.. Enumerable.Repeat(s_stretch, 200)]));
        Assert.Equal(["stretches"], Fields(NoiseRules.ValidateStretches([.. Enumerable.Repeat(s_stretch, 201)])));
    }

    [Fact]
    public void Validate_Route_LooksAtConditionsSpeedsAndStretches()
    {
        var task = new RouteTask(Questions.Unplanned(Questions.Drive(140)) with { TableSpeedsKmPerHour = [] }, [s_stretch with { LengthM = 1 }]);
        Assert.Equal(["setup.drive_conditions.speed_km_per_hour", "table_speeds_km_per_hour", "scene.route[0].length_m"], Fields(NoiseRules.Validate(task, "scene.route", "setup.drive_conditions")));
        Assert.Throws<InvalidInputException>(() => RouteSurvey.Run(task));
    }

    private static double[] Numbers(string text) => [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => double.Parse(t, System.Globalization.CultureInfo.InvariantCulture))];

    private static IEnumerable<string> Fields(IReadOnlyList<Violation> violations)
    {
        Assert.All(violations, v => Assert.True(v.Problem.Length > 0 && v.Remedy.Length > 0));
        return violations.Select(v => v.Field);
    }
}
