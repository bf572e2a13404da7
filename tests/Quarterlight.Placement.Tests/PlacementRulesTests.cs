using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests;

public class PlacementRulesTests
{
    [Fact]
    public void Validate_GoodTask_FindsNothing() => Assert.Empty(PlacementRules.Validate(Tasks.Saloon(Tasks.Talker("driver", "driver"))));

    [Fact]
    public void Validate_EmptyKit_NamesMicrophones() => Expect(Good() with { Kit = Tasks.Kit with { Microphones = [] } }, "kit.microphones");

    [Fact]
    public void Validate_NobodyTalks_NamesTalkers() => Expect(Good() with { Scene = Good().Scene with { Talkers = [] } }, "scene.talkers");

    [Fact]
    public void Validate_TwoOnOneSeat_NamesTheSecond() =>
        Expect(Tasks.Saloon(Tasks.Talker("a", "driver"), Tasks.Talker("b", "driver")), "scene.talkers[1].seat_id");

    [Fact]
    public void Validate_UnknownSeat_ListsTheSeats()
    {
        Violation violation = Expect(Tasks.Saloon(Tasks.Talker("a", "roof-rack")), "scene.talkers[0].seat_id");
        Assert.Contains("rear-centre", violation.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.5, 0.4)]
    [InlineData(0.7, 0.7)]
    public void Validate_SharesNotSummingToOne_NamesHeadPoses(double a, double b) =>
        Expect(Tasks.Saloon(Tasks.Talker("a", "driver", Tasks.Turned(0, a), Tasks.Turned(30, b))), "scene.talkers[0].head_poses");

    [Fact]
    public void Validate_NanYaw_NamesThePose() =>
        Expect(Tasks.Saloon(Tasks.Talker("a", "driver", Tasks.Turned(double.NaN))), "scene.talkers[0].head_poses[0].yaw_deg");

    [Fact]
    public void Validate_CameraInsideASeat_NamesTheShot()
    {
        PlacementTask task = Good();
        Seat seat = task.Cabin.FindSeat("front-passenger")!;
        Expect(task with { Scene = task.Scene with { Shots = [Tasks.Shot("A", seat.Backrest.Center, new(-0.2, 0.3, 1))] } }, "scene.shots[0].position");
    }

    [Fact]
    public void Validate_SilentSitterOnATalkersSeat_IsNamed() =>
        Expect(Good() with { Scene = Good().Scene with { SilentSeatIds = ["driver"] } }, "scene.silent_seat_ids[0]");

    [Theory]
    [InlineData(-1)]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Validate_AbsurdMicrophone_NamesEveryField(double value)
    {
        Microphone bad = Tasks.Cardioid with { BodyLengthM = value, BodyDiameterM = value, SensitivityMvPerPa = value, MaxLevelDb = value, Fixings = Fixings.None };
        string[] fields = [.. KitRules.Validate(Tasks.Kit with { Microphones = [bad] }).Select(v => v.Field)];
        foreach (string field in new[] { "body_length_m", "body_diameter_m", "sensitivity_mv_per_pa", "max_level_db", "fixings" })
        {
            Assert.Contains($"kit.microphones[0].{field}", fields);
        }
    }

    [Fact]
    public void Plan_InvalidTask_CarriesAllViolations()
    {
        PlacementTask task = Tasks.Saloon(DriveSide.Left, [], new DriveConditions { SpeedKmPerHour = -5, FanStep = 9 }, Tasks.Talker("a", "nowhere"));
        IReadOnlyList<Violation> violations = Assert.Throws<InvalidInputException>(() => PlacementPlanner.Plan(task)).Violations;
        Assert.Equal(3, violations.Count);
        Assert.All(violations, v => Assert.True(v.Problem.Length > 0 && v.Remedy.Length > 0));
    }

    private static PlacementTask Good() => Tasks.Saloon(Tasks.Talker("driver", "driver"));

    private static Violation Expect(PlacementTask task, string field)
    {
        IReadOnlyList<Violation> violations = PlacementRules.Validate(task);
        Assert.Contains(violations, v => v.Field == field);
        return violations.First(v => v.Field == field);
    }
}
