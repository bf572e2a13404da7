using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Canned reports of heat, run time, levels, noise and routes, and the last request of each kind.</summary>
public sealed class CannedForecasts
{
    public HeatReport Heat { get; set; } = ForecastReports.Heat();

    public RunTimeReport RunTime { get; set; } = ForecastReports.RunTime();

    public LevelReport Levels { get; set; } = ForecastReports.Levels();

    public NoiseReport Noise { get; set; } = ForecastReports.Noise();

    public RouteReport Route { get; set; } = ForecastReports.Route();

    public Func<Exception>? Refusal { get; set; }

    public ForecastHeatRequest? HeatAsked { get; private set; }

    public ForecastRunTimeRequest? RunTimeAsked { get; private set; }

    public PlanLevelsRequest? LevelsAsked { get; private set; }

    public ForecastNoiseRequest? NoiseAsked { get; private set; }

    public FindQuietStretchesRequest? RouteAsked { get; private set; }

    public ForecastHeatResponse Answer(ForecastHeatRequest request) => Refused((HeatAsked = request) is not null, new ForecastHeatResponse { Report = Heat, Setup = request.Setup, Picture = request.IncludePicture ? Reports.Picture() : null });

    public ForecastRunTimeResponse Answer(ForecastRunTimeRequest request) => Refused((RunTimeAsked = request) is not null, new ForecastRunTimeResponse { Report = RunTime, Picture = request.IncludePicture ? Reports.Picture() : null });

    public PlanLevelsResponse Answer(PlanLevelsRequest request) => Refused((LevelsAsked = request) is not null, new PlanLevelsResponse { Report = Levels });

    public ForecastNoiseResponse Answer(ForecastNoiseRequest request) => Refused((NoiseAsked = request) is not null, new ForecastNoiseResponse { Report = Noise, Picture = request.IncludePicture ? Reports.Picture() : null });

    public FindQuietStretchesResponse Answer(FindQuietStretchesRequest request) => Refused((RouteAsked = request) is not null, new FindQuietStretchesResponse { Report = Route });

    /// <summary>Asks one question of a desk whose planner answers so.</summary>
    public async Task<CrewAnswer> AskAsync(string question, string? scene = "demo-school-run", UnitPreference? units = null, IReadOnlyList<Kit>? kits = null, IReadOnlyList<Scene>? scenes = null, CrewMemory? memory = null, bool empty = false, TimeProvider? clock = null)
    {
        await using FakePlanner fake = await FakePlanner.StartAsync(_ => new PlanPlacementResponse { Plan = new Plan { Scene = DemoData.Scenes[^1].Clone(), Best = new PlanOption() } }, empty: empty, scenes: scenes, kits: kits, forecasts: this);
        return await new CrewDesk(fake.Invoker, new CrewDeskOptions { Clock = clock ?? TimeProvider.System }).AskAsync(new CrewQuestion { Text = question, Scene = scene, Units = units, Memory = memory ?? CrewMemory.Empty }, TestContext.Current.CancellationToken);
    }

    private T Refused<T>(bool asked, T answer) => asked && Refusal is { } refuse ? throw refuse() : answer;
}
