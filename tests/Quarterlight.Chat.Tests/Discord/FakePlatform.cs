using System.Collections.Concurrent;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The way in, opened and fed by a test.</summary>
internal sealed class FakeSource : IInteractionSource
{
    private readonly TaskCompletionSource<Func<Interaction, bool>> running = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public SourceHealth Health { get; set; } = new(true, "connected", TimeSpan.Zero);

    public DiscordException? Fails { get; init; }

    public Task<Func<Interaction, bool>> Running => running.Task;

    public async Task RunAsync(Func<Interaction, bool> receive, CancellationToken cancellation)
    {
        if (Fails is { } failure)
        {
            throw failure;
        }

        running.SetResult(receive);
        await Task.Delay(Timeout.Infinite, cancellation).ContinueWith(_ => { }, TaskScheduler.Default);
    }
}

internal enum Sent
{
    Defer,
    Reply,
    Offer,
    Form,
    Edit,
    Delete,
    FollowUp,
}

/// <summary>One call the transport made, whether or not the platform then did as asked.</summary>
internal sealed record SentCall(Sent What, ulong Interaction, OutgoingMessage? Message = null, bool Private = false, OutgoingForm? Form = null, IReadOnlyList<OutgoingChoice>? Choices = null);

/// <summary>
/// The way out, held to the platform's rules: one first answer, edits only of what is there. Faults are planned by call; a fault may strike before or after
/// the platform did as asked.
/// </summary>
internal sealed class FakePlatform : IInteractionResponder
{
    private readonly Lock gate = new();
    private readonly List<SentCall> calls = [];
    private readonly Dictionary<ulong, OutgoingMessage?> firsts = [];
    private readonly Dictionary<ulong, bool> firstIsPrivate = [];
    private readonly Dictionary<ulong, List<OutgoingMessage>> later = [];
    private readonly ConcurrentQueue<(Sent What, DiscordFault Fault, bool Done)> faults = new();

    public Func<DiscordAttachment, Stream> Open { get; set; } = _ => throw new DiscordException(DiscordFault.NotFound, "no such file");

    /// <summary>Calls wait here before they are done.</summary>
    public Func<Sent, CancellationToken, Task> Before { get; set; } = (_, _) => Task.CompletedTask;

    public IReadOnlyList<SentCall> Calls
    {
        get
        {
            lock (gate)
            {
                return [.. calls];
            }
        }
    }

    public IReadOnlyList<SentCall> CallsOf(ulong interaction) => [.. Calls.Where(c => c.Interaction == interaction)];

    /// <summary>What stands in the chat as answer: the first one, if it is no longer "thinking", and all others, with who may see them.</summary>
    public IReadOnlyList<OutgoingMessage> Shown(ulong interaction)
    {
        lock (gate)
        {
            var shown = new List<OutgoingMessage>();
            if (firsts.TryGetValue(interaction, out OutgoingMessage? first) && first is not null)
            {
                shown.Add(first with { Private = firstIsPrivate[interaction] });
            }

            shown.AddRange(later.GetValueOrDefault(interaction) ?? []);
            return shown;
        }
    }

    /// <summary>True while "thinking" stands there.</summary>
    public bool Thinks(ulong interaction)
    {
        lock (gate)
        {
            return firsts.TryGetValue(interaction, out OutgoingMessage? first) && first is null;
        }
    }

    /// <summary>The next call of this kind fails.</summary>
    /// <param name="what">Kind of call.</param>
    /// <param name="fault">How.</param>
    /// <param name="done">True when the platform does as asked all the same, and only the word of it is lost.</param>
    public void Fail(Sent what, DiscordFault fault, bool done = false) => faults.Enqueue((what, fault, done));

    public Task DeferAsync(InteractionTicket ticket, bool isPrivate, CancellationToken cancellation) =>
        DoAsync(new SentCall(Sent.Defer, ticket.InteractionId, Private: isPrivate), () => First(ticket, null, isPrivate), cancellation);

    public Task ReplyAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation) =>
        DoAsync(new SentCall(Sent.Reply, ticket.InteractionId, message, message.Private), () => First(ticket, message, message.Private), cancellation);

    public Task OfferAsync(InteractionTicket ticket, IReadOnlyList<OutgoingChoice> choices, CancellationToken cancellation) =>
        DoAsync(new SentCall(Sent.Offer, ticket.InteractionId, Choices: choices), () => First(ticket, null, true), cancellation);

    public Task OpenFormAsync(InteractionTicket ticket, OutgoingForm form, CancellationToken cancellation) =>
        DoAsync(new SentCall(Sent.Form, ticket.InteractionId, Form: form), () => First(ticket, null, true), cancellation);

    public Task EditFirstAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation) =>
        DoAsync(new SentCall(Sent.Edit, ticket.InteractionId, message, message.Private), () =>
        {
            if (!firsts.ContainsKey(ticket.InteractionId))
            {
                throw new DiscordException(DiscordFault.NotFound, "no first answer");
            }

            firsts[ticket.InteractionId] = message;
        }, cancellation);

    public Task DeleteFirstAsync(InteractionTicket ticket, CancellationToken cancellation) => DoAsync(new SentCall(Sent.Delete, ticket.InteractionId), () =>
    {
        if (!firsts.Remove(ticket.InteractionId))
        {
            throw new DiscordException(DiscordFault.NotFound, "no first answer");
        }
    }, cancellation);

    public Task FollowUpAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation) =>
        DoAsync(new SentCall(Sent.FollowUp, ticket.InteractionId, message, message.Private), () =>
        {
            later.TryAdd(ticket.InteractionId, []);
            later[ticket.InteractionId].Add(message);
        }, cancellation);

    public Task<Stream> OpenAttachmentAsync(DiscordAttachment attachment, long mostBytes, CancellationToken cancellation) => Task.FromResult(Open(attachment));

    // Takes the answer away, as a moderator can.
    public void TakeAway(ulong interaction)
    {
        lock (gate)
        {
            firsts.Remove(interaction);
        }
    }

    private void First(InteractionTicket ticket, OutgoingMessage? message, bool isPrivate)
    {
        if (!firstIsPrivate.TryAdd(ticket.InteractionId, isPrivate))
        {
            throw new DiscordException(DiscordFault.AlreadyAnswered, "answered before", 40060);
        }

        firsts[ticket.InteractionId] = message;
    }

    private async Task DoAsync(SentCall call, Action act, CancellationToken cancellation)
    {
        lock (gate)
        {
            calls.Add(call);
        }

        await Before(call.What, cancellation);
        cancellation.ThrowIfCancellationRequested();
        lock (gate)
        {
            if (faults.TryPeek(out (Sent What, DiscordFault Fault, bool Done) planned) && planned.What == call.What)
            {
                faults.TryDequeue(out _);
                if (planned.Done)
                {
                    act();
                }

                throw new DiscordException(planned.Fault, "planned");
            }

            act();
        }
    }
}
