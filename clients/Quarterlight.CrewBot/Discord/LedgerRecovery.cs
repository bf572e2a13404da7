using Microsoft.Extensions.Logging;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Tells those whose answer the process before left open.</summary>
internal sealed class LedgerRecovery(PendingLedger ledger, IInteractionResponder responder, CrewBotMeters meters, ILogger log)
{
    /// <summary>Tells each of them once. What is open is read before the first wait, so that nothing newly taken is mistaken for it.</summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        IReadOnlyList<PendingAnswer> open = ledger.Recover();
        int told = 0;
        foreach (PendingAnswer pending in open)
        {
            try
            {
                told += await TellAsync(pending, cancellation).ConfigureAwait(false) ? 1 : 0;
                ledger.Done(pending.Ticket);
                meters.Recovered();
            }
            catch (DiscordException e) when (e.Fault is not (DiscordFault.Unavailable or DiscordFault.RateLimited))
            {
                ledger.Done(pending.Ticket);
            }
            catch (Exception e) when (e is DiscordException or OperationCanceledException)
            {
                // Kept for the next start, as long as its token lives.
            }
        }

        if (open.Count > 0)
        {
            CrewBotLog.Recovered(log, open.Count, told);
        }
    }

    private async Task<bool> TellAsync(PendingAnswer pending, CancellationToken cancellation)
    {
        if (!pending.Sending)
        {
            try
            {
                await responder.EditFirstAsync(pending.Ticket, MessageLayout.Sentence(PlatformSentences.RestartedMeanwhile, pending.Private), cancellation).ConfigureAwait(false);
                return true;
            }
            catch (DiscordException e) when (e.Fault is DiscordFault.NotFound or DiscordFault.TooLate or DiscordFault.TokenExpired)
            {
                // It was never put off, or somebody took it away: nobody waits.
                return false;
            }
        }

        // The answer may stand there: a word beside it harms nothing, one in its place would.
        await responder.FollowUpAsync(pending.Ticket, MessageLayout.Sentence(PlatformSentences.RestartedWhileSending), cancellation).ConfigureAwait(false);
        return true;
    }
}
