using Quarterlight.Planner.Errors;

namespace Quarterlight.Planner.Services;

/// <summary>How many pieces of work may be under way, and whose turn it is to compute: as many at once as there are cores, in order.</summary>
/// <param name="most">Most under way, waiting ones included.</param>
/// <param name="what">What they are, in words, for the refusal.</param>
internal abstract class WorkGate(int most, string what) : IDisposable
{
    private readonly SemaphoreSlim _cores = new(Environment.ProcessorCount);
    private int _present;

    /// <summary>How many are in, waiting ones included.</summary>
    public int Present => Volatile.Read(ref _present);

    /// <summary>Lets one in; dispose the pass when it has gone.</summary>
    /// <exception cref="Grpc.Core.RpcException">RESOURCE_EXHAUSTED: too many are in.</exception>
    public Pass Enter()
    {
        if (Interlocked.Increment(ref _present) > most)
        {
            Interlocked.Decrement(ref _present);
            throw Refusals.Busy(what);
        }

        return new Pass(() => Interlocked.Decrement(ref _present));
    }

    /// <summary>Waits for a core; dispose the turn to give it back.</summary>
    public async ValueTask<Turn> TurnAsync(CancellationToken cancellation)
    {
        await _cores.WaitAsync(cancellation).ConfigureAwait(false);
        return new Turn(_cores);
    }

    /// <inheritdoc/>
    public void Dispose() => _cores.Dispose();

    /// <summary>A core held.</summary>
    internal readonly struct Turn(SemaphoreSlim cores) : IDisposable
    {
        /// <inheritdoc/>
        public void Dispose() => cores.Release();
    }

    /// <summary>Leave to be in.</summary>
    internal sealed class Pass(Action leave) : IDisposable
    {
        /// <inheritdoc/>
        public void Dispose() => leave();
    }
}
