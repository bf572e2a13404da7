namespace Quarterlight.CrewBot.Discord;

/// <summary>A number of places to work, and a number of places to wait for one.</summary>
internal sealed class WorkGate(int atOnce, int waiting) : IDisposable
{
    private readonly SemaphoreSlim places = new(atOnce);
    private int inside;

    /// <summary>Waiting at the moment.</summary>
    public int Waiting => Math.Max(0, Volatile.Read(ref inside) - atOnce);

    /// <summary>Takes a place to wait or to work; false when there is none. Whoever got one gives it back with <see cref="Leave"/>.</summary>
    public bool TryCome()
    {
        if (Interlocked.Increment(ref inside) <= atOnce + waiting)
        {
            return true;
        }

        Interlocked.Decrement(ref inside);
        return false;
    }

    /// <summary>Gives the place back.</summary>
    public void Leave() => Interlocked.Decrement(ref inside);

    /// <summary>Works when it is its turn.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<T> WorkAsync<T>(Func<Task<T>> work, CancellationToken cancellation)
    {
        await places.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            return await work().ConfigureAwait(false);
        }
        finally
        {
            places.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => places.Dispose();
}
