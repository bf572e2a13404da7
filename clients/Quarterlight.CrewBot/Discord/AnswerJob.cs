using Microsoft.Extensions.Logging;
using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// One question from receipt to answer. The desk starts at once; what it has ready soon is the first answer itself, with the right privacy known. Else the answer
/// is put off in time, announced once when it takes long, and given up before the platform does.
/// </summary>
internal sealed class AnswerJob(
    Interaction interaction, DeskQuestion question, CrewTeam team, Delivery delivery, WorkGate gate, DiscordTransportOptions options, TimeProvider time, InteractionRecord record, ILogger log)
{
    private readonly ChatThread thread = new(team.Conversations, interaction);

    /// <summary>Answers.</summary>
    /// <param name="stopping">Asked for when the process ends before this does.</param>
    public async Task RunAsync(CancellationToken stopping)
    {
        using var limit = new CancellationTokenSource(Until(options.LongestAnswer), time);
        using var called = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, stopping);
        Task<Result> work = Task.Run(() => WorkAsync(called.Token, stopping), CancellationToken.None);
        if (!await IsThereAsync(work, question.OpensForm ? options.FormBy : options.DeferAfter, called.Token).ConfigureAwait(false))
        {
            if (question.OpensForm)
            {
                await called.CancelAsync().ConfigureAwait(false);
                await delivery.AnswerAsync(MessageLayout.Sentence(PlatformSentences.FormTookTooLong), null, InteractionEnd.TookTooLong).ConfigureAwait(false);
                return;
            }

            if (!await delivery.DeferAsync(question.Private).ConfigureAwait(false))
            {
                await called.CancelAsync().ConfigureAwait(false);
                return;
            }

            if (!await IsThereAsync(work, options.ProgressAfter, called.Token).ConfigureAwait(false))
            {
                await delivery.ProgressAsync(question.WithFile ? PlatformSentences.Reading(question.Progress.Share) : PlatformSentences.Working).ConfigureAwait(false);
                await IsThereAsync(work, null, called.Token).ConfigureAwait(false);
            }

            await GiveAsync(Of(work, stopping), deferred: true).ConfigureAwait(false);
            return;
        }

        await GiveAsync(Of(work, stopping), deferred: false).ConfigureAwait(false);
    }

    // True when the work is done, or was called off, so that waiting on is of no use.
    private async Task<bool> IsThereAsync(Task work, TimeSpan? by, CancellationToken cancellation)
    {
        if (!work.IsCompleted)
        {
            using var enough = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            await Task.WhenAny(work, Task.Delay(by is { } moment ? Until(moment) : Timeout.InfiniteTimeSpan, time, enough.Token)).ConfigureAwait(false);
            await enough.CancelAsync().ConfigureAwait(false);
        }

        return work.IsCompleted || cancellation.IsCancellationRequested;
    }

    // A desk that does not listen when it is called off is not waited for.
    private static Result Of(Task<Result> work, CancellationToken stopping) => work.IsCompleted ? work.GetAwaiter().GetResult() : CalledOff(stopping);

    private static Result CalledOff(CancellationToken stopping) => stopping.IsCancellationRequested
        ? new Result(null, PlatformSentences.Restarting, InteractionEnd.Restarting)
        : new Result(null, PlatformSentences.TookTooLong, InteractionEnd.TookTooLong);

    private async Task<Result> WorkAsync(CancellationToken cancellation, CancellationToken stopping)
    {
        record.Planner.CountHere();
        try
        {
            return await gate.WorkAsync(async () =>
            {
                CrewOutput output = await question.AskAsync(team, thread, cancellation).ConfigureAwait(false);
                if (output.Answer is { } answer)
                {
                    await thread.KeepAsync(answer, question.Private || answer.Private, question.FromButton, cancellation).ConfigureAwait(false);
                }

                return new Result(output, "", InteractionEnd.None);
            }, cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            return CalledOff(stopping);
        }
#pragma warning disable CA1031 // Whatever goes wrong in there, the asker gets a word.
        catch (Exception e)
#pragma warning restore CA1031
        {
            string reference = Reference(interaction);
            CrewBotLog.DeskFailed(log, e.GetType().FullName ?? "", reference, e.StackTrace ?? "");
            return new Result(null, PlatformSentences.Failed(reference), InteractionEnd.Failed);
        }
    }

    private async Task GiveAsync(Result result, bool deferred)
    {
        if (result.Output?.Form is { } form)
        {
            if (!deferred && FormMapping.ToPlatform(form) is { } outgoing)
            {
                await delivery.OpenFormAsync(outgoing).ConfigureAwait(false);
            }
            else
            {
                CrewBotLog.FormNotOpened(log, question.What, deferred);
                await delivery.AnswerAsync(MessageLayout.Sentence(PlatformSentences.FormCameLate), null, InteractionEnd.Failed).ConfigureAwait(false);
            }
        }
        else if (result.Output?.Answer is { } answer)
        {
            record.Intent = answer.Intent;
            bool isPrivate = question.Private || answer.Private;
            await delivery.AnswerAsync(
                MessageLayout.Of(answer, isPrivate, interaction.AttachmentSizeLimitBytes, ButtonIdOf),
                () => MessageLayout.WithoutFiles(answer, isPrivate, ButtonIdOf),
                EndOf(answer.Outcome)).ConfigureAwait(false);
        }
        else
        {
            await delivery.AnswerAsync(MessageLayout.Sentence(result.Sentence), null, result.End).ConfigureAwait(false);
        }
    }

    private string? ButtonIdOf(string text) => new ButtonId(thread.Snapshot, Markdown.Plain(text), question.Private).Write();

    private TimeSpan Until(TimeSpan sinceReceipt)
    {
        TimeSpan left = sinceReceipt - record.Elapsed;
        return left > TimeSpan.Zero ? left : TimeSpan.Zero;
    }

    // Enough to find the line in the log; says nothing.
    private static string Reference(Interaction interaction) => ButtonId.SnapshotOf(interaction.Ticket.InteractionId);

    private static InteractionEnd EndOf(CrewOutcome outcome) => outcome switch
    {
        CrewOutcome.Answered => InteractionEnd.Answered,
        CrewOutcome.NotUnderstood => InteractionEnd.NotUnderstood,
        CrewOutcome.Refused => InteractionEnd.Refused,
        _ => InteractionEnd.PlannerUnreachable,
    };

    private sealed record Result(CrewOutput? Output, string Sentence, InteractionEnd End);
}
