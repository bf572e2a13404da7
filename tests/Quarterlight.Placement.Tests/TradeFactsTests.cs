using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests;

/// <summary>What every mixer knows; each is common practice, no source.</summary>
public class TradeFactsTests
{
    // Common practice, no source: a visor position serves a talker who faces forward and fails one who talks over the shoulder.
    [Fact]
    public void Visor_ServesATalkerFacingForward_AndFailsOneTalkingOverTheShoulder()
    {
        PlacementTask forward = Tasks.Saloon(Tasks.Talker("driver", "driver"));
        PlacementTask over = Tasks.Saloon(Tasks.Talker("driver", "driver", Tasks.Turned(-150)));
        string visor = forward.Cabin.Sites.First(s => s.Family == MountFamily.Visor && s.SeatId == "driver").Id;
        TalkerPlacement facing = There(forward, visor), turned = There(over, visor);
        Assert.True(BestElsewhere(forward) - facing.Figures.ScoreDb < 3, $"{facing.Figures.ScoreDb} {BestElsewhere(forward)}");
        Assert.True(facing.Figures.ScoreDb - turned.Figures.ScoreDb > 5, $"{facing.Figures.ScoreDb} {turned.Figures.ScoreDb}");
    }

    // Common practice, no source: a rear-seat talker is well served from the headliner above.
    [Fact]
    public void Headliner_AboveARearSeatTalker_IsWithinTwoDecibelsOfTheBest()
    {
        PlacementTask task = Tasks.Saloon(Tasks.Talker("back", "rear-left"));
        double headliner = task.Cabin.Sites.Where(s => s.Family == MountFamily.Headliner).Max(s => TryThere(task, s.Id, "back") ?? double.NegativeInfinity);
        Assert.True(BestElsewhere(task) - headliner < 2, $"{headliner} {BestElsewhere(task)}");
    }

    // Common practice, no source: windows down at 40 mph is unusable.
    [Fact]
    public void Plan_WindowsDownAtFortyMilesAnHour_IsCalledUnusable()
    {
        var open = new DriveConditions { SpeedKmPerHour = 64.4, OpenWindows = [new("front-left", 1), new("front-right", 1)] };
        MountPlan down = PlacementPlanner.Plan(Tasks.Saloon(DriveSide.Left, [], open, Tasks.Talker("driver", "driver")));
        MountPlan up = PlacementPlanner.Plan(Tasks.Saloon(DriveSide.Left, [], open with { OpenWindows = [] }, Tasks.Talker("driver", "driver")));
        Assert.Contains(down.Advisories, a => a.Code == "unusable");
        Assert.DoesNotContain(up.Advisories, a => a.Code == "unusable");
    }

    // Common practice, no source: fan noise is never acceptable in a take.
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void Plan_FanOn_SaysItIsNeverAcceptable(int step)
    {
        MountPlan plan = PlacementPlanner.Plan(Tasks.Saloon(DriveSide.Left, [], new DriveConditions { FanStep = step }, Tasks.Talker("driver", "driver")));
        Assert.Contains(plan.Advisories, a => a.Code == "fan-on" && a.Message.Contains("never acceptable", StringComparison.Ordinal));
    }

    // Common practice, no source: turn the null toward the engine. Where noise is the engine's, the chosen null is nearer to it than a
    // random aim's (mean of |theta - null| over the sphere is above 30 degrees).
    [Fact]
    public void Plan_EngineRoaring_PutsTheNullNearTheEngine()
    {
        var revving = new DriveConditions { EngineRpm = 4500 };
        PlacementTask task = Tasks.Saloon(DriveSide.Left, [], revving, Tasks.Talker("driver", "driver"), Tasks.Talker("back", "rear-right"));
        MountPlan plan = PlacementPlanner.Plan(task with { Kit = Tasks.Kit with { Microphones = [Tasks.Supercardioid] } });
        Assert.All(plan.Best.Placements, p => Assert.InRange(Angles.RadToDeg(p.NullToEngineRad!.Value), 0, 30));
    }

    private static double BestElsewhere(PlacementTask task) => PlacementPlanner.Plan(task).Best.Placements[0].Figures.ScoreDb;

    private static TalkerPlacement There(PlacementTask task, string site) =>
        PlacementPlanner.Explain(task, PlacementPlanner.Plan(task), site, task.Scene.Talkers[0].Id).There!;

    private static double? TryThere(PlacementTask task, string site, string talker) =>
        PlacementPlanner.Explain(task, PlacementPlanner.Plan(task), site, talker).There?.Figures.ScoreDb;
}
