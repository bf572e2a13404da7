using System.Threading.Channels;
using LiteDB;
using Microsoft.Win32.SafeHandles;

namespace Quarterlight.Store;

/// <summary>
/// Documents in a LiteDB file: one owner of the file, one thread that writes, reads from anywhere.
/// </summary>
/// <remarks>
/// LiteDB loses concurrent read-modify-writes and does not sync its log at commit, so all writes go through one queue; those
/// that wait together are committed together, the log is flushed to disk once, and only then are they acknowledged. A
/// checkpoint rewrites the data file from the log without a sync in between: at a power loss (not a process kill) in that
/// moment the last checkpoint may be lost. docs/decisions/001-document-store.md.
/// </remarks>
public sealed class LiteDocumentStore : IDocumentStore
{
    private const int QueueLength = 1024;
    private const int MostTogether = 64;
    private const string Separator = "/";

    private readonly LiteDatabase _database;
    private readonly ILiteCollection<BsonDocument> _documents;
    private readonly TimeProvider _time;
    private readonly FileStream _lock;
    private readonly string _logPath;
    private readonly Channel<Write> _queue = Channel.CreateBounded<Write>(new BoundedChannelOptions(QueueLength) { SingleReader = true });
    private readonly Thread _writer;
    private SafeFileHandle? _log;

    private LiteDocumentStore(LiteDatabase database, FileStream lockFile, string logPath, TimeProvider time)
    {
        _database = database;
        _lock = lockFile;
        _logPath = logPath;
        _time = time;
        _database.UtcDate = true;
        _documents = _database.GetCollection("documents");
        _writer = new Thread(WriteLoop) { IsBackground = true, Name = "store writer" };
        _writer.Start();
    }

    /// <summary>Opens or makes the store in a folder.</summary>
    /// <param name="folder">Data folder; made when missing.</param>
    /// <param name="time">Clock for create and update times.</param>
    /// <exception cref="StoreInUseException">Another owner has it open.</exception>
    public static LiteDocumentStore Open(string folder, TimeProvider time)
    {
        Directory.CreateDirectory(folder);
        FileStream lockFile;
        try
        {
            lockFile = new FileStream(Path.Combine(folder, "quarterlight.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException inner)
        {
            throw new StoreInUseException(folder, inner);
        }

        try
        {
            var database = new LiteDatabase(new ConnectionString
            {
                Filename = Path.Combine(folder, "quarterlight.db"),
                Connection = ConnectionType.Direct,
                Collation = Collation.Binary,
            });
            return new LiteDocumentStore(database, lockFile, Path.Combine(folder, "quarterlight-log.db"), time);
        }
        catch
        {
            lockFile.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public Task<WriteOutcome> CreateAsync(DocumentKey key, ReadOnlyMemory<byte> payload, CancellationToken cancellation) =>
        Enqueue(() => Create(key, payload), cancellation);

    /// <inheritdoc/>
    public Task<WriteOutcome> UpdateAsync(DocumentKey key, ReadOnlyMemory<byte> payload, long expectedRevision, CancellationToken cancellation) =>
        Enqueue(() => Update(key, payload, expectedRevision), cancellation);

    /// <inheritdoc/>
    public Task<WriteOutcome> DeleteAsync(DocumentKey key, CancellationToken cancellation) => Enqueue(() => Delete(key), cancellation);

    /// <inheritdoc/>
    public ValueTask<StoredDocument?> GetAsync(DocumentKey key, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        return ValueTask.FromResult(Find(key));
    }

    /// <inheritdoc/>
    public ValueTask<DocumentPage> ListAsync(string team, string collection, int pageSize, string? afterId, CancellationToken cancellation)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pageSize, 1);
        cancellation.ThrowIfCancellationRequested();
        string prefix = Prefix(team, collection);
        BsonExpression within = Query.And(Query.GT("_id", prefix + afterId), Query.LT("_id", prefix + "\uffff"));
        List<StoredDocument> found = [.. _documents.Find(within, limit: pageSize + 1).Select(Read)];
        bool more = found.Count > pageSize;
        if (more)
        {
            found.RemoveAt(pageSize);
        }

        return ValueTask.FromResult(new DocumentPage(found, more ? found[^1].Key.Id : null));
    }

    /// <summary>Finishes the writes that wait, folds the log into the data file and lets go of the folder.</summary>
    public ValueTask DisposeAsync()
    {
        if (_queue.Writer.TryComplete())
        {
            _writer.Join();
            _log?.Dispose();
            _database.Dispose();
            _lock.Dispose();
        }

        return ValueTask.CompletedTask;
    }

    private async Task<WriteOutcome> Enqueue(Func<WriteOutcome> apply, CancellationToken cancellation)
    {
        var write = new Write(apply, new TaskCompletionSource<WriteOutcome>(TaskCreationOptions.RunContinuationsAsynchronously));
        await _queue.Writer.WriteAsync(write, cancellation).ConfigureAwait(false);

        // From here on the write happens: a caller who gives up now must not be told that it did not.
        return await write.Done.Task.ConfigureAwait(false);
    }

    private void WriteLoop()
    {
        var batch = new List<Write>(MostTogether);
        while (WaitForWork())
        {
            batch.Clear();
            while (batch.Count < MostTogether && _queue.Reader.TryRead(out Write? write))
            {
                batch.Add(write);
            }

            CommitTogether(batch);
        }
    }

    private bool WaitForWork() => _queue.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult();

    private void CommitTogether(List<Write> batch)
    {
        var outcomes = new WriteOutcome[batch.Count];
        try
        {
            _database.BeginTrans();
            for (int i = 0; i < batch.Count; i++)
            {
                outcomes[i] = batch[i].Apply();
            }

            _database.Commit();
            FlushLog();
        }
        catch (Exception failure) when (failure is LiteException or IOException or UnauthorizedAccessException)
        {
            _database.Rollback();
            foreach (Write write in batch)
            {
                write.Done.SetException(failure);
            }

            return;
        }

        for (int i = 0; i < batch.Count; i++)
        {
            batch[i].Done.SetResult(outcomes[i]);
        }
    }

    // A sync of any handle flushes the file: LiteDB's own handle stays its own.
    private void FlushLog()
    {
        if (_log is null && File.Exists(_logPath))
        {
            _log = File.OpenHandle(_logPath, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
        }

        if (_log is not null)
        {
            RandomAccess.FlushToDisk(_log);
        }
    }

    private WriteOutcome Create(DocumentKey key, ReadOnlyMemory<byte> payload)
    {
        if (Find(key) is { } taken)
        {
            return new WriteOutcome(WriteState.AlreadyExists, taken);
        }

        DateTimeOffset now = _time.GetUtcNow();
        var document = new StoredDocument(key, 1, now, now, payload);
        _documents.Insert(ToBson(document));
        return new WriteOutcome(WriteState.Written, document);
    }

    private WriteOutcome Update(DocumentKey key, ReadOnlyMemory<byte> payload, long expectedRevision)
    {
        if (Find(key) is not { } kept)
        {
            return new WriteOutcome(WriteState.NotFound, null);
        }

        if (expectedRevision != 0 && expectedRevision != kept.Revision)
        {
            return new WriteOutcome(WriteState.RevisionConflict, kept);
        }

        StoredDocument document = kept with { Revision = kept.Revision + 1, UpdateTime = _time.GetUtcNow(), Payload = payload };
        _documents.Update(ToBson(document));
        return new WriteOutcome(WriteState.Written, document);
    }

    private WriteOutcome Delete(DocumentKey key) =>
        new(_documents.Delete(IdOf(key)) ? WriteState.Written : WriteState.NotFound, null);

    private StoredDocument? Find(DocumentKey key) => _documents.FindById(IdOf(key)) is { } bson ? Read(bson) : null;

    private static string Prefix(string team, string collection) => team + Separator + collection + Separator;

    private static string IdOf(DocumentKey key) => Prefix(key.Team, key.Collection) + key.Id;

    // Times as ticks: LiteDB's dates lose the parts below a millisecond.
    private static BsonDocument ToBson(StoredDocument document) => new()
    {
        ["_id"] = IdOf(document.Key),
        ["revision"] = document.Revision,
        ["created"] = document.CreateTime.UtcTicks,
        ["updated"] = document.UpdateTime.UtcTicks,
        ["payload"] = document.Payload.ToArray(),
    };

    private static StoredDocument Read(BsonDocument bson)
    {
        string[] parts = bson["_id"].AsString.Split(Separator, 3);
        return new StoredDocument(
            new DocumentKey(parts[0], parts[1], parts[2]),
            bson["revision"].AsInt64,
            new DateTimeOffset(bson["created"].AsInt64, TimeSpan.Zero),
            new DateTimeOffset(bson["updated"].AsInt64, TimeSpan.Zero),
            bson["payload"].AsBinary);
    }

    private sealed record Write(Func<WriteOutcome> Apply, TaskCompletionSource<WriteOutcome> Done);
}
