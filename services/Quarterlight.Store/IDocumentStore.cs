namespace Quarterlight.Store;

/// <summary>
/// Keeps documents by team, collection and id. Every method is safe from any thread; a write that returns
/// <see cref="WriteState.Written"/> survives the end of the process at any moment.
/// </summary>
public interface IDocumentStore : IAsyncDisposable
{
    /// <summary>Keeps a new document.</summary>
    Task<WriteOutcome> CreateAsync(DocumentKey key, ReadOnlyMemory<byte> payload, CancellationToken cancellation);

    /// <summary>Replaces a document; an expected revision of 0 replaces whatever is there.</summary>
    Task<WriteOutcome> UpdateAsync(DocumentKey key, ReadOnlyMemory<byte> payload, long expectedRevision, CancellationToken cancellation);

    /// <summary>Removes a document.</summary>
    Task<WriteOutcome> DeleteAsync(DocumentKey key, CancellationToken cancellation);

    /// <summary>The document, or null.</summary>
    ValueTask<StoredDocument?> GetAsync(DocumentKey key, CancellationToken cancellation);

    /// <summary>A page of at most so many documents (at least 1) with ids after one given, or from the start.</summary>
    ValueTask<DocumentPage> ListAsync(string team, string collection, int pageSize, string? afterId, CancellationToken cancellation);

    /// <summary>Every team that keeps anything.</summary>
    ValueTask<IReadOnlyList<string>> ListTeamsAsync(CancellationToken cancellation);
}

/// <summary>The data folder is open in another process (or twice in this one).</summary>
public sealed class StoreInUseException : IOException
{
    /// <summary>Makes the exception for a folder.</summary>
    public StoreInUseException(string folder, Exception inner)
        : base($"The data folder {folder} is in use by another planner. Stop that one, or use another folder.", inner)
    {
    }
}
