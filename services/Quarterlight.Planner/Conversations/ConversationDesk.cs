using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Mapping;
using Quarterlight.Store;
using Quarterlight.V1;

namespace Quarterlight.Planner.Conversations;

/// <summary>Keeps where conversations stand, and drops what is too old or too much.</summary>
internal sealed class ConversationDesk(IDocumentStore store, TimeProvider time) : IDisposable
{
    private const string Collection = "conversations";
    private const int PageSize = 50;
    private const int MostDroppedTogether = 64;

    // Ids and times of that many teams are remembered; those of others are read again when they are needed.
    private const int MostTeamsRemembered = 256;

    // A team's saves come one after another: else a conversation saved a moment ago could be dropped as the oldest.
    private readonly SemaphoreSlim[] _turns = [.. Enumerable.Range(0, 64).Select(_ => new SemaphoreSlim(1))];
    private readonly Lock _gate = new();
    private readonly Dictionary<string, LinkedListNode<(string Team, ConversationAges Ages)>> _agesOf = [];
    private readonly LinkedList<(string Team, ConversationAges Ages)> _lately = new();

    /// <summary>As saved last.</summary>
    public async Task<Conversation> ReadAsync(string team, string id, CancellationToken cancellation)
    {
        var reader = new FieldReader();
        CheckId(id, reader);
        reader.ThrowIfAny();
        StoredDocument? kept = await store.GetAsync(new DocumentKey(team, Collection, id), cancellation).ConfigureAwait(false);
        return kept is not null && kept.UpdateTime >= Oldest() ? Shown(kept) : throw Refusals.NotFound($"{Collection}/{id}");
    }

    /// <summary>Keeps one; written when this returns.</summary>
    public async Task<Conversation> SaveAsync(string team, string id, ByteString state, CancellationToken cancellation)
    {
        var reader = new FieldReader();
        CheckId(id, reader);
        ConversationRules.StateSize.Check("state", state.Length, reader.Violations);
        reader.ThrowIfAny();
        return await InTurnAsync(
            team,
            async () =>
            {
                ConversationAges ages = await AgesAsync(team, cancellation).ConfigureAwait(false);
                StoredDocument kept = await PutAsync(new DocumentKey(team, Collection, id), state.Memory, cancellation).ConfigureAwait(false);
                ages.Set(id, kept.UpdateTime);
                await DropOutdatedAsync(team, ages).ConfigureAwait(false);
                return Shown(kept);
            },
            cancellation).ConfigureAwait(false);
    }

    /// <summary>Drops what is too old of every team, also of those that save nothing any more.</summary>
    public async Task SweepAsync(CancellationToken cancellation)
    {
        foreach (string team in await store.ListTeamsAsync(cancellation).ConfigureAwait(false))
        {
            await InTurnAsync(
                team,
                async () =>
                {
                    await DropOutdatedAsync(team, await AgesAsync(team, cancellation).ConfigureAwait(false)).ConfigureAwait(false);
                    return true;
                },
                cancellation).ConfigureAwait(false);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (SemaphoreSlim turn in _turns)
        {
            turn.Dispose();
        }
    }

    private static void CheckId(string id, FieldReader reader)
    {
        if (!ConversationRules.IsId(id))
        {
            reader.Add(
                "conversation_id",
                id.Length == 0 ? "the id is missing" : "this is not the id of a conversation",
                "Use 1 to 128 of A-Z, a-z, 0-9, full stops, underscores, colons and dashes, starting with a letter or digit");
        }
    }

    private static Conversation Shown(StoredDocument kept) => new()
    {
        ConversationId = kept.Key.Id,
        State = ByteString.CopyFrom(kept.Payload.Span),
        UpdateTime = Timestamp.FromDateTimeOffset(kept.UpdateTime),
    };

    private DateTimeOffset Oldest() => time.GetUtcNow() - ConversationRules.TimeKept;

    private async Task<T> InTurnAsync<T>(string team, Func<Task<T>> work, CancellationToken cancellation)
    {
        SemaphoreSlim turn = _turns[(uint)team.GetHashCode(StringComparison.Ordinal) % _turns.Length];
        await turn.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            return await work().ConfigureAwait(false);
        }
        finally
        {
            turn.Release();
        }
    }

    private async Task<StoredDocument> PutAsync(DocumentKey key, ReadOnlyMemory<byte> state, CancellationToken cancellation)
    {
        WriteOutcome outcome = await store.UpdateAsync(key, state, 0, cancellation).ConfigureAwait(false);
        if (outcome.State == WriteState.NotFound)
        {
            outcome = await store.CreateAsync(key, state, cancellation).ConfigureAwait(false);
        }

        return outcome.State == WriteState.Written ? outcome.Document! : throw new InvalidOperationException("Somebody else wrote a conversation.");
    }

    // What was written counts, also when the caller has gone: no cancellation from here on.
    private async Task DropOutdatedAsync(string team, ConversationAges ages)
    {
        foreach (string[] together in ages.Outdated(Oldest(), ConversationRules.MostKept).Chunk(MostDroppedTogether))
        {
            await Task.WhenAll(together.Select(id => store.DeleteAsync(new DocumentKey(team, Collection, id), CancellationToken.None))).ConfigureAwait(false);
            foreach (string id in together)
            {
                ages.Remove(id);
            }
        }
    }

    private async Task<ConversationAges> AgesAsync(string team, CancellationToken cancellation)
    {
        lock (_gate)
        {
            if (_agesOf.TryGetValue(team, out LinkedListNode<(string Team, ConversationAges Ages)>? node))
            {
                _lately.Remove(node);
                _lately.AddFirst(node);
                return node.Value.Ages;
            }
        }

        var ages = new ConversationAges();
        string? after = null;
        do
        {
            DocumentPage page = await store.ListAsync(team, Collection, PageSize, after, cancellation).ConfigureAwait(false);
            foreach (StoredDocument document in page.Documents)
            {
                ages.Set(document.Key.Id, document.UpdateTime);
            }

            after = page.NextId;
        }
        while (after is not null);
        lock (_gate)
        {
            _agesOf[team] = _lately.AddFirst((team, ages));
            if (_lately.Count > MostTeamsRemembered)
            {
                _agesOf.Remove(_lately.Last!.Value.Team);
                _lately.RemoveLast();
            }
        }

        return ages;
    }
}
