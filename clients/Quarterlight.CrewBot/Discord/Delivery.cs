using Microsoft.Extensions.Logging;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// Brings answers to one interaction to the platform: what may be first, what must follow, what to do when it is refused. Used by one flow of control at a time,
/// so that nothing is put off or answered twice.
/// </summary>
internal sealed class Delivery(
    InteractionTicket ticket, IInteractionResponder responder, PendingLedger ledger, DiscordTransportOptions options, TimeProvider time, InteractionRecord record, ILogger log, CancellationToken abandon)
{
    private enum First
    {
        None,
        Deferred,

        // Sent, but no word came back whether it was taken.
        Uncertain,
    }

    private First first;
    private bool firstIsPrivate;

    /// <summary>Puts the answer off. False when nothing can be said any more, and the interaction has ended.</summary>
    public async Task<bool> DeferAsync(bool isPrivate)
    {
        firstIsPrivate = isPrivate;
        try
        {
            ledger.Take(ticket, isPrivate);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            CrewBotLog.LedgerNotWritten(log, e.GetType().Name);
        }

        try
        {
            await responder.DeferAsync(ticket, isPrivate, abandon).ConfigureAwait(false);
            first = First.Deferred;
            record.Taken();
            return true;
        }
        catch (DiscordException e) when (IsAway(e))
        {
            first = First.Uncertain;
            return true;
        }
        catch (DiscordException e)
        {
            Ended(e);
            return false;
        }
    }

    /// <summary>Says how far it is. Not worth a second try.</summary>
    public async Task ProgressAsync(string sentence)
    {
        try
        {
            await responder.EditFirstAsync(ticket, MessageLayout.Sentence(sentence, firstIsPrivate), abandon).ConfigureAwait(false);
        }
        catch (DiscordException)
        {
        }
    }

    /// <summary>Opens a form, which is always the first answer.</summary>
    public async Task OpenFormAsync(OutgoingForm form)
    {
        try
        {
            await responder.OpenFormAsync(ticket, form, abandon).ConfigureAwait(false);
            Given(InteractionEnd.FormOpened);
        }
        catch (DiscordException e) when (e.Fault is DiscordFault.Malformed)
        {
            CrewBotLog.NotShown(log, e.Fault, e.Code);
            await AnswerAsync(MessageLayout.Sentence(PlatformSentences.CouldNotBeShown), null, InteractionEnd.Failed).ConfigureAwait(false);
        }
        catch (DiscordException e)
        {
            Ended(e);
        }
    }

    /// <summary>Gives the answer, in whatever way is left. Afterwards the interaction has ended.</summary>
    /// <param name="message">The answer.</param>
    /// <param name="withoutFiles">The answer when its files are refused; null when it has none.</param>
    /// <param name="end">How it ends when it arrives.</param>
    public async Task AnswerAsync(OutgoingMessage message, Func<OutgoingMessage>? withoutFiles, InteractionEnd end)
    {
        try
        {
            if (first == First.None)
            {
                firstIsPrivate = message.Private;
                try
                {
                    await SendAsync(message, withoutFiles, m => responder.ReplyAsync(ticket, m, abandon)).ConfigureAwait(false);
                    Given(end);
                    return;
                }
                catch (DiscordException e) when (IsAway(e))
                {
                    first = First.Uncertain;
                }
            }

            await AnswerLaterAsync(message, withoutFiles).ConfigureAwait(false);
            Given(end);
        }
        catch (DiscordException e)
        {
            Ended(e);
        }
    }

    private async Task AnswerLaterAsync(OutgoingMessage message, Func<OutgoingMessage>? withoutFiles)
    {
        // From here on a process that starts anew must not put "I was restarted" over an answer.
        ledger.Sending(ticket);
        bool apart = message.Private && !firstIsPrivate;
        bool follows = false;
        for (int failed = 0; ; failed++)
        {
            try
            {
                if (follows)
                {
                    await SendAsync(message, withoutFiles, m => responder.FollowUpAsync(ticket, m, abandon)).ConfigureAwait(false);
                }
                else if (apart)
                {
                    await DeleteFirstAsync().ConfigureAwait(false);
                    follows = true;
                    failed = -1;
                    continue;
                }
                else
                {
                    await SendAsync(message, withoutFiles, m => responder.EditFirstAsync(ticket, m, abandon)).ConfigureAwait(false);
                }

                return;
            }
            catch (DiscordException e) when (e.Fault is DiscordFault.NotFound or DiscordFault.TooLate && first == First.Uncertain && record.Elapsed < options.LastFirstAnswer)
            {
                // The first answer never arrived after all.
                if (await TryReplyAsync(message, withoutFiles).ConfigureAwait(false))
                {
                    return;
                }

                (first, follows) = (First.Deferred, false);
            }
            catch (DiscordException e) when (e.Fault is DiscordFault.NotFound && first == First.Deferred && !follows)
            {
                // Somebody took the first answer away; the asker still waits for this one.
                follows = true;
            }
            catch (DiscordException e) when (IsAway(e) && MayTryAgain(follows, failed))
            {
                await Task.Delay(options.RetryAfter * Math.Pow(2, Math.Max(0, failed)), time, abandon).ConfigureAwait(false);
            }
        }
    }

    // An edit may be repeated for as long as the token lives. A further message that did arrive would stand there twice: one more try, because no answer is worse.
    private bool MayTryAgain(bool follows, int failed) => follows ? failed < 1 : record.Elapsed + (options.RetryAfter * Math.Pow(2, Math.Max(0, failed))) < DiscordLimits.TokenLife;

    private async Task DeleteFirstAsync()
    {
        try
        {
            await responder.DeleteFirstAsync(ticket, abandon).ConfigureAwait(false);
        }
        catch (DiscordException e) when (e.Fault is DiscordFault.NotFound && first == First.Deferred)
        {
            // Gone already.
        }
    }

    // False when it turns out to have been put off before.
    private async Task<bool> TryReplyAsync(OutgoingMessage message, Func<OutgoingMessage>? withoutFiles)
    {
        try
        {
            await SendAsync(message, withoutFiles, m => responder.ReplyAsync(ticket, m, abandon)).ConfigureAwait(false);
            return true;
        }
        catch (DiscordException e) when (e.Fault is DiscordFault.AlreadyAnswered)
        {
            return false;
        }
    }

    // The message; without its files when those are refused; one plain sentence when even that is.
    private async Task SendAsync(OutgoingMessage message, Func<OutgoingMessage>? withoutFiles, Func<OutgoingMessage, Task> send)
    {
        try
        {
            await send(message).ConfigureAwait(false);
            return;
        }
        catch (DiscordException e) when (IsRefusal(e))
        {
            CrewBotLog.NotShown(log, e.Fault, e.Code);
        }

        if (message.Files.Count > 0 && withoutFiles is not null)
        {
            try
            {
                await send(withoutFiles()).ConfigureAwait(false);
                return;
            }
            catch (DiscordException e) when (IsRefusal(e))
            {
                CrewBotLog.NotShown(log, e.Fault, e.Code);
            }
        }

        await send(MessageLayout.Sentence(PlatformSentences.CouldNotBeShown, message.Private)).ConfigureAwait(false);
    }

    private void Given(InteractionEnd end)
    {
        record.Taken();
        record.End = end;
        ledger.Done(ticket);
    }

    private void Ended(DiscordException e)
    {
        record.End = e.Fault switch
        {
            DiscordFault.TooLate => InteractionEnd.TooLate,
            DiscordFault.AlreadyAnswered => InteractionEnd.AlreadyAnswered,
            DiscordFault.TokenExpired => InteractionEnd.TokenExpired,
            _ => InteractionEnd.NotDelivered,
        };
        if (record.End == InteractionEnd.NotDelivered)
        {
            CrewBotLog.NotDelivered(log, e.Fault, e.Code);
        }

        ledger.Done(ticket);
    }

    private static bool IsAway(DiscordException e) => e.Fault is DiscordFault.Unavailable or DiscordFault.RateLimited;

    private static bool IsRefusal(DiscordException e) => e.Fault is DiscordFault.TooLarge or DiscordFault.Forbidden or DiscordFault.Malformed or DiscordFault.Refused;
}
