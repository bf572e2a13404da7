using Grpc.Core;
using Quarterlight.Drawing;
using Quarterlight.Placement.Noise;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>NoiseService.</summary>
internal sealed class NoiseAdapter(TeamLibrary library, PlanningGate gate, RecentPlans recent) : NoiseService.NoiseServiceBase
{
    /// <inheritdoc/>
    public override async Task<ForecastNoiseResponse> ForecastNoise(ForecastNoiseRequest request, ServerCallContext context)
    {
        var reader = new FieldReader();
        (NoiseTask task, PlanningInput? input) = await ReadAsync(request.Scene, request.Bundle, request.Setup, request.Changes, reader, context);
        if (request.TableSpeedsKmPerHour.Count > 0)
        {
            task = task with { TableSpeedsKmPerHour = [.. request.TableSpeedsKmPerHour] };
        }

        reader.AddUnsaid(NoiseRules.ValidateTableSpeeds(task.TableSpeedsKmPerHour));
        reader.ThrowIfAny();
        return await gate.RunAsync(
            () =>
            {
                Placement.Noise.NoiseReport report = NoiseSurvey.Run(NoiseMapper.Planned(task, input, recent.Of));
                return new ForecastNoiseResponse { Report = NoiseReportMapper.ToContract(report), Picture = Draw(request, report) };
            },
            context.CancellationToken);
    }

    /// <inheritdoc/>
    public override async Task<FindQuietStretchesResponse> FindQuietStretches(FindQuietStretchesRequest request, ServerCallContext context)
    {
        var reader = new FieldReader();
        (NoiseTask task, PlanningInput? input) = await ReadAsync(request.Scene, request.Bundle, request.Setup, request.Changes, reader, context);
        Google.Protobuf.Collections.RepeatedField<V1.RouteStretch> route = request.Stretches.Count > 0 || input is null ? request.Stretches : input.Scene.Route;
        if (route.Count == 0)
        {
            reader.Add("stretches", "there is no route", "List its stretches, or keep a route with the scene");
        }

        IReadOnlyList<Placement.Noise.RouteStretch> stretches = RouteMapper.ToDomain(route, "stretches", reader);
        reader.ThrowIfAny();
        return await gate.RunAsync(
            () => new FindQuietStretchesResponse { Report = RouteMapper.ToContract(RouteSurvey.Run(new RouteTask(NoiseMapper.Planned(task, input, recent.Of), stretches))) },
            context.CancellationToken);
    }

    private async Task<(NoiseTask Task, PlanningInput? Input)> ReadAsync(
        string scene, SceneBundle? bundle, NoiseSetup? setup, SceneChanges? changes, FieldReader reader, ServerCallContext context)
    {
        if (setup is not null)
        {
            PlanningInput.RefuseChanges(changes, "a set-up", "Put them into the set-up", reader);
            return (NoiseMapper.ToDomain(setup, "setup", reader), null);
        }

        PlanningInput input = bundle is not null ? PlanningInput.Sent(bundle, changes)
            : scene.Length > 0 ? await PlanningInput.KeptAsync(library, CallGuard.TeamOf(context), scene, changes, context.CancellationToken)
            : throw Refusals.Invalid("source", "there is nothing to forecast", "Name a kept scene, or send a bundle or a set-up");
        return (NoiseMapper.ToDomain(input), input);
    }

    private static Picture? Draw(ForecastNoiseRequest request, Placement.Noise.NoiseReport report) =>
        request.IncludePicture ? PictureMapper.ToContract(NoiseDrawing.Draw(report, request.PictureInMph ? SpeedUnit.MilesPerHour : SpeedUnit.KmPerHour)) : null;
}
