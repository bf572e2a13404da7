namespace Quarterlight.Discord.Gateway;

/// <summary>The one way out of a connection: one frame at a time, within the platform's limits, each with a time-out.</summary>
internal sealed class FrameSender(IGatewaySocket socket, TimeProvider time, TimeSpan timeout) : IDisposable
{
    /// <summary>Largest frame the platform takes, bytes (Gateway, Sending Events).</summary>
    public const int MostBytes = 4096;

    private readonly FrameBudget budget = new(time);
    private readonly SemaphoreSlim turn = new(1);
    private Task leaving = Task.CompletedTask;

    /// <summary>Sends a frame of our own, when the limit allows.</summary>
    /// <exception cref="TimeoutException">It did not leave in time.</exception>
    public Task SendAsync(ReadOnlyMemory<byte> frame, CancellationToken stop) => SendAsync(frame, ours: true, stop);

    /// <summary>Sends a frame the platform asked for, or leaves it out when it asks too often.</summary>
    /// <exception cref="TimeoutException">It did not leave in time.</exception>
    public Task AnswerAsync(ReadOnlyMemory<byte> frame, CancellationToken stop) => SendAsync(frame, ours: false, stop);

    /// <summary>Sends the close frame, unless a stuck frame is in its way.</summary>
    public async Task CloseAsync(int code, CancellationToken late)
    {
        await turn.WaitAsync(late).ConfigureAwait(false);
        try
        {
            await socket.CloseAsync(code, late).WaitAsync(late).ConfigureAwait(false);
        }
        finally
        {
            turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    private async Task SendAsync(ReadOnlyMemory<byte> frame, bool ours, CancellationToken stop)
    {
        if (frame.Length > MostBytes)
        {
            throw new ArgumentException($"A frame may hold {MostBytes} bytes.", nameof(frame));
        }

        await turn.WaitAsync(stop).ConfigureAwait(false);
        try
        {
            while (budget.Wait(ours) is { Ticks: > 0 } wait)
            {
                if (!ours)
                {
                    return;
                }

                await Task.Delay(wait, time, stop).ConfigureAwait(false);
            }

            budget.Take();

            // Not the stop: a frame broken off in the middle would break the connection that is about to be closed in order.
            using var late = new CancellationTokenSource(timeout, time);
            try
            {
                // A frame called off may still be on its way out of the socket, which takes one at a time.
                await leaving.WaitAsync(late.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
                late.Token.ThrowIfCancellationRequested();
                leaving = socket.SendAsync(frame, late.Token).AsTask();
                await leaving.WaitAsync(late.Token).ConfigureAwait(false);
            }
            catch (OperationCanceledException) when (late.IsCancellationRequested)
            {
                throw new TimeoutException("A frame did not leave in time.");
            }
        }
        finally
        {
            turn.Release();
        }
    }
}
