using Microsoft.Extensions.Logging;

namespace Quarterlight.Discord.Gateway;

/// <summary>
/// Interactions over the gateway. One supervisor loop owns the connection of the moment: whatever ends it, the loop closes it, waits, and goes on with
/// the session or starts a new one. It stops only when asked to, or for a fault that trying again would not mend.
/// </summary>
public sealed class GatewaySource : IInteractionSource, IAsyncDisposable
{
    private const string Query = "?v=10&encoding=json";

    private readonly GatewayPlace place;
    private readonly Func<IGatewaySocket> openSocket;
    private readonly CancellationTokenSource disposing = new();
    private readonly TaskCompletionSource finished = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private Uri? firstAddress;
    private int running;

    /// <summary>A source that is not connected yet.</summary>
    /// <param name="options">How the gateway is spoken to.</param>
    /// <param name="findGateway">Asks for the gateway's address and how many sessions may be started; asked before every new session.</param>
    /// <param name="ledger">Keeps when the bot identified.</param>
    /// <param name="openSocket">Makes a new socket for every connection.</param>
    /// <param name="time">Time.</param>
    /// <param name="random">Randomness, from 0 up to but not including 1; called by one thread at a time.</param>
    /// <param name="logger">Log.</param>
    public GatewaySource(
        GatewayOptions options, Func<CancellationToken, Task<GatewayInfo>> findGateway, IIdentifyLedger ledger, Func<IGatewaySocket> openSocket, TimeProvider time,
        Func<double> random, ILogger<GatewaySource> logger)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentException.ThrowIfNullOrWhiteSpace(options.Token);
        place = new GatewayPlace(options, new IdentifyAllowance(options, findGateway, ledger, time, random, logger), time, random, logger);
        this.openSocket = openSocket;
    }

    /// <inheritdoc/>
    public SourceHealth Health => place.Health;

    /// <inheritdoc/>
    /// <exception cref="InvalidOperationException">It was run before.</exception>
    public async Task RunAsync(Func<Interaction, bool> receive, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(receive);
        if (Interlocked.Exchange(ref running, 1) != 0)
        {
            throw new InvalidOperationException("A source runs once.");
        }

        using IDisposable watch = DiscordTelemetry.Watch(() => place.SinceLastSign);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation, disposing.Token);
        try
        {
            await SuperviseAsync(receive, stop.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            place.Logger.Closed();
        }
        catch (DiscordException fault)
        {
            place.Logger.Stopped(fault.Message);
            throw;
        }
        finally
        {
            place.Does("stopped");
            finished.TrySetResult();
        }
    }

    /// <summary>Stops it and waits for the connection to be closed, but no longer than closing may take: safe even from within a handler.</summary>
    public async ValueTask DisposeAsync()
    {
        await disposing.CancelAsync().ConfigureAwait(false);
        if (Volatile.Read(ref running) != 0)
        {
            try
            {
                await finished.Task.WaitAsync(place.Options.CloseTimeout * 3, place.Time).ConfigureAwait(false);
            }
            catch (TimeoutException)
            {
                place.Logger.ConnectionCut();
            }
        }
    }

    private async Task SuperviseAsync(Func<Interaction, bool> receive, CancellationToken stop)
    {
        var backOff = new BackOff(place.Options.FirstBackOff, place.Options.MostBackOff, place.Random);
        GatewaySession? session = null;
        int failedResumes = 0;
        while (true)
        {
            stop.ThrowIfCancellationRequested();
            Uri? address = session is null ? await FindAsync(backOff, stop).ConfigureAwait(false) : session.ResumeAddress ?? firstAddress;
            if (address is null)
            {
                continue;
            }

            place.Does(session is null ? "connecting" : "resuming");
            using var attempt = new GatewayAttempt(place, openSocket(), session, receive);
            AttemptResult result = await attempt.RunAsync(WithQuery(address), stop).ConfigureAwait(false);
            stop.ThrowIfCancellationRequested();
            if (result.Next == NextStep.Stop)
            {
                throw CloseCodes.Fault(result.CloseCode!.Value);
            }

            failedResumes = result.ReadyFor is not null || session is null ? 0 : failedResumes + 1;
            session = result.Next == NextStep.Resume && failedResumes < place.Options.MostResumes ? result.Session : null;
            if (result.ReadyFor >= place.Options.StableAfter)
            {
                backOff.Reset();
            }

            await PauseAsync(result, session is not null, backOff.Next(), stop).ConfigureAwait(false);
        }
    }

    private Task PauseAsync(AttemptResult result, bool resumes, TimeSpan wait, CancellationToken stop)
    {
        if (result.End is AttemptEnd.SessionGone or AttemptEnd.SessionRefusedForNow)
        {
            // One to five seconds, as the platform's maintainers ask for.
            TimeSpan calm = TimeSpan.FromSeconds(1 + (4 * place.Random()));
            wait = wait > calm ? wait : calm;
        }

        place.Does("waiting to connect again");
        place.Logger.ConnectionEnded(result.End.ToString(), result.CloseCode, resumes ? "resume" : "identify", wait.TotalSeconds);
        DiscordTelemetry.Reconnects.Add(1, new KeyValuePair<string, object?>("reason", result.End.ToString()));
        return Task.Delay(wait, place.Time, stop);
    }

    // Null when it could not be found this time, after a wait.
    private async Task<Uri?> FindAsync(BackOff backOff, CancellationToken stop)
    {
        place.Does("looking for the gateway");
        try
        {
            GatewayInfo info = await place.Allowance.WaitAsync(() => place.Does("waiting until a new session is allowed"), stop).ConfigureAwait(false);
            return firstAddress = Checked(info.Address);
        }
        catch (Exception failed) when (!stop.IsCancellationRequested && !IsFinal(failed))
        {
            TimeSpan wait = backOff.Next();
            place.Logger.FindFailed(failed.GetType().Name, wait.TotalSeconds);
            await Task.Delay(wait, place.Time, stop).ConfigureAwait(false);
            return null;
        }
    }

    private static bool IsFinal(Exception failed) => failed is DiscordException { Fault: DiscordFault.BadToken or DiscordFault.BadIdentify or DiscordFault.Refused };

    // The token goes to this address: in the clear only to this very machine.
    private static Uri Checked(Uri address) => IsSafe(address)
        ? address
        : throw new DiscordException(DiscordFault.Refused, "The gateway's address is not encrypted (wss), so the bot does not send its token there.");

    private static bool IsSafe(Uri address) => address.IsAbsoluteUri && (address.Scheme == Uri.UriSchemeWss || (address.Scheme == Uri.UriSchemeWs && address.IsLoopback));

    private Uri WithQuery(Uri address) => new((IsSafe(address) ? address : firstAddress!).GetLeftPart(UriPartial.Path) + Query);
}
