using System.Text;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Mapping;
using Quarterlight.Store;

namespace Quarterlight.Planner.Library;

/// <summary>How a kind of resource is kept.</summary>
/// <param name="Collection">Plural, as in resource names: cabins.</param>
/// <param name="Singular">Singular, as in field names: cabin.</param>
/// <param name="Parser">Reads the stored bytes.</param>
/// <param name="Stamp">Sets name, revision and update time, which are not stored.</param>
internal sealed record ResourceKind<T>(string Collection, string Singular, MessageParser<T> Parser, Action<T, string, long, Timestamp?> Stamp)
    where T : class, IMessage<T>;

/// <summary>Create, read, list, update and delete for one kind of resource: the same for all, over the document store.</summary>
internal sealed class Library<T>(ResourceKind<T> kind, IDocumentStore store, DocumentCache cache)
    where T : class, IMessage<T>, IDeepCloneable<T>
{
    private const int DefaultPage = 50;
    private const int LargestPage = 200;
    private const int LargestPageBytes = 2 * 1024 * 1024;

    /// <summary>Keeps a new one.</summary>
    public async Task<T> CreateAsync(string team, string id, T value, CancellationToken cancellation)
    {
        var reader = new FieldReader();
        reader.Id($"{kind.Singular}_id", id);
        reader.ThrowIfAny();
        DocumentKey key = Key(team, id);
        WriteOutcome outcome = await store.CreateAsync(key, Bare(value), cancellation).ConfigureAwait(false);
        return Written(key, outcome);
    }

    /// <summary>Reads one; what comes back is shared and must not be changed.</summary>
    public async ValueTask<T> GetAsync(string team, string name, CancellationToken cancellation, string field = "name") =>
        await FindAsync(team, name, cancellation, field).ConfigureAwait(false) ?? throw Refusals.NotFound(name);

    /// <summary>Reads one, or null; what comes back is shared and must not be changed.</summary>
    public async ValueTask<T?> FindAsync(string team, string name, CancellationToken cancellation, string field = "name")
    {
        DocumentKey key = Key(team, IdIn(name, field));
        if (cache.TryGet(key, out T value))
        {
            return value;
        }

        long writes = cache.Writes;
        if (await store.GetAsync(key, cancellation).ConfigureAwait(false) is not { } document)
        {
            return null;
        }

        value = Read(document);
        cache.Keep(key, value, document.Payload.Length, writes);
        return value;
    }

    /// <summary>Reads a page.</summary>
    public async Task<(IReadOnlyList<T> Page, string NextToken)> ListAsync(string team, int pageSize, string pageToken, CancellationToken cancellation)
    {
        if (pageSize is < 0 or > LargestPage)
        {
            throw Refusals.Invalid("page_size", $"the page size is {pageSize}", $"It must be between 0 and {LargestPage}");
        }

        string? after = pageToken.Length == 0 ? null : Decode(pageToken);
        DocumentPage page = await store.ListAsync(team, kind.Collection, pageSize == 0 ? DefaultPage : pageSize, after, cancellation).ConfigureAwait(false);
        int fitting = Fitting(page.Documents);
        string? next = fitting < page.Documents.Count ? page.Documents[fitting - 1].Key.Id : page.NextId;
        return ([.. page.Documents.Take(fitting).Select(Read)], next is null ? "" : Convert.ToBase64String(Encoding.UTF8.GetBytes(next)));
    }

    /// <summary>Reads all, page by page.</summary>
    public async IAsyncEnumerable<T> AllAsync(string team, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        string? after = null;
        do
        {
            DocumentPage page = await store.ListAsync(team, kind.Collection, LargestPage, after, cancellation).ConfigureAwait(false);
            foreach (StoredDocument document in page.Documents)
            {
                yield return Read(document);
            }

            after = page.NextId;
        }
        while (after is not null);
    }

    /// <summary>Replaces one; a revision of 0 replaces whatever is there.</summary>
    public async Task<T> UpdateAsync(string team, string name, T value, long revision, CancellationToken cancellation)
    {
        DocumentKey key = Key(team, IdIn(name, $"{kind.Singular}.name"));
        WriteOutcome outcome = await store.UpdateAsync(key, Bare(value), revision, cancellation).ConfigureAwait(false);
        return Written(key, outcome);
    }

    /// <summary>Keeps one whether or not it was there; a revision of 0 replaces whatever is there.</summary>
    public async Task<T> PutAsync(string team, string id, T value, long revision, CancellationToken cancellation)
    {
        DocumentKey key = Key(team, id);
        byte[] bytes = Bare(value);
        while (true)
        {
            WriteOutcome outcome = await store.UpdateAsync(key, bytes, revision, cancellation).ConfigureAwait(false);
            if (outcome.State == WriteState.NotFound)
            {
                if (revision != 0)
                {
                    throw Refusals.RevisionConflict($"{kind.Collection}/{id}", 0);
                }

                outcome = await store.CreateAsync(key, bytes, cancellation).ConfigureAwait(false);
                if (outcome.State == WriteState.AlreadyExists)
                {
                    continue; // Somebody else was first: theirs is replaced.
                }
            }

            return Written(key, outcome);
        }
    }

    /// <summary>Deletes one.</summary>
    public async Task DeleteAsync(string team, string name, CancellationToken cancellation)
    {
        DocumentKey key = Key(team, IdIn(name, "name"));
        WriteOutcome outcome = await store.DeleteAsync(key, cancellation).ConfigureAwait(false);
        cache.Forget(key);
        if (outcome.State == WriteState.NotFound)
        {
            throw Refusals.NotFound(name);
        }
    }

    // A page of large plans must still fit a message: it ends early, and the next one goes on from there.
    private static int Fitting(IReadOnlyList<StoredDocument> documents)
    {
        long bytes = 0;
        int fitting = 0;
        while (fitting < documents.Count && (fitting == 0 || bytes + documents[fitting].Payload.Length <= LargestPageBytes))
        {
            bytes += documents[fitting++].Payload.Length;
        }

        return fitting;
    }

    private DocumentKey Key(string team, string id) => new(team, kind.Collection, id);

    private string IdIn(string name, string field)
    {
        string prefix = kind.Collection + "/";
        var reader = new FieldReader();
        string id = name.StartsWith(prefix, StringComparison.Ordinal) ? name[prefix.Length..] : "";
        reader.Id("id", id);
        return reader.Violations.Count == 0
            ? id
            : throw Refusals.Invalid(field, name.Length == 0 ? "the name is missing" : "this is not a resource name", $"Use {prefix} and an id of a-z, 0-9 and dashes");
    }

    private T Written(DocumentKey key, WriteOutcome outcome)
    {
        cache.Forget(key);
        string name = $"{kind.Collection}/{key.Id}";
        return outcome.State switch
        {
            WriteState.Written => Read(outcome.Document!),
            WriteState.AlreadyExists => throw Refusals.AlreadyExists(name),
            WriteState.RevisionConflict => throw Refusals.RevisionConflict(name, outcome.Document!.Revision),
            _ => throw Refusals.NotFound(name),
        };
    }

    private byte[] Bare(T value)
    {
        T bare = value.Clone();
        kind.Stamp(bare, "", 0, null);
        return bare.ToByteArray();
    }

    private T Read(StoredDocument document)
    {
        T value = kind.Parser.ParseFrom(document.Payload.Span);
        kind.Stamp(value, $"{kind.Collection}/{document.Key.Id}", document.Revision, Timestamp.FromDateTimeOffset(document.UpdateTime));
        return value;
    }

    private static string Decode(string pageToken)
    {
        Span<byte> bytes = new byte[pageToken.Length];
        return Convert.TryFromBase64String(pageToken, bytes, out int length)
            ? Encoding.UTF8.GetString(bytes[..length])
            : throw Refusals.Invalid("page_token", "this is not a page token", "Use next_page_token of the page before, or leave it empty");
    }
}
