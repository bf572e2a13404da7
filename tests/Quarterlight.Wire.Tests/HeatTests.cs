using System.Net;
using System.Text;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>ForecastHeat over real gRPC and JSON. Days are invented.</summary>
public sealed class HeatTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly Ranged<ForecastHeatRequest>[] s_ranged =
    [
        new("setup.day.utc_offset_min", -720, 840, (r, v) => r.Setup.Day.UtcOffsetMin = (int)v, Whole: true),
        new("setup.day.duration_min", 10, 720, (r, v) => r.Setup.Day.DurationMin = v),
        new("setup.day.latitude_deg", -90, 90, (r, v) => r.Setup.Day.LatitudeDeg = v),
        new("setup.day.longitude_deg", -180, 180, (r, v) => r.Setup.Day.LongitudeDeg = v),
        new("setup.day.air.temperature_c", -30, 55, (r, v) => r.Setup.Day.Air.TemperatureC = v),
        new("setup.day.air.relative_humidity_percent", 1, 100, (r, v) => r.Setup.Day.Air.RelativeHumidityPercent = v),
        new("setup.day.air.wind_speed_m_per_s", 0, 30, (r, v) => r.Setup.Day.Air.WindSpeedMPerS = v),
        new("setup.day.air.cloud_fraction", 0, 1, (r, v) => r.Setup.Day.Air.CloudFraction = v),
        new("setup.day.heading_deg", 0, 360, (r, v) => r.Setup.Day.HeadingDeg = v),
        new("setup.day.soak_min", 0, 600, (r, v) => r.Setup.Day.SoakMin = v),
        new("setup.day.equipment_w", 0, 3000, (r, v) => r.Setup.Day.EquipmentW = v),
        new("setup.day.occupants.adult_count", 0, 9, (r, v) => (People(r).AdultCount, People(r).ChildCount) = ((int)v, 1), Whole: true),
        new("setup.day.occupants.child_count", 0, 9, (r, v) => People(r).ChildCount = (int)v, Whole: true),
        new("setup.day.occupants.animal_count", 0, 9, (r, v) => People(r).AnimalCount = (int)v, Whole: true),
        new("setup.day.occupants.clothing_clo", 0, 2, (r, v) => People(r).ClothingClo = v),
        new("setup.day.occupants.activity_met", 0.8, 4, (r, v) => People(r).ActivityMet = v),
        new("setup.day.cooling.power_w", 0, 15000, (r, v) => Cooling(r).PowerW = v),
        new("setup.day.cooling.set_point_c", 5, 30, (r, v) => Cooling(r).SetPointC = v),
        new("setup.day.cooling.airflow_l_per_s", 5, 300, (r, v) => Cooling(r).AirflowLPerS = v),
        new("setup.speed_km_per_hour", 0, 130, (r, v) => r.Setup.SpeedKmPerHour = v),
        new("setup.open_windows", 0, 4, (r, v) => r.Setup.OpenWindows = v),
        new("setup.day.takes[0].duration_min", 0.1, 240, (r, v) => r.Setup.Day.Takes.Add(DaySamples.Take("1", 0, v))),
        new("roll_min", 0.5, 240, (r, v) => r.RollMin = v),
    ];

    private static readonly Dictionary<string, (Action<ForecastHeatRequest> Spoil, string Field)> s_wrong = new(
    [
        .. s_ranged.SelectMany(r => r.Outside()),
        .. new Ranged<ForecastHeatRequest>("setup.day.takes[0].start_min", 0, 1440, (r, v) => r.Setup.Day.Takes.Add(DaySamples.Take("1", v, 1))).Outside(),
        Wrong("no car", r => r.Setup.Cabin = null, "setup.cabin"),
        Wrong("no day", r => r.Setup.Day = null, "setup.day"),
        Wrong("nothing", r => r.ClearSource(), "source"),
        Wrong("a car without a body", r => r.Setup.Cabin.BodyStyle = BodyStyle.Unspecified, "setup.cabin.body_style"),
        Wrong("no start", r => r.Setup.Day.StartTime = null, "setup.day.start_time"),
        Wrong("a start before the calendar", r => r.Setup.Day.StartTime = new Timestamp { Seconds = long.MinValue }, "setup.day.start_time"),
        Wrong("a start after the calendar", r => r.Setup.Day.StartTime = new Timestamp { Seconds = long.MaxValue }, "setup.day.start_time"),
        Wrong("nanoseconds below none", r => r.Setup.Day.StartTime.Nanos = -1, "setup.day.start_time"),
        Wrong("nanoseconds of more than a second", r => r.Setup.Day.StartTime.Nanos = 1_000_000_000, "setup.day.start_time"),
        Wrong("no air", r => r.Setup.Day.Air = null, "setup.day.air"),
        Wrong("no humidity", r => r.Setup.Day.Air = new OutsideAir { TemperatureC = 30 }, "setup.day.air.relative_humidity_percent"),
        Wrong("a start before the sun is known", r => r.Setup.Day.StartTime = Timestamp.FromDateTimeOffset(new DateTimeOffset(1700, 1, 1, 0, 0, 0, TimeSpan.Zero)), "setup.day.start_time"),
        Wrong("nobody in the car", r => People(r).AdultCount = 0, "setup.day.occupants.adult_count"),
        Wrong("unknown glass", r => r.Setup.Day.Glass = (GlassKind)9, "setup.day.glass"),
        Wrong("unknown shade", r => r.Setup.Day.Shade = (CarShade)(-1), "setup.day.shade"),
        Wrong("unknown cover", r => r.Setup.Day.Cover = (SunCover)77, "setup.day.cover"),
        Wrong("unknown limit", r => r.RhythmLimit = (HeatLimitKind)12, "rhythm_limit"),
        Wrong("a rhythm up to stop", r => r.RhythmLimit = HeatLimitKind.Stop, "rhythm_limit"),
        Wrong("a take without a label", r => r.Setup.Day.Takes.Add(DaySamples.Take("", 0, 1)), "setup.day.takes[0].label"),
        Wrong("a take after the day", r => r.Setup.Day.Takes.Add(DaySamples.Take("1", 235, 6)), "setup.day.takes[0].start_min"),
        Wrong("too many takes", r => r.Setup.Day.Takes.Add(Enumerable.Range(0, 201).Select(i => DaySamples.Take($"{i}", i, 0.5))), "setup.day.takes"),
    ]);

    private static readonly Dictionary<string, Action<ForecastHeatRequest>> s_ends = new(s_ranged.SelectMany(r => r.Ends()));

    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> WrongOnes => [.. s_wrong.Keys];

    public static TheoryData<string> Ends => [.. s_ends.Keys];

    private static ForecastHeatRequest Request() => new() { Setup = DaySamples.HeatSetup() };

    private static Occupants People(ForecastHeatRequest r) => r.Setup.Day.Occupants ??= new Occupants();

    private static CoolingSystem Cooling(ForecastHeatRequest r) => r.Setup.Day.Cooling ??= new CoolingSystem();

    private static KeyValuePair<string, (Action<ForecastHeatRequest> Spoil, string Field)> Wrong(string what, Action<ForecastHeatRequest> spoil, string field) => KeyValuePair.Create(what, (spoil, field));

    private async Task<ForecastHeatResponse> AskAsync(ForecastHeatRequest request) => await _planner.Endurance.ForecastHeatAsync(request, cancellationToken: Stop);

    private static HeatLimitTime Limit(ForecastHeatResponse answer, HeatLimitKind kind) => answer.Report.Limits.Single(l => l.Kind == kind);

    [Fact]
    public async Task Forecast_HotDay_AnswersWhole()
    {
        ForecastHeatRequest request = Request();
        request.IncludePicture = true;
        ForecastHeatResponse answer = await AskAsync(request);
        HeatReport report = answer.Report;
        Assert.Equal([HeatLimitKind.Comfort, HeatLimitKind.Caution, HeatLimitKind.Stop], report.Limits.Select(l => l.Kind));
        Assert.True(report.SoakedAirC > 32, "a shut car in the sun is hotter than the air outside");
        Assert.Equal(HeatLimitKind.Comfort, report.Rhythm.Limit);
        Assert.Equal(241, report.Samples.Count);
        Assert.Equal((0, 240), (report.Samples[0].Minute, report.Samples[^1].Minute));
        Assert.NotEmpty(report.Options);
        Assert.InRange(report.SunAtStart.ElevationDeg, 60, 90); // 15 July, 34 degrees north, 20:00 UTC at 118 degrees west: close to solar noon.
        Assert.False(report.Strictest);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], answer.Picture.Png.Take(4));
        Assert.InRange(answer.Picture.TextAlternative.Length, 100, 1024);
        request.PictureInFahrenheit = true;
        Assert.NotEqual(answer.Picture.Png, (await AskAsync(request)).Picture.Png);
        request.IncludePicture = false;
        Assert.Null((await AskAsync(request)).Picture);
    }

    [Fact]
    public async Task Forecast_LeftOpen_UsualValuesAreFilledInAndSaid()
    {
        HeatSetup setup = (await AskAsync(Request())).Setup;
        ShootDay day = setup.Day;
        Assert.Equal((240, 60, GlassKind.Tinted, CarShade.None, SunCover.None), (day.DurationMin, day.SoakMin, day.Glass, day.Shade, day.Cover));
        Assert.Equal((2, 0.6, 1.2), (day.Occupants.AdultCount, day.Occupants.ClothingClo, day.Occupants.ActivityMet));
        Assert.Equal((3500, 18.3, 100), (day.Cooling.PowerW, day.Cooling.SetPointC, day.Cooling.AirflowLPerS));
        ForecastHeatRequest turning = Request();
        turning.Setup.Day.ClearHeadingDeg();
        Assert.False((await AskAsync(turning)).Setup.Day.HasHeadingDeg, "a car that turns has no heading");
    }

    [Fact]
    public async Task Forecast_StatedZeros_AreNotTakenAsUnset()
    {
        ForecastHeatRequest request = Request();
        (People(request).AdultCount, People(request).ChildCount) = (0, 1);
        Cooling(request).PowerW = 0;
        request.Setup.Day.SoakMin = 0;
        ForecastHeatResponse answer = await AskAsync(request);
        Assert.Equal((0, 0, 0), (answer.Setup.Day.Occupants.AdultCount, answer.Setup.Day.Cooling.PowerW, answer.Setup.Day.SoakMin));
        Assert.NotEqual((await AskAsync(Request())).Report, answer.Report);
    }

    [Fact]
    public async Task Forecast_OverJson_SameAnswer()
    {
        ForecastHeatRequest request = Request();
        using var body = new StringContent(JsonFormatter.Default.Format(request), Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await _planner.Http.PostAsync("/v1/endurance:forecastHeat", body, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(await AskAsync(request), JsonParser.Default.Parse<ForecastHeatResponse>(await answer.Content.ReadAsStringAsync(Stop)));
    }

    [Fact]
    public async Task Forecast_KeptScene_SameAsItsSetupSentWhole()
    {
        Scene scene = await _planner.KeepWholeSceneAsync("heat", s =>
        {
            s.SilentSeatIds.Add("rear-left");
            s.DriveConditions.OpenWindows.Add(new WindowOpening { PaneId = "front-left", OpenFraction = 0.5 });
            s.DriveConditions.OpenWindows.Add(new WindowOpening { PaneId = "rear-left", OpenFraction = 0.25 });
        });
        ForecastHeatResponse kept = await AskAsync(new ForecastHeatRequest { Scene = scene.Name });
        Assert.Equal((4, 50, 0.75), (kept.Setup.Day.Occupants.AdultCount, kept.Setup.SpeedKmPerHour, kept.Setup.OpenWindows));
        Assert.Equal(kept, await AskAsync(new ForecastHeatRequest { Setup = kept.Setup }));
        Assert.Equal(scene, (await _planner.Scenes.GetSceneAsync(new GetSceneRequest { Name = scene.Name }, cancellationToken: Stop)).Scene);
    }

    [Fact]
    public async Task Forecast_ChildInTheCar_OnlyTheStrictestLimitIsLeft()
    {
        ForecastHeatRequest request = Request();
        People(request).ChildCount = 1;
        ForecastHeatResponse child = await AskAsync(request);
        Assert.True(child.Report.Strictest);
        double?[] times = [.. child.Report.Limits.Select(l => l.HasMinutes ? l.Minutes : (double?)null)];
        Assert.Single(times.Distinct());
        HeatLimitTime adults = Limit(await AskAsync(Request()), HeatLimitKind.Caution);
        Assert.True(times[0] is { } t && (!adults.HasMinutes || t <= adults.Minutes), "no longer than adults may");
        Assert.Contains(child.Report.Advisories, a => a.Severity == AdvisorySeverity.Safety);
    }

    [Fact]
    public async Task Forecast_WindscreenToTheSun_MoreSunThanFromBehindInAVan()
    {
        // The van has no glass behind, so with the low sun ahead more comes in than with it astern. This holds the bearing of the panes.
        ForecastHeatRequest request = Request();
        request.Setup.Cabin.BodyStyle = BodyStyle.PanelVan;
        request.Setup.Day.StartTime = Timestamp.FromDateTimeOffset(new DateTimeOffset(2026, 7, 16, 1, 0, 0, TimeSpan.Zero));
        request.Setup.Day.HeadingDeg = 0;
        SunPosition sun = (await AskAsync(request)).Report.SunAtStart;
        Assert.InRange(sun.ElevationDeg, 5, 45);

        async Task<double> GainAsync(double heading)
        {
            request.Setup.Day.HeadingDeg = heading % 360;
            return (await AskAsync(request)).Report.SunAtStart.GainW;
        }

        double ahead = await GainAsync(sun.AzimuthDeg), behind = await GainAsync(sun.AzimuthDeg + 180);
        Assert.True(ahead > 1.2 * behind, $"{ahead:0} W with the sun ahead, {behind:0} W behind");
        Assert.Equal(await GainAsync(sun.AzimuthDeg + 60), await GainAsync(sun.AzimuthDeg + 300), 1.0);
    }

    [Fact]
    public async Task Forecast_SceneWithoutADay_SaysWhatToAdd()
    {
        Scene scene = await _planner.KeepSceneAsync("no-day");
        Refused refused = await Refused.ForFieldsAsync(_planner.Endurance.ForecastHeatAsync(new ForecastHeatRequest { Scene = scene.Name }, cancellationToken: Stop));
        refused.Names("scene.shoot_day");
        Assert.Contains("Add its start, place and the air outside", refused.Fields[0].Description, StringComparison.Ordinal);
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Endurance.ForecastHeatAsync(new ForecastHeatRequest { Scene = "scenes/nowhere" }, cancellationToken: Stop))).Code);
    }

    [Theory]
    [MemberData(nameof(WrongOnes))]
    public async Task Forecast_WrongRequest_NamesTheField(string what)
    {
        ForecastHeatRequest request = Request();
        s_wrong[what].Spoil(request);
        Refused refused = await Refused.ForFieldsAsync(_planner.Endurance.ForecastHeatAsync(request, cancellationToken: Stop));
        Assert.Equal([s_wrong[what].Field], refused.Fields.Select(f => f.Field));
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public async Task Forecast_AtTheEndOfARange_Answers(string what)
    {
        ForecastHeatRequest request = Request();
        s_ends[what](request);
        ForecastHeatResponse answer = await AskAsync(request);
        Assert.Equal(3, answer.Report.Limits.Count);
        Assert.DoesNotContain(answer.Report.Samples, s => !double.IsFinite(s.AirC + s.InteriorC + s.WbgtC + s.Co2Ppm + s.RelativeHumidityPercent));
    }

    [Fact]
    public async Task Forecast_UnknownChoice_ListsTheChoices()
    {
        ForecastHeatRequest request = Request();
        request.Setup.Day.Shade = (CarShade)9;
        Refused refused = await Refused.ForFieldsAsync(_planner.Endurance.ForecastHeatAsync(request, cancellationToken: Stop));
        Assert.Contains("None, Broken, PopUp, Full", refused.Fields[0].Description, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Forecast_ManyThingsWrong_AllSaidAtOnce()
    {
        ForecastHeatRequest request = Request();
        request.Setup.Day.StartTime = null;
        request.Setup.Day.Air.TemperatureC = 80;
        request.Setup.Day.Glass = (GlassKind)9;
        request.Setup.Cabin.DriveSide = DriveSide.Unspecified;
        request.RollMin = 0;
        Refused refused = await Refused.ForFieldsAsync(_planner.Endurance.ForecastHeatAsync(request, cancellationToken: Stop));
        Assert.Equal(
            ["roll_min", "setup.cabin.drive_side", "setup.day.air.temperature_c", "setup.day.glass", "setup.day.start_time"],
            refused.Fields.Select(f => f.Field).Order(StringComparer.Ordinal));
    }
}
