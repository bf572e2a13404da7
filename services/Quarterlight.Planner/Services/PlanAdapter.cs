using System.Runtime.CompilerServices;
using Grpc.Core;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>PlanService.</summary>
internal sealed class PlanAdapter(TeamLibrary library) : PlanService.PlanServiceBase
{
    private const int LongestNote = 2000;

    // Kept plans are shared and unchanging while cached: their summaries live exactly as long.
    private readonly ConditionalWeakTable<Plan, Plan> _summaries = [];

    /// <inheritdoc/>
    public override async Task<CreatePlanResponse> CreatePlan(CreatePlanRequest request, ServerCallContext context)
    {
        if (request.Plan is not { Scene: not null, Cabin: not null, Kit: not null, Best: not null } plan)
        {
            throw Refusals.Invalid("plan", "the plan is missing or not whole", "Send a plan as PlanPlacement returned it");
        }

        CheckNote("plan.note", plan.Note);
        PlanningInput.From(plan.Scene, plan.Cabin, plan.Kit, null, "plan.");
        return new() { Plan = await library.Plans.CreateAsync(CallGuard.TeamOf(context), request.PlanId, plan, context.CancellationToken) };
    }

    /// <inheritdoc/>
    public override async Task<GetPlanResponse> GetPlan(GetPlanRequest request, ServerCallContext context)
    {
        Plan plan = await library.Plans.GetAsync(CallGuard.TeamOf(context), request.Name, context.CancellationToken);
        return new() { Plan = request.View == PlanView.Summary ? _summaries.GetValue(plan, SummaryOf) : plan };
    }

    /// <inheritdoc/>
    public override async Task<ListPlansResponse> ListPlans(ListPlansRequest request, ServerCallContext context)
    {
        (IReadOnlyList<Plan> page, string next) = await library.Plans.ListAsync(CallGuard.TeamOf(context), request.PageSize, request.PageToken, context.CancellationToken);
        return new() { Plans = { request.View == PlanView.Full ? page : page.Select(SummaryOf) }, NextPageToken = next };
    }

    /// <inheritdoc/>
    public override async Task<UpdatePlanResponse> UpdatePlan(UpdatePlanRequest request, ServerCallContext context)
    {
        CheckNote("note", request.Note);
        string team = CallGuard.TeamOf(context);
        Plan kept = await library.Plans.GetAsync(team, request.Name, context.CancellationToken);
        Plan changed = kept.Clone();
        changed.Note = request.Note;

        // Without a revision from the caller the one just read guards the rest of the plan.
        long revision = request.Revision == 0 ? kept.Revision : request.Revision;
        return new() { Plan = await library.Plans.UpdateAsync(team, request.Name, changed, revision, context.CancellationToken) };
    }

    /// <inheritdoc/>
    public override async Task<DeletePlanResponse> DeletePlan(DeletePlanRequest request, ServerCallContext context)
    {
        await library.Plans.DeleteAsync(CallGuard.TeamOf(context), request.Name, context.CancellationToken);
        return new();
    }

    private static Plan SummaryOf(Plan plan)
    {
        Plan summary = plan.Clone();
        summary.Scene = null;
        summary.Cabin = null;
        summary.Kit = null;
        summary.RunnersUp.Clear();
        summary.RefusedSites.Clear();
        return summary;
    }

    private static void CheckNote(string field, string note)
    {
        if (note.Length > LongestNote)
        {
            throw Refusals.Invalid(field, $"the note has {note.Length} characters", $"Use {LongestNote} at most");
        }
    }
}
