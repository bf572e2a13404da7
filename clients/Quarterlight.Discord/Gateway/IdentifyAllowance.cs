using Microsoft.Extensions.Logging;

namespace Quarterlight.Discord.Gateway;

/// <summary>
/// Says when the bot may identify. A thousand in a day and the platform resets the token, so there are three fences: the platform's own count with a
/// reserve, our own count over restarts, and a distance between any two.
/// </summary>
internal sealed class IdentifyAllowance(
    GatewayOptions options, Func<CancellationToken, Task<GatewayInfo>> find, IIdentifyLedger ledger, TimeProvider time, Func<double> random, ILogger logger)
{
    private static readonly TimeSpan Day = TimeSpan.FromHours(24);

    // Long waits are cut into pieces, so that an allowance given back early is seen.
    private static readonly TimeSpan MostWait = TimeSpan.FromHours(1);
    private static readonly TimeSpan WaitWithoutReset = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan Spread = TimeSpan.FromSeconds(5);

    private readonly List<DateTimeOffset> identifies = [];
    private bool loaded;
    private long? lastSent;

    /// <summary>Waits until the bot may identify.</summary>
    /// <param name="waiting">Told before a wait.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>Where to connect.</returns>
    public async Task<GatewayInfo> WaitAsync(Action waiting, CancellationToken cancellation)
    {
        await LoadAsync(cancellation).ConfigureAwait(false);
        while (true)
        {
            if (OwnWait() is { Ticks: > 0 } own)
            {
                await PauseAsync(own, waiting, cancellation).ConfigureAwait(false);
                continue;
            }

            GatewayInfo info = await FindAsync(cancellation).ConfigureAwait(false);
            if (info.RemainingIdentifies > Math.Min(options.IdentifyReserve, info.TotalIdentifies / 10))
            {
                return info;
            }

            TimeSpan reset = info.ResetAfter > TimeSpan.Zero ? info.ResetAfter : WaitWithoutReset;
            await PauseAsync(reset + (Spread * random()), waiting, cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>Counts one that is about to be sent: before, so that a crash in between counts one too many and never one too few.</summary>
    public async Task CountAsync(CancellationToken cancellation)
    {
        identifies.Add(time.GetUtcNow());
        try
        {
            await ledger.WriteAsync([.. identifies], cancellation).ConfigureAwait(false);
        }
        catch (Exception failed) when (failed is not OperationCanceledException)
        {
            logger.LedgerFailed(failed.GetType().Name);
        }
    }

    /// <summary>Notes that one has left.</summary>
    public void Sent() => lastSent = time.GetTimestamp();

    private async Task<GatewayInfo> FindAsync(CancellationToken cancellation)
    {
        using var late = new CancellationTokenSource(options.FindTimeout, time);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(late.Token, cancellation);
        return await find(both.Token).WaitAsync(both.Token).ConfigureAwait(false);
    }

    private async Task LoadAsync(CancellationToken cancellation)
    {
        if (loaded)
        {
            return;
        }

        try
        {
            identifies.AddRange((await ledger.ReadAsync(cancellation).ConfigureAwait(false)).Order());
        }
        catch (Exception failed) when (failed is not OperationCanceledException)
        {
            // The platform's own count still stands guard.
            logger.LedgerFailed(failed.GetType().Name);
        }

        loaded = true;
    }

    private TimeSpan OwnWait()
    {
        DateTimeOffset now = time.GetUtcNow();

        // A clock that was put back leaves times that are yet to come: they count as now, and so are gone in a day.
        for (int i = 0; i < identifies.Count; i++)
        {
            identifies[i] = identifies[i] > now ? now : identifies[i];
        }

        identifies.RemoveAll(i => now - i >= Day);
        TimeSpan day = identifies.Count < options.MostIdentifiesPerDay ? TimeSpan.Zero : identifies[^options.MostIdentifiesPerDay] + Day - now;
        TimeSpan since = lastSent is { } sent ? time.GetElapsedTime(sent) : identifies is [.., var last] ? now - last : options.IdentifySpacing;
        TimeSpan spacing = options.IdentifySpacing - since;
        return day > spacing ? day : spacing;
    }

    private Task PauseAsync(TimeSpan wait, Action waiting, CancellationToken cancellation)
    {
        waiting();
        TimeSpan bounded = wait < MostWait ? wait : MostWait;
        if (bounded > options.IdentifySpacing)
        {
            logger.IdentifyHeldBack(bounded.TotalSeconds);
        }

        return Task.Delay(bounded, time, cancellation);
    }
}
