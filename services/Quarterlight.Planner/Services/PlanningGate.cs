using Quarterlight.Planner.Errors;

namespace Quarterlight.Planner.Services;

/// <summary>Planning takes a core for some milliseconds: as many at once as there are cores, a few more may wait, the rest are told so.</summary>
internal sealed class PlanningGate(PlannerHostOptions options) : IDisposable
{
    private readonly SemaphoreSlim _cores = new(Environment.ProcessorCount);
    private int _present;

    /// <summary>Runs work on the thread pool when its turn comes.</summary>
    public async Task<T> RunAsync<T>(Func<T> work, CancellationToken cancellation)
    {
        if (Interlocked.Increment(ref _present) > options.MostWaitingPlans)
        {
            Interlocked.Decrement(ref _present);
            throw Refusals.Busy("plans");
        }

        try
        {
            await _cores.WaitAsync(cancellation).ConfigureAwait(false);
            try
            {
                return await Task.Run(work, cancellation).ConfigureAwait(false);
            }
            finally
            {
                _cores.Release();
            }
        }
        finally
        {
            Interlocked.Decrement(ref _present);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _cores.Dispose();
}
