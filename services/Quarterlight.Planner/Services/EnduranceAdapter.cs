using Grpc.Core;
using Quarterlight.Drawing;
using Quarterlight.Endurance.Heat;
using Quarterlight.Endurance.RunTime;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>EnduranceService.</summary>
internal sealed class EnduranceAdapter(TeamLibrary library, PlanningGate gate) : EnduranceService.EnduranceServiceBase
{
    /// <inheritdoc/>
    public override async Task<ForecastHeatResponse> ForecastHeat(ForecastHeatRequest request, ServerCallContext context)
    {
        var reader = new FieldReader();
        HeatPaths paths = request.SourceCase == ForecastHeatRequest.SourceOneofCase.Scene ? HeatPaths.Scene : HeatPaths.Setup;
        HeatSetup? setup = request.SourceCase switch
        {
            ForecastHeatRequest.SourceOneofCase.Scene => await KeptAsync(CallGuard.TeamOf(context), request.Scene, context.CancellationToken),
            ForecastHeatRequest.SourceOneofCase.Setup => HeatMapper.Filled(request.Setup, paths, reader),
            _ => throw Refusals.Invalid("source", "there is nothing to forecast", "Name a kept scene with a shoot day, or send a set-up"),
        };
        reader.ThrowIfAny();
        HeatTask task = HeatMapper.ToDomain(setup!, paths, request, reader);
        reader.ThrowIfAny();
        return await gate.RunAsync(
            () =>
            {
                Endurance.Heat.HeatReport report = HeatForecast.Run(task);
                return new ForecastHeatResponse { Report = HeatReportMapper.ToContract(report), Setup = setup, Picture = Draw(request, report, task.Start) };
            },
            context.CancellationToken);
    }

    /// <inheritdoc/>
    public override async Task<ForecastRunTimeResponse> ForecastRunTime(ForecastRunTimeRequest request, ServerCallContext context)
    {
        var reader = new FieldReader();
        Kit? kit;
        ShootDay? day;
        (string kitAt, string dayAt) = ("kit", "scene.shoot_day");
        switch (request.SourceCase)
        {
            case ForecastRunTimeRequest.SourceOneofCase.Scene:
                string team = CallGuard.TeamOf(context);
                Scene scene = await library.Scenes.GetAsync(team, request.Scene, context.CancellationToken, "scene");
                kit = await library.Kits.GetAsync(team, scene.Kit, context.CancellationToken, "scene.kit");
                day = scene.ShootDay;
                break;
            case ForecastRunTimeRequest.SourceOneofCase.Setup:
                (kitAt, dayAt) = ("setup.kit", "setup.day");
                kit = request.Setup.Kit ?? throw Refusals.Invalid(kitAt, "the kit is missing", "Send one with powered devices or recording media");
                day = request.Setup.Day;
                break;
            default:
                throw Refusals.Invalid("source", "there is nothing to forecast", "Name a kept scene, or send a kit in a set-up");
        }

        RunTimeTask task = RunTimeMapper.ToDomain(kit, kitAt, day, dayAt, request, reader);
        DateTimeOffset? start = day is null ? null : DayMapper.CheckWeather(day, dayAt, reader);
        reader.ThrowIfAny();
        return await gate.RunAsync(
            () =>
            {
                Endurance.RunTime.RunTimeReport report = RunTimeForecast.Run(task);
                return new ForecastRunTimeResponse
                {
                    Report = RunTimeReportMapper.ToContract(report),
                    Picture = request.IncludePicture ? PictureMapper.ToContract(RunTimeDrawing.Draw(report, start)) : null,
                };
            },
            context.CancellationToken);
    }

    private async Task<HeatSetup> KeptAsync(string team, string name, CancellationToken cancellation)
    {
        Scene scene = await library.Scenes.GetAsync(team, name, cancellation, "scene");
        V1.Cabin cabin = await library.Cabins.GetAsync(team, scene.Cabin, cancellation, "scene.cabin");
        return scene.ShootDay is null
            ? throw Refusals.Invalid("scene.shoot_day", $"{name} has no shoot day", "Add its start, place and the air outside to the scene, or send a set-up")
            : HeatMapper.FromScene(scene, cabin);
    }

    private static Picture? Draw(ForecastHeatRequest request, Endurance.Heat.HeatReport report, DateTimeOffset start) =>
        request.IncludePicture ? PictureMapper.ToContract(HeatDrawing.Draw(report, start, request.PictureInFahrenheit ? TemperatureUnit.Fahrenheit : TemperatureUnit.Celsius)) : null;
}
