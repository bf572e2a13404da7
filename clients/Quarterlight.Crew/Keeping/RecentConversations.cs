namespace Quarterlight.Crew.Keeping;

/// <summary>Keeps conversations in this process alone: the ones used last, up to a number. Safe for many at once.</summary>
public sealed class RecentConversations : IConversationStore
{
    /// <summary>Conversations kept unless another number is given.</summary>
    public const int DefaultMost = 1000;

    private readonly RecentlyUsed<string, CrewMemory> kept;

    /// <summary>An empty store.</summary>
    /// <param name="most">Conversations kept, 1 or more; beyond that the one unused longest is forgotten.</param>
    public RecentConversations(int most = DefaultMost) => kept = new RecentlyUsed<string, CrewMemory>(most);

    /// <inheritdoc/>
    public Task<CrewMemory?> ReadAsync(string conversationId, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        return Task.FromResult(kept.Find(conversationId));
    }

    /// <inheritdoc/>
    public Task WriteAsync(string conversationId, CrewMemory memory, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(memory);
        cancellation.ThrowIfCancellationRequested();
        kept.Keep(conversationId, memory);
        return Task.CompletedTask;
    }
}
