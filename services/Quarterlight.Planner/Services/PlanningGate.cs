namespace Quarterlight.Planner.Services;

/// <summary>Planning takes a core for some milliseconds: as many at once as there are cores, a few more may wait, the rest are told so.</summary>
internal sealed class PlanningGate(PlannerHostOptions options) : WorkGate(options.MostWaitingPlans, "plans")
{
    /// <summary>Runs work on the thread pool when its turn comes.</summary>
    public async Task<T> RunAsync<T>(Func<T> work, CancellationToken cancellation)
    {
        using Pass pass = Enter();
        using Turn turn = await TurnAsync(cancellation).ConfigureAwait(false);
        return await Task.Run(work, cancellation).ConfigureAwait(false);
    }
}
