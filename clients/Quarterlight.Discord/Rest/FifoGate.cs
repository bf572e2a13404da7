namespace Quarterlight.Discord.Rest;

/// <summary>Lets one in at a time, in the order they came. A wait has an end of its own, and whoever gives up waiting is passed over.</summary>
internal sealed class FifoGate(TimeProvider time)
{
    private readonly Lock sync = new();
    private readonly Queue<TaskCompletionSource<bool>> waiting = [];
    private bool taken;

    /// <summary>Waits for the turn.</summary>
    /// <returns>False when the turn did not come in time.</returns>
    /// <exception cref="OperationCanceledException">Given up.</exception>
    public async Task<bool> EnterAsync(TimeSpan longest, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        TaskCompletionSource<bool> turn;
        lock (sync)
        {
            if (!taken)
            {
                taken = true;
                return true;
            }

            turn = new(TaskCreationOptions.RunContinuationsAsynchronously);
            waiting.Enqueue(turn);
        }

        // Whichever comes first decides, and only one of them can: a turn that was handed over is never lost to a late cancellation.
        using CancellationTokenRegistration given = cancellation.UnsafeRegister(_ => turn.TrySetCanceled(cancellation), null);
        using ITimer end = time.CreateTimer(_ => turn.TrySetResult(false), null, longest > TimeSpan.Zero ? longest : TimeSpan.Zero, Timeout.InfiniteTimeSpan);
        return await turn.Task.ConfigureAwait(false);
    }

    /// <summary>Hands the turn to the next.</summary>
    public void Exit()
    {
        lock (sync)
        {
            while (waiting.TryDequeue(out TaskCompletionSource<bool>? next))
            {
                if (next.TrySetResult(true))
                {
                    return;
                }
            }

            taken = false;
        }
    }
}
