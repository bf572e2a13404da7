using Quarterlight.Planner.Errors;

namespace Quarterlight.Planner.Upload;

/// <summary>
/// How many clips may be under way, and whose turn it is to compute. A clip holds a core for one block of samples and not while it waits for bytes,
/// so a slow upload is in nobody's way; turns are given in order.
/// </summary>
internal sealed class ClipGate : IDisposable
{
    private readonly SemaphoreSlim _cores = new(Environment.ProcessorCount);
    private readonly int _most;
    private int _present;

    /// <summary>Makes it for <see cref="PlannerHostOptions.MostClips"/>.</summary>
    public ClipGate(PlannerHostOptions options)
    {
        _most = options.MostClips;

        // A decoder that pulls (Vorbis) waits for bytes on a thread of the pool, which is slow to make new ones: slow uploads must not hold up all else.
        ThreadPool.GetMinThreads(out int workers, out int completions);
        ThreadPool.SetMinThreads(Math.Max(workers, Environment.ProcessorCount + _most), completions);
    }

    /// <summary>Lets a clip in; dispose the pass when it has gone.</summary>
    /// <exception cref="Grpc.Core.RpcException">RESOURCE_EXHAUSTED: too many are in.</exception>
    public Pass Enter()
    {
        if (Interlocked.Increment(ref _present) > _most)
        {
            Interlocked.Decrement(ref _present);
            throw Refusals.Busy("clips");
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
