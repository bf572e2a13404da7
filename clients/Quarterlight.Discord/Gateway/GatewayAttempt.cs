using System.Diagnostics;

namespace Quarterlight.Discord.Gateway;

/// <summary>
/// One connection from opening to closing. A receive loop that only parses and hands on, a heart on its own timer, and whatever ends first ends
/// both. Used once.
/// </summary>
internal sealed partial class GatewayAttempt : IDisposable
{
    private readonly GatewayPlace place;
    private readonly IGatewaySocket socket;
    private readonly FrameSender sender;
    private readonly Func<Interaction, bool> receive;
    private readonly GatewaySession? resuming;
    private readonly TaskCompletionSource<(AttemptEnd End, int? Code)> ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly CancellationTokenSource stopBeating = new();
    private readonly CancellationTokenSource stopReceiving = new();
    private GatewayHeart? heart;
    private Task beating = Task.CompletedTask;
    private ITimer? phase;
    private Activity? opening;
    private GatewaySession? session;
    private long? readySince;
    private long sequence;
    private int unreadable;

    /// <summary>A connection that goes on with a session or starts one.</summary>
    public GatewayAttempt(GatewayPlace place, IGatewaySocket socket, GatewaySession? resuming, Func<Interaction, bool> receive)
    {
        this.place = place;
        this.socket = socket;
        this.resuming = resuming;
        this.receive = receive;
        session = resuming;
        sequence = resuming?.Sequence ?? -1;
        sender = new FrameSender(socket, place.Time, place.Options.SendTimeout);
    }

    private long? Sequence => Interlocked.Read(ref sequence) is >= 0 and var reached ? reached : null;

    /// <summary>Runs it to its end and leaves nothing behind.</summary>
    public async Task<AttemptResult> RunAsync(Uri address, CancellationToken cancellation)
    {
        opening = DiscordTelemetry.Activities.StartActivity("gateway.connect", ActivityKind.Client);
        opening?.SetTag("resume", resuming is not null);

        // What arrives later is no part of the opening.
        Activity.Current = null;
        CancellationTokenRegistration registration = cancellation.Register(() => End(AttemptEnd.Cancelled));
        await using (registration.ConfigureAwait(false))
        {
            Task receiving = Task.CompletedTask;
            if (await OpenAsync(address, cancellation).ConfigureAwait(false))
            {
                Await(AttemptEnd.HelloLate, place.Options.HelloTimeout);
                receiving = Task.Run(ReceiveAsync, CancellationToken.None);
            }
            else
            {
                End(AttemptEnd.NotOpened);
            }

            (AttemptEnd end, int? code) = await ended.Task.ConfigureAwait(false);
            TimeSpan? readyFor = readySince is { } since ? place.Time.GetElapsedTime(since) : null;
            place.NotReady();
            opening?.SetTag("end", end.ToString());
            opening?.Dispose();
            Interlocked.Exchange(ref phase, null)?.Dispose();
            await CloseAsync(end, receiving).ConfigureAwait(false);
            return new AttemptResult(end, code, end == AttemptEnd.SessionGone ? null : session?.At(Sequence), readyFor);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        phase?.Dispose();
        socket.Dispose();
        sender.Dispose();
        stopBeating.Dispose();
        stopReceiving.Dispose();
    }

    private void End(AttemptEnd end, int? code = null) => ended.TrySetResult((end, code));

    // The one time-out of the moment: for the first frame, then for the session.
    private void Await(AttemptEnd late, TimeSpan timeout)
    {
        ITimer next = place.Time.CreateTimer(_ => End(late), null, timeout, Timeout.InfiniteTimeSpan);
        Interlocked.Exchange(ref phase, next)?.Dispose();
    }

    private async Task<bool> OpenAsync(Uri address, CancellationToken cancellation)
    {
        using var late = new CancellationTokenSource(place.Options.ConnectTimeout, place.Time);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(late.Token, cancellation);
        try
        {
            await socket.ConnectAsync(address, both.Token).WaitAsync(both.Token).ConfigureAwait(false);
            return true;
        }
        catch (Exception)
        {
            // Whatever it was, there is no connection; the supervisor says so and tries again.
            return false;
        }
    }

    private async Task ReceiveAsync()
    {
        try
        {
            using var buffer = new FrameBuffer(place.Options.MostFrameBytes);
            while (true)
            {
                FrameBuffer.Frame frame = await buffer.ReadAsync(socket, stopReceiving.Token).ConfigureAwait(false);
                if (frame.Closed)
                {
                    End(AttemptEnd.Closed, frame.CloseCode);
                    return;
                }

                // Once it is over only the close frame is of interest: what is not counted now is sent again after a resume.
                if (!ended.Task.IsCompleted)
                {
                    await HandleAsync(frame.Utf8).ConfigureAwait(false);
                }
            }
        }
        catch (Exception)
        {
            // The connection broke, or was cut at the end of closing.
            End(AttemptEnd.Broken);
        }
    }

    private async Task BeatAsync(GatewayHeart beats)
    {
        try
        {
            await beats.BeatAsync(stopBeating.Token).ConfigureAwait(false);
            End(AttemptEnd.NoAcknowledgement);
        }
        catch (OperationCanceledException)
        {
            // The connection is being closed.
        }
        catch (Exception)
        {
            End(AttemptEnd.Broken);
        }
    }

    // Every step has a time-out, and cutting the connection is the last of them: nothing here can wait for ever.
    private async Task CloseAsync(AttemptEnd end, Task receiving)
    {
        await stopBeating.CancelAsync().ConfigureAwait(false);
        if (end is not AttemptEnd.NotOpened and not AttemptEnd.Broken)
        {
            using var late = new CancellationTokenSource(place.Options.CloseTimeout, place.Time);
            try
            {
                await sender.CloseAsync(end == AttemptEnd.Cancelled ? CloseCodes.Done : CloseCodes.WillResume, late.Token).ConfigureAwait(false);
                await receiving.WaitAsync(late.Token).ConfigureAwait(false);
            }
            catch (Exception)
            {
                place.Logger.ConnectionCut();
            }
        }

        socket.Abort();
        await stopReceiving.CancelAsync().ConfigureAwait(false);
        Task all = Task.WhenAll(receiving, beating);
        try
        {
            await all.WaitAsync(place.Options.CloseTimeout, place.Time).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            // Somebody's handler holds the receive loop. It is left behind: it owns nothing but its buffer, and ends when it is let go.
        }
    }
}
