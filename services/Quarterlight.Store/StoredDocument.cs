namespace Quarterlight.Store;

/// <summary>Where a document is kept.</summary>
/// <param name="Team">Team it belongs to.</param>
/// <param name="Collection">Collection within the team, such as scenes.</param>
/// <param name="Id">Id within the collection.</param>
public readonly record struct DocumentKey(string Team, string Collection, string Id);

/// <summary>A document as kept. What its payload means is its owner's business.</summary>
/// <param name="Key">Where it is kept.</param>
/// <param name="Revision">1 when created, one more with each update.</param>
/// <param name="CreateTime">When it was created, UTC.</param>
/// <param name="UpdateTime">When it was last written, UTC.</param>
/// <param name="Payload">The bytes.</param>
public sealed record StoredDocument(DocumentKey Key, long Revision, DateTimeOffset CreateTime, DateTimeOffset UpdateTime, ReadOnlyMemory<byte> Payload);

/// <summary>How a write ended.</summary>
public enum WriteState
{
    /// <summary>Done, and on disk as far as the backend can tell.</summary>
    Written,

    /// <summary>Refused: the id is taken.</summary>
    AlreadyExists,

    /// <summary>Refused: there is no such document.</summary>
    NotFound,

    /// <summary>Refused: the document has another revision than expected.</summary>
    RevisionConflict,
}

/// <summary>The end of a write.</summary>
/// <param name="State">How it ended.</param>
/// <param name="Document">As kept now; null when there is none.</param>
public readonly record struct WriteOutcome(WriteState State, StoredDocument? Document);

/// <summary>One page of a collection.</summary>
/// <param name="Documents">In order of id.</param>
/// <param name="NextId">Id after which the next page starts; null on the last page.</param>
public sealed record DocumentPage(IReadOnlyList<StoredDocument> Documents, string? NextId);
