using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.Extensions.Logging;
using Quarterlight.Crew.Commands;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>What the transport works with.</summary>
internal sealed record DiscordTransportParts
{
    public required IInteractionSource Source { get; init; }

    public required IInteractionResponder Responder { get; init; }

    public required ICrewTeams Teams { get; init; }

    /// <summary>The catalogue.</summary>
    public required IReadOnlyList<CrewCommand> Commands { get; init; }

    public required PendingLedger Ledger { get; init; }

    public required UserHash Users { get; init; }

    public required CrewBotMeters Meters { get; init; }

    public required ILogger Log { get; init; }

    /// <summary>The clock of the source: timestamps of interactions are its.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;
}

/// <summary>
/// The crew on Discord: takes interactions, hands them to the team's desk, lays the answers out and delivers them. It builds no text of answers but sentences
/// about the platform itself, and keeps nothing of conversations. Nothing it took is lost without a word, nothing is answered twice.
/// </summary>
internal sealed class DiscordTransport : IDisposable
{
    private const int MostUsers = 10_000;
    private const int MostRecent = 50_000;

    private readonly DiscordTransportParts parts;
    private readonly DiscordTransportOptions options;
    private readonly CommandCalls calls;
    private readonly RecentInteractions recent;
    private readonly TokenBuckets users;
    private readonly TokenBuckets teams;
    private readonly WorkGate questions;
    private readonly WorkGate files;
    private readonly ConcurrentDictionary<ulong, Task> underWay = new();

    // Asked for when answers must come to an end; then when even telling so must.
    private readonly CancellationTokenSource ending = new();
    private readonly CancellationTokenSource abandoning = new();
    private volatile bool stopping;

    /// <summary>A transport; nothing runs yet.</summary>
    public DiscordTransport(DiscordTransportParts parts, DiscordTransportOptions options)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(options);
        (this.parts, this.options) = (parts, options);
        calls = new CommandCalls(parts.Responder);
        recent = new RecentInteractions(parts.Time, MostRecent);
        users = new TokenBuckets(options.UserRate, parts.Time, MostUsers);
        teams = new TokenBuckets(options.TeamRate, parts.Time, MostUsers);
        questions = new WorkGate(options.QuestionsAtOnce, options.QuestionsWaiting);
        files = new WorkGate(options.FilesAtOnce, options.FilesWaiting);
        parts.Meters.Watch(() => Waiting, () => underWay.Count);
    }

    /// <summary>Questions waiting for their turn.</summary>
    internal int Waiting => questions.Waiting + files.Waiting;

    /// <summary>Serves until the cancellation is asked for; then finishes what is under way, or tells the askers, and ends.</summary>
    /// <exception cref="DiscordException">The way in cannot go on: bad token, bad intents.</exception>
    public async Task RunAsync(CancellationToken cancellation)
    {
        Task recovery = new LedgerRecovery(parts.Ledger, parts.Responder, parts.Meters, parts.Log).RunAsync(abandoning.Token);
        try
        {
            using CancellationTokenRegistration stop = cancellation.Register(() => stopping = true);
            await parts.Source.RunAsync(Receive, cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
        }
        finally
        {
            stopping = true;
            await StopAsync(recovery).ConfigureAwait(false);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        ending.Dispose();
        abandoning.Dispose();
        questions.Dispose();
        files.Dispose();
    }

    // Returns at once: the source reads on meanwhile, and heartbeats must not wait.
    internal bool Receive(Interaction interaction)
    {
        if (interaction.Kind == InteractionKind.Ping)
        {
            return true;
        }

        if (underWay.Count >= options.MostUnderWay)
        {
            parts.Meters.NotTaken();
            return false;
        }

        if (!recent.Take(interaction.Ticket.InteractionId))
        {
            parts.Meters.Duplicate();
            return true;
        }

        var began = new TaskCompletionSource();
        Task job = Task.Run(async () =>
        {
            await began.Task.ConfigureAwait(false);
            await HandleAsync(interaction).ConfigureAwait(false);
            underWay.TryRemove(interaction.Ticket.InteractionId, out _);
        });
        underWay[interaction.Ticket.InteractionId] = job;
        began.SetResult();
        return true;
    }

    private async Task HandleAsync(Interaction interaction)
    {
        var record = new InteractionRecord(parts.Time, interaction.ReceivedTimestamp);
        string kind = interaction.Kind.ToString();
        using Activity? activity = parts.Meters.Begin(kind);
        try
        {
            if (interaction.Kind == InteractionKind.Autocomplete)
            {
                await new ChoiceOffer(parts, options).OfferAsync(interaction, record, ending.Token).ConfigureAwait(false);
            }
            else
            {
                await AnswerAsync(interaction, record).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException) when (abandoning.IsCancellationRequested)
        {
            record.End = InteractionEnd.LeftForRestart;
        }
#pragma warning disable CA1031 // One interaction's trouble must not end the others'.
        catch (Exception e)
#pragma warning restore CA1031
        {
            record.End = InteractionEnd.Failed;
            CrewBotLog.TransportFailed(parts.Log, e.GetType().FullName ?? "", ButtonId.SnapshotOf(interaction.Ticket.InteractionId), e.StackTrace ?? "");
        }

        parts.Meters.Ended(kind, record, activity);
        if (interaction.Kind != InteractionKind.Autocomplete)
        {
            CrewBotLog.Interaction(
                parts.Log, record.What, record.Team, parts.Users.Of(interaction.UserId), record.End, record.Intent,
                record.FirstAnswer?.TotalMilliseconds ?? -1, record.Elapsed.TotalMilliseconds, record.Planner.Total.TotalMilliseconds);
        }
    }

    private async Task AnswerAsync(Interaction interaction, InteractionRecord record)
    {
        var delivery = new Delivery(interaction.Ticket, parts.Responder, parts.Ledger, options, parts.Time, record, parts.Log, abandoning.Token);
        Task Tell(string sentence, InteractionEnd end) => delivery.AnswerAsync(MessageLayout.Sentence(sentence), null, end);

        if (stopping)
        {
            await Tell(PlatformSentences.Restarting, InteractionEnd.Restarting).ConfigureAwait(false);
            return;
        }

        if (interaction.GuildId is not { } guild)
        {
            await Tell(PlatformSentences.OnlyInServers, InteractionEnd.OutsideServer).ConfigureAwait(false);
            return;
        }

        CrewTeam team = parts.Teams.For(guild);
        record.Team = team.Id;
        if (DeskQuestion.Read(interaction, parts.Commands, calls, out string sentence) is not { } question)
        {
            await Tell(sentence, InteractionEnd.Outdated).ConfigureAwait(false);
            return;
        }

        (record.What, record.WithFile) = (question.What, question.WithFile);
        if (!question.Written && TooOften(interaction.UserId, guild) is { } told)
        {
            await Tell(told, InteractionEnd.Limited).ConfigureAwait(false);
            return;
        }

        WorkGate gate = question.WithFile ? files : questions;
        if (!gate.TryCome())
        {
            await Tell(PlatformSentences.Busy, InteractionEnd.Busy).ConfigureAwait(false);
            return;
        }

        try
        {
            await new AnswerJob(interaction, question, team, delivery, gate, options, parts.Time, record, parts.Log).RunAsync(ending.Token).ConfigureAwait(false);
        }
        finally
        {
            gate.Leave();
        }
    }

    // What to say to somebody who asks too often; null when not.
    private string? TooOften(ulong user, ulong guild)
    {
        if (users.Take(user) is { Ticks: > 0 } wait)
        {
            return PlatformSentences.TooOften(wait, wholeTeam: false);
        }

        if (teams.Take(guild) is { Ticks: > 0 } teamWait)
        {
            users.GiveBack(user);
            return PlatformSentences.TooOften(teamWait, wholeTeam: true);
        }

        return null;
    }

    private async Task StopAsync(Task recovery)
    {
        CrewBotLog.Stopping(parts.Log, underWay.Count);
        if (!await EndedWithinAsync(options.FinishWithin).ConfigureAwait(false))
        {
            await ending.CancelAsync().ConfigureAwait(false);
            if (!await EndedWithinAsync(options.TellWithin).ConfigureAwait(false))
            {
                CrewBotLog.LeftOpen(parts.Log, underWay.Count);
            }
        }

        await abandoning.CancelAsync().ConfigureAwait(false);
        await EndedWithinAsync(TimeSpan.FromSeconds(1)).ConfigureAwait(false);
        await recovery.ConfigureAwait(false);
    }

    private async Task<bool> EndedWithinAsync(TimeSpan time)
    {
        using var enough = new CancellationTokenSource();
        Task all = Task.WhenAll(underWay.Values);
        await Task.WhenAny(all, Task.Delay(time, parts.Time, enough.Token)).ConfigureAwait(false);
        await enough.CancelAsync().ConfigureAwait(false);
        return underWay.IsEmpty || all.IsCompleted;
    }
}
