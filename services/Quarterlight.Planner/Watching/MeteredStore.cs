using System.Diagnostics;
using Quarterlight.Store;

namespace Quarterlight.Planner.Watching;

/// <summary>A store whose writes are counted. The store behind it is not its own to close.</summary>
internal sealed class MeteredStore(IDocumentStore inner, PlannerMeters meters) : IDocumentStore
{
    /// <inheritdoc/>
    public Task<WriteOutcome> CreateAsync(DocumentKey key, ReadOnlyMemory<byte> payload, CancellationToken cancellation) =>
        CountAsync(() => inner.CreateAsync(key, payload, cancellation));

    /// <inheritdoc/>
    public Task<WriteOutcome> UpdateAsync(DocumentKey key, ReadOnlyMemory<byte> payload, long expectedRevision, CancellationToken cancellation) =>
        CountAsync(() => inner.UpdateAsync(key, payload, expectedRevision, cancellation));

    /// <inheritdoc/>
    public Task<WriteOutcome> DeleteAsync(DocumentKey key, CancellationToken cancellation) => CountAsync(() => inner.DeleteAsync(key, cancellation));

    /// <inheritdoc/>
    public ValueTask<StoredDocument?> GetAsync(DocumentKey key, CancellationToken cancellation) => inner.GetAsync(key, cancellation);

    /// <inheritdoc/>
    public ValueTask<DocumentPage> ListAsync(string team, string collection, int pageSize, string? afterId, CancellationToken cancellation) =>
        inner.ListAsync(team, collection, pageSize, afterId, cancellation);

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<string>> ListTeamsAsync(CancellationToken cancellation) => inner.ListTeamsAsync(cancellation);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private async Task<WriteOutcome> CountAsync(Func<Task<WriteOutcome>> write)
    {
        long start = Stopwatch.GetTimestamp();
        WriteState? state = null;
        try
        {
            WriteOutcome outcome = await write().ConfigureAwait(false);
            state = outcome.State;
            return outcome;
        }
        finally
        {
            meters.WriteEnded(state, Stopwatch.GetElapsedTime(start));
        }
    }
}
