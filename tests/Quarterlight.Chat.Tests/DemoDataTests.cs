using Quarterlight.Crew.Demo;
using Quarterlight.Tests.Shared;
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
    public void Packed_IsWhatIsWritten()
    {
        string folder = Path.Combine(RepositoryFolder.Top, "clients", "Quarterlight.Crew", "Demo");

        Assert.All(DemoPack.Pack(folder), p => Assert.True(p.Value.AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(folder, p.Key))), $"{p.Key} is not what is written: run the command demo-pack of Quarterlight.Training."));
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
    public void Radio_TwoScenesFollowed_EveryKitWithLinkAndTransmitters()
    {
        Assert.Equal(["US", "GB"], DemoData.Scenes.Reverse().Where(s => s.FollowCar is not null).Select(s => s.FollowCar.CountryCode));
        Assert.Equal(2, DemoData.Scenes.Count(s => s.FollowCar is null));
        Assert.All(DemoData.Kits, k => Assert.NotNull(k.LinkGear));
        Assert.Equal([8, 3], DemoData.Kits.Select(k => k.WirelessTransmitters.Sum(t => t.Count)));
    }

    [Fact]
    public async Task Radio_OfScenesAndKits_IsKeptByThePlannerAsItIs()
    {
        var scenes = new SceneService.SceneServiceClient(planner.Invoker);
        var kits = new KitService.KitServiceClient(planner.Invoker);
        foreach (Scene scene in DemoData.Scenes)
        {
            Assert.Equal(scene.FollowCar, (await scenes.GetSceneAsync(new() { Name = scene.Name }, cancellationToken: TestContext.Current.CancellationToken)).Scene.FollowCar);
        }

        foreach (Kit kit in DemoData.Kits)
        {
            Kit kept = (await kits.GetKitAsync(new() { Name = kit.Name }, cancellationToken: TestContext.Current.CancellationToken)).Kit;
            Assert.Equal(kit.LinkGear, kept.LinkGear);
            Assert.Equal(kit.WirelessTransmitters, kept.WirelessTransmitters);
        }
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
