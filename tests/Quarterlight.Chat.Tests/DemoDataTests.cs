using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>The demo data is whole, marked as invented, and each scene can be planned by the real planner.</summary>
public sealed class DemoDataTests(SharedPlanner planner)
{
    [Fact]
    public void All_Names_SayInvented()
    {
        Assert.All(DemoData.Scenes.Select(s => s.DisplayName).Concat(DemoData.Cabins.Select(c => c.DisplayName)).Concat(DemoData.Kits.Select(k => k.DisplayName)), n => Assert.EndsWith("(invented)", n, StringComparison.Ordinal));
        Assert.True(DemoData.Scenes.Count >= 3);
        Assert.Equal(2, DemoData.Kits.Count);
        Assert.Equal(DemoData.Scenes.Count, DemoData.Scenes.Select(s => s.Cabin).Distinct().Count());
    }

    [Fact]
    public void MainScene_ThreeTalkersMoving()
    {
        Scene scene = DemoData.Scenes.Single(s => s.Name == DemoData.MainScene);

        Assert.Equal(3, scene.Talkers.Count);
        Assert.True(scene.DriveConditions.SpeedKmPerHour > 0);
        Assert.Same(scene, DemoData.Scenes[^1]);
    }

    [Fact]
    public async Task Plan_EveryScene_CoversEveryTalker()
    {
        var placement = new PlacementService.PlacementServiceClient(planner.Invoker);
        foreach (Scene scene in DemoData.Scenes)
        {
            Plan plan = (await placement.PlanPlacementAsync(new() { Scene = scene.Name }, cancellationToken: TestContext.Current.CancellationToken)).Plan;

            Assert.Empty(plan.UncoveredTalkerIds);
            Assert.Equal(scene.Talkers.Count, plan.Best.Placements.Count);
        }
    }
}
