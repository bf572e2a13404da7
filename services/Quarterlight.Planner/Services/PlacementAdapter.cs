using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using Quarterlight.Cabin;
using Quarterlight.Drawing;
using Quarterlight.Placement;
using Quarterlight.Placement.Levels;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>PlacementService.</summary>
internal sealed class PlacementAdapter(TeamLibrary library, PlanningGate gate, RecentPlans recent, TimeProvider time) : PlacementService.PlacementServiceBase
{
    /// <inheritdoc/>
    public override async Task<PlanPlacementResponse> PlanPlacement(PlanPlacementRequest request, ServerCallContext context)
    {
        string team = CallGuard.TeamOf(context);
        PlanningInput input = request.SourceCase switch
        {
            PlanPlacementRequest.SourceOneofCase.Scene => await PlanningInput.KeptAsync(library, team, request.Scene, request.Changes, context.CancellationToken),
            PlanPlacementRequest.SourceOneofCase.Bundle => PlanningInput.Sent(request.Bundle, request.Changes),
            _ => throw Refusals.Invalid("source", "there is nothing to plan", "Name a kept scene, or send a bundle"),
        };
        (MountPlan plan, Picture? picture) = await gate.RunAsync(
            () =>
            {
                MountPlan made = recent.Of(input);
                return (made, request.IncludePicture ? Draw(input, made, made.Best) : null);
            },
            context.CancellationToken);
        Plan contract = PlanMapper.ToContract(plan, input.Scene, input.Cabin, input.Kit);
        contract.RemovedSiteIds.AddRange(input.Task.Scene.RemovedSiteIds);
        DateTimeOffset now = time.GetUtcNow();
        contract.CreateTime = Timestamp.FromDateTimeOffset(now);
        if (request.Keep)
        {
            contract = await library.Plans.CreateAsync(team, PlanIds.Next(input.Scene.Name, now), contract, context.CancellationToken);
        }

        return new PlanPlacementResponse { Plan = contract, Picture = picture };
    }

    /// <inheritdoc/>
    public override async Task<ExplainSiteResponse> ExplainSite(ExplainSiteRequest request, ServerCallContext context)
    {
        string team = CallGuard.TeamOf(context);
        PlanningInput input;
        switch (request.SourceCase)
        {
            case ExplainSiteRequest.SourceOneofCase.Plan:
                input = await PlanningInput.OfPlanAsync(library, team, request.Plan, context.CancellationToken);
                break;
            case ExplainSiteRequest.SourceOneofCase.Scene:
                input = await PlanningInput.KeptAsync(library, team, request.Scene, null, context.CancellationToken);
                break;
            case ExplainSiteRequest.SourceOneofCase.Bundle:
                input = PlanningInput.Sent(request.Bundle, null);
                break;
            default:
                throw Refusals.Invalid("source", "there is nothing to explain in", "Name a kept plan or scene, or send a bundle");
        }

        SiteExplanation explanation = await gate.RunAsync(
            () => PlacementPlanner.Explain(input.Task, recent.Of(input), request.SiteId, request.TalkerId),
            context.CancellationToken);
        return PlanMapper.ToContract(explanation);
    }

    /// <inheritdoc/>
    public override async Task<PlanLevelsResponse> PlanLevels(PlanLevelsRequest request, ServerCallContext context)
    {
        string team = CallGuard.TeamOf(context);
        var reader = new FieldReader();
        PlanningInput input;
        switch (request.SourceCase)
        {
            case PlanLevelsRequest.SourceOneofCase.Plan:
                PlanningInput.RefuseChanges(request.Changes, "a kept plan", "Leave them out, or name its scene", reader);
                input = await PlanningInput.OfPlanAsync(library, team, request.Plan, context.CancellationToken);
                break;
            case PlanLevelsRequest.SourceOneofCase.Scene:
                input = await PlanningInput.KeptAsync(library, team, request.Scene, request.Changes, context.CancellationToken);
                break;
            case PlanLevelsRequest.SourceOneofCase.Bundle:
                input = PlanningInput.Sent(request.Bundle, request.Changes);
                break;
            default:
                throw Refusals.Invalid("source", "there is nothing to set levels for", "Name a kept plan or scene, or send a bundle");
        }

        LevelTask? task = LevelMapper.ToDomain(input, request.SourceCase == PlanLevelsRequest.SourceOneofCase.Bundle ? "bundle.kit" : "kit", request, reader);
        reader.ThrowIfAny();
        return await gate.RunAsync(
            () => new PlanLevelsResponse { Report = LevelReportMapper.ToContract(LevelPlanner.Plan(task! with { Plan = recent.Of(input) })) },
            context.CancellationToken);
    }

    /// <inheritdoc/>
    public override async Task<ListMountSitesResponse> ListMountSites(ListMountSitesRequest request, ServerCallContext context)
    {
        V1.Cabin cabin = request.SourceCase switch
        {
            ListMountSitesRequest.SourceOneofCase.Name => await library.Cabins.GetAsync(CallGuard.TeamOf(context), request.Name, context.CancellationToken),
            ListMountSitesRequest.SourceOneofCase.Cabin => request.Cabin,
            _ => throw Refusals.Invalid("source", "there is no car", "Name a kept car, or send one"),
        };
        var reader = new FieldReader();
        CabinSpec spec = CabinMapper.ToDomain(cabin, "cabin", reader);
        reader.ThrowIfAny();
        CabinGeometry geometry = CabinBuilder.Build(spec);
        var response = new ListMountSitesResponse { Measurements = CabinMapper.ToContract(geometry.Measurements) };
        response.Seats.AddRange(geometry.Seats.Select(CabinMapper.ToContract));
        response.Sites.AddRange(geometry.Sites.Select(CabinMapper.ToContract));
        return response;
    }

    /// <inheritdoc/>
    public override async Task<DrawPlanResponse> DrawPlan(DrawPlanRequest request, ServerCallContext context)
    {
        Plan plan = request.SourceCase switch
        {
            DrawPlanRequest.SourceOneofCase.Name => await library.Plans.GetAsync(CallGuard.TeamOf(context), request.Name, context.CancellationToken),
            DrawPlanRequest.SourceOneofCase.Plan when request.Plan is { Scene: not null, Cabin: not null, Kit: not null } => request.Plan,
            DrawPlanRequest.SourceOneofCase.Plan => throw Refusals.Invalid("plan", "the plan is not whole", "Send a plan as PlanPlacement returned it"),
            _ => throw Refusals.Invalid("source", "there is no plan", "Name a kept plan, or send one"),
        };
        PlanningInput input = PlanningInput.From(plan.Scene, plan.Cabin, plan.Kit, plan.RemovedSiteIds, request.SourceCase == DrawPlanRequest.SourceOneofCase.Plan ? "plan." : "");
        Picture picture = await gate.RunAsync(
            () =>
            {
                MountPlan made = recent.Of(input);
                return Draw(input, made, OptionOf(made, request.OptionIndex));
            },
            context.CancellationToken);
        return new DrawPlanResponse { Picture = picture };
    }

    private static Placement.PlanOption OptionOf(MountPlan plan, int index) => index switch
    {
        0 => plan.Best,
        > 0 when index <= plan.RunnersUp.Count => plan.RunnersUp[index - 1],
        _ => throw Refusals.Invalid("option_index", $"this plan has no option {index}", $"Use 0 for the plan itself, up to {plan.RunnersUp.Count} for a runner-up"),
    };

    private static Picture Draw(PlanningInput input, MountPlan plan, Placement.PlanOption option) =>
        PictureMapper.ToContract(PlanDrawing.Draw(input.Task.Cabin, input.Task.Kit, input.Task.Scene, plan, option));
}
