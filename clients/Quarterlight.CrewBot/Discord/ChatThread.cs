using Quarterlight.Crew;
using Quarterlight.Crew.Keeping;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// Where an interaction goes on from. Everybody goes on from their own last answer in a channel, so that two who ask at the same time do not talk into each
/// other's question and nothing private leaks; who has asked nothing yet starts with the scene and units last talked about openly there. A button goes on from the
/// answer it stands under, whoever presses it.
/// </summary>
internal sealed class ChatThread(IConversationStore store, Interaction interaction)
{
    private readonly string shared = $"c:{interaction.ChannelId ?? 0}";

    /// <summary>The asker's conversation in this channel.</summary>
    public string Own { get; } = $"c:{interaction.ChannelId ?? 0}:{interaction.UserId}";

    /// <summary>Names what is kept with the answer to this interaction.</summary>
    public string Snapshot { get; } = ButtonId.SnapshotOf(interaction.Ticket.InteractionId);

    /// <summary>Starts the asker's conversation where the channel is, if it has none.</summary>
    public async Task BeginAsync(CancellationToken cancellation)
    {
        if (await store.ReadAsync(Own, cancellation).ConfigureAwait(false) is null
            && await store.ReadAsync(shared, cancellation).ConfigureAwait(false) is { } open)
        {
            await store.WriteAsync(Own, open, cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>Conversation of a question asked by a button: apart from the asker's own while it lasts, so that neither talks into the other.</summary>
    public string Apart => Id(Snapshot);

    /// <summary>What was remembered with an earlier answer; null when it is not kept any more.</summary>
    public Task<CrewMemory?> RecallAsync(string snapshot, CancellationToken cancellation) => store.ReadAsync(Id(snapshot), cancellation);

    /// <summary>Keeps what the answer leaves behind.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="isPrivate">True when only the asker sees it.</param>
    /// <param name="fromButton">True when it was asked apart, so that the asker's own conversation does not know yet.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task KeepAsync(CrewAnswer answer, bool isPrivate, bool fromButton, CancellationToken cancellation)
    {
        // Nothing remembered means nothing was asked of the desk: what the asker talked about stays.
        await Task.WhenAll(
            answer.FollowUps.Count > 0 ? store.WriteAsync(Id(Snapshot), answer.Memory, cancellation) : Task.CompletedTask,
            fromButton && answer.Memory != CrewMemory.Empty ? store.WriteAsync(Own, answer.Memory, cancellation) : Task.CompletedTask,
            !isPrivate && answer.Memory.SceneName is { } scene ? OpenAsync(scene, answer.Memory.Units, cancellation) : Task.CompletedTask).ConfigureAwait(false);
    }

    private async Task OpenAsync(string scene, UnitPreference? units, CancellationToken cancellation)
    {
        CrewMemory? open = await store.ReadAsync(shared, cancellation).ConfigureAwait(false);
        if (open?.SceneName != scene || open.Units != units)
        {
            await store.WriteAsync(shared, new CrewMemory { SceneName = scene, Units = units }, cancellation).ConfigureAwait(false);
        }
    }

    private static string Id(string snapshot) => $"m:{snapshot}";
}
