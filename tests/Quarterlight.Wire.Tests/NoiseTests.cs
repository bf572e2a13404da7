using System.Net;
using System.Text;
using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>NoiseService over real gRPC and JSON. Scenes and routes are invented.</summary>
public sealed class NoiseTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly Ranged<ForecastNoiseRequest>[] s_ranged =
    [
        new("setup.drive_conditions.speed_km_per_hour", 0, 130, (r, v) => r.Setup.DriveConditions.SpeedKmPerHour = v),
        new("setup.drive_conditions.fan_step", 0, 4, (r, v) => r.Setup.DriveConditions.FanStep = (int)v, Whole: true),
        new("setup.drive_conditions.engine_speed_rpm", 500, 8000, (r, v) => r.Setup.DriveConditions.EngineSpeedRpm = v),
        new("table_speeds_km_per_hour[0]", 0, 130, (r, v) => r.TableSpeedsKmPerHour.Add(v)),
    ];

    private static readonly Dictionary<string, (Action<ForecastNoiseRequest> Spoil, string Field)> s_wrong = new(
    [
        .. s_ranged.SelectMany(r => r.Outside()),
        Wrong("nothing", r => r.ClearSource(), "source"),
        Wrong("an empty bundle", r => r.Bundle = new SceneBundle(), "bundle"),
        Wrong("no car", r => r.Setup.Cabin = null, "setup.cabin"),
        Wrong("a car without a body", r => r.Setup.Cabin.BodyStyle = BodyStyle.Unspecified, "setup.cabin.body_style"),
        Wrong("no conditions", r => r.Setup.DriveConditions = null, "setup.drive_conditions"),
        Wrong("unknown road", r => r.Setup.DriveConditions.RoadSurface = (RoadSurface)9, "setup.drive_conditions.road_surface"),
        Wrong("unknown window", r => r.Setup.DriveConditions.OpenWindows.Add(new WindowOpening { PaneId = "moon", OpenFraction = 1 }), "setup.drive_conditions.open_windows[0].pane_id"),
        Wrong("changes to a set-up", r => r.Changes = new SceneChanges { RemovedMicrophoneIds = { "lav" } }, "changes"),
        Wrong("speeds falling", r => r.TableSpeedsKmPerHour.Add([30, 20]), "table_speeds_km_per_hour[1]"),
        Wrong("a speed twice", r => r.TableSpeedsKmPerHour.Add([30, 30]), "table_speeds_km_per_hour[1]"),
        Wrong("too many speeds", r => r.TableSpeedsKmPerHour.Add(Enumerable.Range(1, 13).Select(i => (double)i)), "table_speeds_km_per_hour"),
    ]);

    private static readonly Dictionary<string, Action<ForecastNoiseRequest>> s_ends = new(s_ranged.SelectMany(r => r.Ends()));

    private static readonly Dictionary<string, (Action<FindQuietStretchesRequest> Spoil, string Field)> s_wrongRoutes = new(
    [
        .. RouteTable.Ranged.SelectMany(r => r.Outside()).Concat(RouteTable.Wrong).Select(w => KeyValuePair.Create(
            w.Key, ((Action<FindQuietStretchesRequest>)(q => w.Value.Spoil(q.Stretches)), "stretches" + w.Value.Field))),
        KeyValuePair.Create("nothing", ((Action<FindQuietStretchesRequest>)(r => r.ClearSource()), "source")),
        KeyValuePair.Create("no car", ((Action<FindQuietStretchesRequest>)(r => r.Setup.Cabin = null), "setup.cabin")),
        KeyValuePair.Create("no route", ((Action<FindQuietStretchesRequest>)(r => r.Stretches.Clear()), "stretches")),
        KeyValuePair.Create("changes to a set-up", ((Action<FindQuietStretchesRequest>)(r => r.Changes = new SceneChanges { Kit = "kits/x" }), "changes")),
    ]);

    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> WrongOnes => [.. s_wrong.Keys];

    public static TheoryData<string> Ends => [.. s_ends.Keys];

    public static TheoryData<string> WrongRoutes => [.. s_wrongRoutes.Keys];

    private static NoiseSetup Setup() => new() { Cabin = Samples.Cabin(), DriveConditions = new DriveConditions { SpeedKmPerHour = 50 } };

    private static KeyValuePair<string, (Action<ForecastNoiseRequest> Spoil, string Field)> Wrong(string what, Action<ForecastNoiseRequest> spoil, string field) => KeyValuePair.Create(what, (spoil, field));

    private async Task<ForecastNoiseResponse> AskAsync(ForecastNoiseRequest request) => await _planner.Noise.ForecastNoiseAsync(request, cancellationToken: Stop);

    private async Task<RouteReport> RouteAsync(FindQuietStretchesRequest request) => (await _planner.Noise.FindQuietStretchesAsync(request, cancellationToken: Stop)).Report;

    [Fact]
    public async Task Forecast_Bundle_VerdictAndFiguresAreThePlansOwn()
    {
        NoiseReport report = (await AskAsync(new ForecastNoiseRequest { Bundle = Samples.Bundle() })).Report;
        Plan plan = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = Samples.Bundle() }, cancellationToken: Stop)).Plan;
        Assert.Equal(plan.Best.Placements.Select(p => p.TalkerId).Order(StringComparer.Ordinal), report.Talkers.Select(t => t.TalkerId).Order(StringComparer.Ordinal));
        Assert.All(plan.Best.Placements, p => Assert.Equal(p.Figures.SnrDba.Value, report.Talkers.Single(t => t.TalkerId == p.TalkerId).SnrDba, 0.05));
        Assert.Equal(plan.CabinNoiseDba.Value, report.Noise.LevelDba.Value, 0.05);
        Assert.Equal(report.Talkers.Max(t => t.Verdict), report.Verdict);
        Assert.Equal([0, 20, 30, 50, 60, 80, 100, 120], report.Table[0].Cells.Select(c => c.SpeedKmPerHour));
        SpeedNoise asked = report.Table[0].Cells[3];
        Assert.Equal((report.Verdict, true), (asked.Verdict, asked.HasWorstSnrDba));
        Assert.Equal(report.Noise.LevelDba.Value, asked.NoiseDba, 9);
        Assert.Equal(report.Talkers.Min(t => t.SnrDba), asked.WorstSnrDba, 9);
    }

    [Fact]
    public async Task Forecast_Noise_SharesAndBandsAddUp()
    {
        CabinNoise noise = (await AskAsync(new ForecastNoiseRequest { Setup = Setup() })).Report.Noise;
        Assert.Equal(1, noise.Shares.Sum(s => s.ShareFraction), 6);
        Assert.Equal(noise.Shares.Select(s => s.LevelDba.Value).OrderDescending(), noise.Shares.Select(s => s.LevelDba.Value));
        Assert.All(noise.Shares, s => Assert.Contains(s.Kind, new[] { "tyre", "wind", "engine", "window", "vent", "roof" }));
        Assert.Equal(7, noise.DominantWords.Count);
        Assert.Equal(7, noise.Levels.LevelsDb.Count);
        for (int band = 0; band < 7; band++)
        {
            // Energies of the kinds, added here.
            double sum = 10 * Math.Log10(noise.Shares.Sum(s => Math.Pow(10, s.Levels.LevelsDb[band] / 10)));
            Assert.Equal(sum, noise.Levels.LevelsDb[band], 6);
        }
    }

    [Fact]
    public async Task Forecast_Setup_NobodyTalksSoNoVerdict()
    {
        NoiseReport report = (await AskAsync(new ForecastNoiseRequest { Setup = Setup(), TableSpeedsKmPerHour = { 10, 90 } })).Report;
        Assert.Equal(SceneVerdict.Unspecified, report.Verdict);
        Assert.Empty(report.Talkers);
        Assert.False(report.HasFastestWorksKmPerHour);
        Assert.All(report.Table, row =>
        {
            Assert.Equal([10, 90], row.Cells.Select(c => c.SpeedKmPerHour));
            Assert.All(row.Cells, c => Assert.True(!c.HasWorstSnrDba && c.Verdict == SceneVerdict.Unspecified));
            Assert.True(row.Cells[1].NoiseDba > row.Cells[0].NoiseDba, "faster is louder");
        });
    }

    [Fact]
    public async Task Forecast_ConditionsAsAsked_ComeBackWhole()
    {
        NoiseSetup setup = Setup();
        setup.DriveConditions = new DriveConditions
        {
            SpeedKmPerHour = 64,
            RoadSurface = RoadSurface.CoarseAsphalt,
            OpenWindows = { new WindowOpening { PaneId = "front-left", OpenFraction = 0.5 } },
            FanStep = 2,
            Rain = Rain.Light,
            EngineState = EngineState.Running,
            EngineSpeedRpm = 2100,
            NoiseCorrection = new NoiseCorrection { Shifts = new OctaveLevels { LevelsDb = { 1, 2, 3, 2, 1, 0, -1 } }, Source = "clip of scene 3" },
        };
        Assert.Equal(setup.DriveConditions, (await AskAsync(new ForecastNoiseRequest { Setup = setup })).Report.Noise.DriveConditions);
        DriveConditions usual = (await AskAsync(new ForecastNoiseRequest { Setup = Setup() })).Report.Noise.DriveConditions;
        Assert.Equal((RoadSurface.SmoothAsphalt, Rain.None, EngineState.Running), (usual.RoadSurface, usual.Rain, usual.EngineState));
        Assert.False(usual.HasEngineSpeedRpm);
    }

    [Fact]
    public async Task Forecast_Picture_PngWithItsWordsInEitherUnit()
    {
        var request = new ForecastNoiseRequest { Bundle = Samples.Bundle(), IncludePicture = true };
        Picture metric = (await AskAsync(request)).Picture;
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], metric.Png.Take(4));
        Assert.InRange(metric.TextAlternative.Length, 100, 1024);
        request.PictureInMph = true;
        Assert.NotEqual(metric.Png, (await AskAsync(request)).Picture.Png);
        request.IncludePicture = false;
        Assert.Null((await AskAsync(request)).Picture);
        Assert.InRange((await AskAsync(new ForecastNoiseRequest { Setup = Setup(), IncludePicture = true })).Picture.TextAlternative.Length, 100, 1024);
    }

    [Fact]
    public async Task Forecast_OverJson_SameAnswer()
    {
        var request = new ForecastNoiseRequest { Bundle = Samples.Bundle() };
        using var body = new StringContent(JsonFormatter.Default.Format(request), Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await _planner.Http.PostAsync("/v1/noise:forecast", body, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(await AskAsync(request), JsonParser.Default.Parse<ForecastNoiseResponse>(await answer.Content.ReadAsStringAsync(Stop)));
    }

    [Fact]
    public async Task Forecast_KeptScene_SameAsSentWholeAndChangesHeeded()
    {
        Scene scene = await _planner.KeepWholeSceneAsync("noise");
        Kit kit = (await _planner.Kits.GetKitAsync(new GetKitRequest { Name = scene.Kit }, cancellationToken: Stop)).Kit;
        ForecastNoiseResponse kept = await AskAsync(new ForecastNoiseRequest { Scene = scene.Name });
        Assert.Equal(kept, await AskAsync(new ForecastNoiseRequest { Bundle = new SceneBundle { Scene = scene, Cabin = Samples.Cabin(), Kit = kit } }));
        var faster = new SceneChanges { DriveConditions = new DriveConditions { SpeedKmPerHour = 110 } };
        NoiseReport changed = (await AskAsync(new ForecastNoiseRequest { Scene = scene.Name, Changes = faster })).Report;
        Assert.True(changed.Noise.LevelDba.Value > kept.Report.Noise.LevelDba.Value + 3);
        faster.DriveConditions.FanStep = 9;
        (await Refused.ForFieldsAsync(_planner.Noise.ForecastNoiseAsync(new ForecastNoiseRequest { Scene = scene.Name, Changes = faster }, cancellationToken: Stop))).Names("changes.drive_conditions.fan_step");
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Noise.ForecastNoiseAsync(new ForecastNoiseRequest { Scene = "scenes/nowhere" }, cancellationToken: Stop))).Code);
    }

    [Theory]
    [MemberData(nameof(WrongOnes))]
    public async Task Forecast_WrongRequest_NamesTheField(string what)
    {
        var request = new ForecastNoiseRequest { Setup = Setup() };
        s_wrong[what].Spoil(request);
        Refused refused = await Refused.ForFieldsAsync(_planner.Noise.ForecastNoiseAsync(request, cancellationToken: Stop));
        Assert.Equal([s_wrong[what].Field], refused.Fields.Select(f => f.Field));
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public async Task Forecast_AtTheEndOfARange_Answers(string what)
    {
        var request = new ForecastNoiseRequest { Setup = Setup() };
        s_ends[what](request);
        Assert.True(double.IsFinite((await AskAsync(request)).Report.Noise.LevelDba.Value));
    }

    [Fact]
    public async Task Stretches_OfAScene_DrivenAsFastAsTheSceneWorks()
    {
        Scene scene = await _planner.KeepWholeSceneAsync("route");
        RouteReport report = await RouteAsync(new FindQuietStretchesRequest { Scene = scene.Name });
        Assert.Equal(["Mill Lane", "Setts", "Bypass"], report.Stretches.Select(s => s.Label));
        Assert.Equal([0, 1800, 2200], report.Stretches.Select(s => s.StartM));
        Assert.All(report.Stretches, s => Assert.Equal(s.LengthM / (s.SpeedKmPerHour / 3.6), s.DurationS, 6));
        Assert.All(report.Stretches.Zip(scene.Route), p => Assert.True(p.First.SpeedKmPerHour <= p.Second.SpeedLimitKmPerHour));
        Assert.All(report.Stretches, s => Assert.NotEqual(SceneVerdict.Unspecified, s.Verdict));
        Assert.Equal(report.QuietRuns.Select(r => r.DurationS).OrderDescending(), report.QuietRuns.Select(r => r.DurationS));
        Assert.Equal(report, await RouteAsync(new FindQuietStretchesRequest { Scene = scene.Name, Stretches = { scene.Route } }));

        // Stretches sent win over those kept.
        Assert.Equal(["Lay-by"], (await RouteAsync(new FindQuietStretchesRequest { Scene = scene.Name, Stretches = { new RouteStretch { Label = "Lay-by", LengthM = 100, SpeedLimitKmPerHour = 20 } } })).Stretches.Select(s => s.Label));
    }

    [Fact]
    public async Task Stretches_OverJson_SameAnswer()
    {
        var request = new FindQuietStretchesRequest { Bundle = Samples.Bundle(), Stretches = { DaySamples.Route() } };
        using var body = new StringContent(JsonFormatter.Default.Format(request), Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await _planner.Http.PostAsync("/v1/noise:findQuietStretches", body, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(await RouteAsync(request), JsonParser.Default.Parse<FindQuietStretchesResponse>(await answer.Content.ReadAsStringAsync(Stop)).Report);
    }

    [Fact]
    public async Task Stretches_Setup_NoVerdictIsGiven()
    {
        RouteReport report = await RouteAsync(new FindQuietStretchesRequest { Setup = Setup(), Stretches = { DaySamples.Route() } });
        Assert.All(report.Stretches, s => Assert.True(s.Verdict == SceneVerdict.Unspecified && !s.HasWorstSnrDba));
        Assert.Empty(report.QuietRuns);
    }

    [Fact]
    public async Task Stretches_SceneWithoutARoute_SaysWhatToAdd()
    {
        Scene scene = await _planner.KeepSceneAsync("no-route");
        Refused refused = await Refused.ForFieldsAsync(_planner.Noise.FindQuietStretchesAsync(new FindQuietStretchesRequest { Scene = scene.Name }, cancellationToken: Stop));
        Assert.Equal(["stretches"], refused.Fields.Select(f => f.Field));
        Assert.Contains("keep a route with the scene", refused.Fields[0].Description, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(WrongRoutes))]
    public async Task Stretches_WrongRequest_NamesTheField(string what)
    {
        var request = new FindQuietStretchesRequest { Setup = Setup(), Stretches = { DaySamples.Route() } };
        s_wrongRoutes[what].Spoil(request);
        Refused refused = await Refused.ForFieldsAsync(_planner.Noise.FindQuietStretchesAsync(request, cancellationToken: Stop));
        Assert.Equal([s_wrongRoutes[what].Field], refused.Fields.Select(f => f.Field));
    }
}
