using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Shoot day, route, power and levels as scenes and kits keep them: checked when they are written, whole when they are read.</summary>
public sealed class KeptDayTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly Dictionary<string, (Action<Kit> Spoil, string Field)> s_kits = new(
        [.. PowerTable.Ranged.Concat(LevelTable.Ranged).SelectMany(r => r.Outside()), .. PowerTable.Wrong, .. LevelTable.Wrong]);

    private static readonly Dictionary<string, (Action<Scene> Spoil, string Field)> s_scenes = new(
    [
        .. RouteTable.Ranged.SelectMany(r => r.Outside()).Concat(RouteTable.Wrong).Select(w => KeyValuePair.Create(
            w.Key, ((Action<Scene>)(s => w.Value.Spoil(s.Route)), "scene.route" + w.Value.Field))),
        Wrong("no start", s => s.ShootDay.StartTime = null, "start_time"),
        Wrong("start outside the calendar", s => s.ShootDay.StartTime.Seconds = long.MaxValue, "start_time"),
        Wrong("no air", s => s.ShootDay.Air = null, "air"),
        Wrong("air too hot", s => s.ShootDay.Air.TemperatureC = 55.001, "air.temperature_c"),
        Wrong("air is not a number", s => s.ShootDay.Air.TemperatureC = double.NaN, "air.temperature_c"),
        Wrong("beyond the pole", s => s.ShootDay.LatitudeDeg = 90.001, "latitude_deg"),
        Wrong("unknown shade", s => s.ShootDay.Shade = (CarShade)9, "shade"),
        Wrong("ten adults", s => s.ShootDay.Occupants = new Occupants { AdultCount = 10 }, "occupants.adult_count"),
        Wrong("cooling to freezing", s => s.ShootDay.Cooling = new CoolingSystem { SetPointC = 0 }, "cooling.set_point_c"),
        Wrong("offset of a day", s => s.ShootDay.UtcOffsetMin = 1440, "utc_offset_min"),
        Wrong("take without a label", s => s.ShootDay.Takes.Add(DaySamples.Take("", 0, 5)), "takes[0].label"),
        Wrong("takes out of order", s => s.ShootDay.Takes.Add([DaySamples.Take("1", 50, 5), DaySamples.Take("2", 10, 5)]), "takes[1].start_min"),
        Wrong("take after the day", s => s.ShootDay.Takes.Add(DaySamples.Take("1", 239, 5)), "takes[0].start_min"),
    ]);

    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> WrongKits => [.. s_kits.Keys];

    public static TheoryData<string> WrongScenes => [.. s_scenes.Keys];

    private static KeyValuePair<string, (Action<Scene> Spoil, string Field)> Wrong(string what, Action<Scene> spoil, string field) => KeyValuePair.Create(what, (spoil, $"scene.shoot_day.{field}"));

    [Fact]
    public async Task Keep_WholeSceneAndKit_ReadBackAsSent()
    {
        Scene scene = await _planner.KeepWholeSceneAsync("kept-day", s =>
        {
            s.ShootDay.Occupants = new Occupants { AdultCount = 0, ChildCount = 1, ClothingClo = 0 };
            s.ShootDay.Cooling = new CoolingSystem { PowerW = 0, Recirculated = true };
            s.ShootDay.Takes.Add(DaySamples.Take("12/1", 30, 6));
        });
        Scene read = (await _planner.Scenes.GetSceneAsync(new GetSceneRequest { Name = scene.Name }, cancellationToken: Stop)).Scene;
        Assert.Equal(scene, read);
        Assert.True(read.ShootDay.Occupants.HasAdultCount && read.ShootDay.Occupants.HasClothingClo && !read.ShootDay.Occupants.HasActivityMet, "a stated zero stays stated, what was left open stays open");
        Assert.Equal(DaySamples.Route(), read.Route);
        Kit kit = (await _planner.Kits.GetKitAsync(new GetKitRequest { Name = scene.Kit }, cancellationToken: Stop)).Kit;
        Kit sent = new Kit().WithPower().WithLevels();
        Assert.Equal((sent.Batteries, sent.PoweredDevices, sent.RecordingMedia), (kit.Batteries, kit.PoweredDevices, kit.RecordingMedia));
        Assert.Equal((sent.RecorderGain, sent.TransmitterAudio), (kit.RecorderGain, kit.TransmitterAudio));
    }

    [Fact]
    public async Task Keep_SceneAndKitWithoutThem_ReadWithoutThem()
    {
        Scene scene = await _planner.KeepSceneAsync("as-before");
        Scene read = (await _planner.Scenes.GetSceneAsync(new GetSceneRequest { Name = scene.Name }, cancellationToken: Stop)).Scene;
        Assert.Null(read.ShootDay);
        Assert.Empty(read.Route);
        Assert.Null((await _planner.Kits.GetKitAsync(new GetKitRequest { Name = scene.Kit }, cancellationToken: Stop)).Kit.RecorderGain);
    }

    [Fact]
    public async Task Keep_BatteriesWithoutDevices_Kept()
    {
        Kit kit = Samples.Bundle().Kit.WithPower();
        kit.PoweredDevices.Clear();
        kit.RecordingMedia = null;
        Assert.Equal(2, (await _planner.Kits.CreateKitAsync(new CreateKitRequest { KitId = "cells", Kit = kit }, cancellationToken: Stop)).Kit.Batteries.Count);
    }

    [Theory]
    [MemberData(nameof(WrongKits))]
    public async Task CreateKit_Wrong_NamesTheFieldAndKeepsNothing(string what)
    {
        Kit kit = Samples.Bundle().Kit.WithPower().WithLevels();
        s_kits[what].Spoil(kit);
        Refused refused = await Refused.ForFieldsAsync(_planner.Kits.CreateKitAsync(new CreateKitRequest { KitId = "wrong", Kit = kit }, cancellationToken: Stop));
        Assert.Equal([s_kits[what].Field], refused.Fields.Select(f => f.Field));
        await Refused.ByAsync(_planner.Kits.GetKitAsync(new GetKitRequest { Name = "kits/wrong" }, cancellationToken: Stop));
    }

    [Theory]
    [MemberData(nameof(WrongScenes))]
    public async Task UpdateScene_Wrong_NamesTheFieldAndKeepsTheOld(string what)
    {
        string id = $"w{s_scenes.Keys.ToList().IndexOf(what)}";
        Scene scene = await _planner.KeepWholeSceneAsync(id);
        Scene wrong = scene.Clone();
        s_scenes[what].Spoil(wrong);
        Refused refused = await Refused.ForFieldsAsync(_planner.Scenes.UpdateSceneAsync(new UpdateSceneRequest { Scene = wrong }, cancellationToken: Stop));
        Assert.Equal([s_scenes[what].Field], refused.Fields.Select(f => f.Field));
        Assert.Equal(scene, (await _planner.Scenes.GetSceneAsync(new GetSceneRequest { Name = scene.Name }, cancellationToken: Stop)).Scene);
    }
}
