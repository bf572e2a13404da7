using System.Net;
using System.Text;
using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>ForecastRunTime over real gRPC and JSON. Kits are invented.</summary>
public sealed class RunTimeTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly Ranged<ForecastRunTimeRequest>[] s_ranged =
    [
        .. PowerTable.Ranged.Select(r => new Ranged<ForecastRunTimeRequest>($"setup.{r.Field}", r.Min, r.Max, (q, v) => r.Set(q.Setup.Kit, v), r.Whole)),
        new("margin_fraction", 0, 0.6, (r, v) => r.MarginFraction = v),
        new("battery_c", -40, 80, (r, v) => r.BatteryC = v),
        new("duration_min", 1, 1440, (r, v) => r.DurationMin = v),
        new("setup.day.duration_min", 10, 720, (r, v) => Day(r).DurationMin = v),
        new("setup.day.air.temperature_c", -30, 55, (r, v) => Day(r).Air.TemperatureC = v),
        new("setup.day.takes[0].duration_min", 0.1, 240, (r, v) => Day(r).Takes.Add(DaySamples.Take("1", 0, v))),
    ];

    private static readonly Dictionary<string, (Action<ForecastRunTimeRequest> Spoil, string Field)> s_wrong = new(
    [
        .. s_ranged.SelectMany(r => r.Outside()),
        .. new Ranged<ForecastRunTimeRequest>("setup.day.takes[0].start_min", 0, 1440, (r, v) => Day(r).Takes.Add(DaySamples.Take("1", v, 1))).Outside(),
        .. PowerTable.Wrong.Select(w => Wrong(w.Key, r => w.Value.Spoil(r.Setup.Kit), $"setup.{w.Value.Field}")),
        Wrong("nothing", r => r.ClearSource(), "source"),
        Wrong("no kit", r => r.Setup.Kit = null, "setup.kit"),
        Wrong("nothing that could run out", r => (r.Setup.Kit.RecordingMedia, _) = (null, Cleared(r.Setup.Kit)), "setup.kit.powered_devices"),
        Wrong("a day without a start", r => Day(r).StartTime = null, "setup.day.start_time"),
        Wrong("a take without a label", r => Day(r).Takes.Add(DaySamples.Take("", 0, 5)), "setup.day.takes[0].label"),
        Wrong("takes over each other", r => Day(r).Takes.Add([DaySamples.Take("1", 0, 30), DaySamples.Take("2", 20, 10)]), "setup.day.takes[1].start_min"),
        Wrong("a take after the end", r => (r.DurationMin, _) = (30, Add(r, DaySamples.Take("1", 20, 11))), "setup.day.takes[0].start_min"),
        Wrong("more copies than cards", r => r.Setup.Kit.RecordingMedia.CopyCount = 3, "setup.kit.recording_media.copy_count"),
    ]);

    private static readonly Dictionary<string, Action<ForecastRunTimeRequest>> s_ends = new(s_ranged.SelectMany(r => r.Ends()));

    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> WrongOnes => [.. s_wrong.Keys];

    public static TheoryData<string> Ends => [.. s_ends.Keys];

    private static ForecastRunTimeRequest Request() => new() { Setup = new RunTimeSetup { Kit = new Kit { DisplayName = "Power" }.WithPower() } };

    private static ShootDay Day(ForecastRunTimeRequest request) => request.Setup.Day ??= DaySamples.Day();

    private static bool Add(ForecastRunTimeRequest request, PlannedTake take)
    {
        Day(request).Takes.Add(take);
        return true;
    }

    private static bool Cleared(Kit kit)
    {
        kit.PoweredDevices.Clear();
        return true;
    }

    private static KeyValuePair<string, (Action<ForecastRunTimeRequest> Spoil, string Field)> Wrong(string what, Action<ForecastRunTimeRequest> spoil, string field) => KeyValuePair.Create(what, (spoil, field));

    private async Task<ForecastRunTimeResponse> AskAsync(ForecastRunTimeRequest request) => await _planner.Endurance.ForecastRunTimeAsync(request, cancellationToken: Stop);

    [Fact]
    public async Task Forecast_KitSentWhole_AnswersWhole()
    {
        ForecastRunTimeRequest request = Request();
        request.IncludePicture = true;
        ForecastRunTimeResponse answer = await AskAsync(request);
        RunTimeReport report = answer.Report;
        Assert.Equal(["cards", "pack", "recorder"], report.Items.Where(i => i.Kind != RunTimeKind.File).Select(i => i.Id).Order(StringComparer.Ordinal));
        Assert.Equal(report.Items.Select(i => i.Hours).Order(), report.Items.Select(i => i.Hours));
        Assert.Equal(report.Items[0].Id, report.FirstId);
        Assert.Equal((20, 240), (report.BatteryC, report.DurationMin));
        Assert.Equal(8 * 48000 * 3 / 1e6, report.DataMbPerS, 6); // Tracks times samples times bytes.
        RunTimeItem pack = report.Items.Single(i => i.Id == "pack");
        Assert.Equal("Bodypack", pack.DisplayName);
        Assert.Equal(pack.Hours, pack.HoursWithoutMargin * 0.8, 6);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], answer.Picture.Png.Take(4));
        Assert.InRange(answer.Picture.TextAlternative.Length, 50, 1024);
        request.IncludePicture = false;
        Assert.Null((await AskAsync(request)).Picture);
    }

    [Fact]
    public async Task Forecast_OverJson_SameAnswer()
    {
        using var body = new StringContent(JsonFormatter.Default.Format(Request()), Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await _planner.Http.PostAsync("/v1/endurance:forecastRunTime", body, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(await AskAsync(Request()), JsonParser.Default.Parse<ForecastRunTimeResponse>(await answer.Content.ReadAsStringAsync(Stop)));
    }

    [Fact]
    public async Task Forecast_KeptScene_SameAsItsKitAndDaySentWhole()
    {
        Scene scene = await _planner.KeepWholeSceneAsync("run", s =>
        {
            s.ShootDay.DurationMin = 300;
            s.ShootDay.Takes.Add([DaySamples.Take("12/1", 20, 8), DaySamples.Take("12/2", 60, 12)]);
        });
        Kit kit = (await _planner.Kits.GetKitAsync(new GetKitRequest { Name = scene.Kit }, cancellationToken: Stop)).Kit;
        ForecastRunTimeResponse kept = await AskAsync(new ForecastRunTimeRequest { Scene = scene.Name, TakesOnly = true });
        Assert.Equal((32, 300), (kept.Report.BatteryC, kept.Report.DurationMin));
        Assert.Equal(kept, await AskAsync(new ForecastRunTimeRequest { Setup = new RunTimeSetup { Kit = kit, Day = scene.ShootDay }, TakesOnly = true }));
        RunTimeReport cold = (await AskAsync(new ForecastRunTimeRequest { Scene = scene.Name, BatteryC = -20, DurationMin = 90, MarginFraction = 0 })).Report;
        Assert.Equal((-20, 90), (cold.BatteryC, cold.DurationMin));
        Assert.All(cold.Items, i => Assert.Equal(i.HoursWithoutMargin, i.Hours));
    }

    [Fact]
    public async Task Forecast_SceneWithoutADay_TakesTheUsualOne()
    {
        Scene scene = await _planner.KeepWholeSceneAsync("run-no-day", s => s.ShootDay = null);
        RunTimeReport report = (await AskAsync(new ForecastRunTimeRequest { Scene = scene.Name })).Report;
        Assert.Equal((20, 240, ""), (report.BatteryC, report.DurationMin, report.BrokenTake));
    }

    [Fact]
    public async Task Forecast_MediaAlone_IsEnough()
    {
        ForecastRunTimeRequest request = Request();
        Cleared(request.Setup.Kit);
        request.Setup.Kit.Batteries.Clear();
        Assert.DoesNotContain((await AskAsync(request)).Report.Items, i => i.Kind == RunTimeKind.Battery);
    }

    [Fact]
    public async Task Forecast_KitWithNothingThatRunsOut_SaysWhatToAdd()
    {
        Scene scene = await _planner.KeepSceneAsync("run-bare");
        Refused refused = await Refused.ForFieldsAsync(_planner.Endurance.ForecastRunTimeAsync(new ForecastRunTimeRequest { Scene = scene.Name }, cancellationToken: Stop));
        Assert.Equal(["kit.powered_devices"], refused.Fields.Select(f => f.Field));
        Assert.Contains("List powered_devices with their batteries, or recording_media, or both", refused.Fields[0].Description, StringComparison.Ordinal);
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Endurance.ForecastRunTimeAsync(new ForecastRunTimeRequest { Scene = "scenes/nowhere" }, cancellationToken: Stop))).Code);
    }

    [Theory]
    [MemberData(nameof(WrongOnes))]
    public async Task Forecast_WrongRequest_NamesTheField(string what)
    {
        ForecastRunTimeRequest request = Request();
        s_wrong[what].Spoil(request);
        Refused refused = await Refused.ForFieldsAsync(_planner.Endurance.ForecastRunTimeAsync(request, cancellationToken: Stop));
        Assert.Equal([s_wrong[what].Field], refused.Fields.Select(f => f.Field));
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public async Task Forecast_AtTheEndOfARange_Answers(string what)
    {
        ForecastRunTimeRequest request = Request();
        s_ends[what](request);
        RunTimeReport report = (await AskAsync(request)).Report;
        Assert.NotEmpty(report.Items);
        Assert.All(report.Items, i => Assert.True(double.IsFinite(i.Hours) && i.Hours >= 0, $"{i.Id} lasts {i.Hours} h"));
    }
}
