using Grpc.Core;

namespace Quarterlight.Crew.Keeping;

/// <summary>A conversation as the planner keeps it.</summary>
/// <param name="Bytes">What <see cref="CrewMemoryCodec"/> wrote.</param>
/// <param name="Revision">Grows with each write.</param>
internal sealed record KeptConversation(ReadOnlyMemory<byte> Bytes, long Revision);

/// <summary>Where conversations are kept beyond one process. Both methods fail with an <see cref="RpcException"/>.</summary>
internal interface IConversationShelf
{
    /// <summary>Reads one; null when there is none.</summary>
    Task<KeptConversation?> GetAsync(string conversationId, CancellationToken cancellation);

    /// <summary>Writes one in place of what is there, and returns its revision.</summary>
    Task<long> SaveAsync(string conversationId, ReadOnlyMemory<byte> bytes, CancellationToken cancellation);
}

/// <summary>
/// Keeps conversations with the planner, so that any replica or a restart goes on where they were, with a copy in this process in
/// front: it has the attachments, which cannot be kept elsewhere, and it answers alone while the planner is away. What another
/// replica wrote later wins over the copy.
/// </summary>
public sealed class PlannerConversations : IConversationStore
{
    // One question reads its conversation more than once. Nobody asks a second one elsewhere within this time.
    private static readonly TimeSpan Fresh = TimeSpan.FromMilliseconds(250);

    private readonly IConversationShelf shelf;
    private readonly TimeSpan fresh;
    private readonly TimeProvider time;
    private readonly RecentlyUsed<string, Copy> copies;

    /// <summary>Conversations of the team behind the invoker.</summary>
    /// <param name="invoker">Where calls go; carries the team's key and name, if any.</param>
    /// <param name="options">The clock deadlines are counted on.</param>
    /// <param name="most">Copies kept in this process, 1 or more.</param>
    public PlannerConversations(CallInvoker invoker, CrewDeskOptions options, int most = RecentConversations.DefaultMost)
        : this(new PlannerConversationShelf(invoker, options), most, Fresh, options?.Clock)
    {
    }

    /// <param name="shelf">The planner.</param>
    /// <param name="most">Copies kept in this process, 1 or more.</param>
    /// <param name="fresh">How long a copy is taken for what the planner has, without asking it.</param>
    /// <param name="time">Clock of that; the system's when not given.</param>
    internal PlannerConversations(IConversationShelf shelf, int most = RecentConversations.DefaultMost, TimeSpan fresh = default, TimeProvider? time = null) =>
        (this.shelf, copies, this.fresh, this.time) = (shelf, new RecentlyUsed<string, Copy>(most), fresh, time ?? TimeProvider.System);

    /// <inheritdoc/>
    public async Task<CrewMemory?> ReadAsync(string conversationId, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(conversationId);
        cancellation.ThrowIfCancellationRequested();
        Copy? copy = copies.Find(conversationId);
        if (copy is not null && time.GetElapsedTime(copy.Since) < fresh)
        {
            return copy.Memory;
        }

        long now = time.GetTimestamp();
        try
        {
            KeptConversation? kept = await shelf.GetAsync(conversationId, cancellation).ConfigureAwait(false);
            if (copy is not null && kept?.Revision == copy.Revision)
            {
                copy.Since = now;
            }

            if (kept is null || kept.Revision <= copy?.Revision || CrewMemoryCodec.Read(kept.Bytes.Span) is not { } memory)
            {
                return copy?.Memory;
            }

            copies.Keep(conversationId, new Copy(memory, kept.Revision, now));
            return memory;
        }
        catch (RpcException) when (!cancellation.IsCancellationRequested)
        {
            return copy?.Memory;
        }
        catch (RpcException)
        {
            throw new OperationCanceledException(cancellation);
        }
    }

    /// <inheritdoc/>
    public async Task WriteAsync(string conversationId, CrewMemory memory, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(conversationId);
        ArgumentNullException.ThrowIfNull(memory);
        cancellation.ThrowIfCancellationRequested();

        // Until the planner has it, only a later write of another replica may win over this one.
        var unsaved = new Copy(memory, copies.Find(conversationId)?.Revision ?? 0, time.GetTimestamp());
        copies.Keep(conversationId, unsaved);
        try
        {
            long revision = await shelf.SaveAsync(conversationId, CrewMemoryCodec.Write(memory), cancellation).ConfigureAwait(false);
            if (copies.Find(conversationId) is { } now && (ReferenceEquals(now, unsaved) || now.Revision < revision))
            {
                copies.Keep(conversationId, new Copy(memory, revision, time.GetTimestamp()));
            }
        }
        catch (RpcException) when (!cancellation.IsCancellationRequested)
        {
            // The copy in this process goes on alone.
        }
        catch (RpcException)
        {
            throw new OperationCanceledException(cancellation);
        }
    }

    private sealed class Copy(CrewMemory memory, long revision, long since)
    {
        private long since = since;

        public CrewMemory Memory { get; } = memory;

        public long Revision { get; } = revision;

        // When it was last known to be what the planner has.
        public long Since
        {
            get => Volatile.Read(ref since);
            set => Volatile.Write(ref since, value);
        }
    }
}
