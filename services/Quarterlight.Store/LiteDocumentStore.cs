using System.Runtime.ExceptionServices;
using LiteDB;
using Microsoft.Win32.SafeHandles;

namespace Quarterlight.Store;

/// <summary>
/// Documents in a LiteDB file: one owner of the file, one thread that writes, a few that read.
/// </summary>
/// <remarks>
/// LiteDB loses concurrent read-modify-writes and does not sync its log at commit, so all writes go through one queue; those
/// that wait together are committed together, the log is flushed to disk once, and only then are they acknowledged.
/// docs/decisions/001-document-store.md.
/// </remarks>
public sealed class LiteDocumentStore : IDocumentStore
{
    private const string Separator = "/";
    private const string Documents = "documents";

    // Longer than LiteDB waits for any of its own locks (a minute): what is not closed by then never will be.
    private static readonly TimeSpan s_longestClose = TimeSpan.FromSeconds(90);

    // LiteDB refuses its 101st open transaction, and a read is one; more readers than cores only keep the writer waiting.
    private static readonly int s_readersAtOnce = Math.Clamp(2 * Environment.ProcessorCount, 4, 64);

    private readonly LiteDatabase _database;
    private readonly ILiteCollection<BsonDocument> _documents;
    private readonly TimeProvider _time;
    private readonly StoreLock _lock;
    private readonly string _logPath;
    private readonly GroupWriter _writer;
    private readonly SemaphoreSlim _readers = new(s_readersAtOnce);
    private SafeFileHandle? _log;
    private int _closed;

    private LiteDocumentStore(LiteDatabase database, StoreLock folderLock, string logPath, TimeProvider time)
    {
        _database = database;
        _lock = folderLock;
        _logPath = logPath;
        _time = time;
        _database.UtcDate = true;
        _documents = _database.GetCollection(Documents);
        _writer = new GroupWriter(Commit);
    }

    /// <summary>Opens or makes the store in a folder.</summary>
    /// <param name="folder">Data folder; made when missing.</param>
    /// <param name="time">Clock for create and update times.</param>
    /// <exception cref="StoreInUseException">Another owner has it open.</exception>
    public static LiteDocumentStore Open(string folder, TimeProvider time)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ArgumentNullException.ThrowIfNull(time);
        Directory.CreateDirectory(folder);
        StoreLock folderLock = StoreLock.Take(folder);
        try
        {
            var database = new LiteDatabase(new ConnectionString
            {
                Filename = Path.Combine(folder, "quarterlight.db"),
                Connection = ConnectionType.Direct,
                Collation = Collation.Binary,
            });
            try
            {
                MakeCollection(database);
                return new LiteDocumentStore(database, folderLock, Path.Combine(folder, "quarterlight-log.db"), time);
            }
            catch
            {
                database.Dispose();
                throw;
            }
        }
        catch
        {
            folderLock.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public Task<WriteOutcome> CreateAsync(DocumentKey key, ReadOnlyMemory<byte> payload, CancellationToken cancellation)
    {
        CheckKey(key);
        return _writer.WriteAsync(() => Create(key, payload), cancellation);
    }

    /// <inheritdoc/>
    public Task<WriteOutcome> UpdateAsync(DocumentKey key, ReadOnlyMemory<byte> payload, long expectedRevision, CancellationToken cancellation)
    {
        CheckKey(key);
        ArgumentOutOfRangeException.ThrowIfNegative(expectedRevision);
        return _writer.WriteAsync(() => Update(key, payload, expectedRevision), cancellation);
    }

    /// <inheritdoc/>
    public Task<WriteOutcome> DeleteAsync(DocumentKey key, CancellationToken cancellation)
    {
        CheckKey(key);
        return _writer.WriteAsync(() => Delete(key), cancellation);
    }

    /// <inheritdoc/>
    public ValueTask<StoredDocument?> GetAsync(DocumentKey key, CancellationToken cancellation)
    {
        CheckKey(key);
        return ReadInTurnAsync(() => Find(key), cancellation);
    }

    /// <inheritdoc/>
    public ValueTask<DocumentPage> ListAsync(string team, string collection, int pageSize, string? afterId, CancellationToken cancellation)
    {
        CheckPart(team, nameof(team));
        CheckPart(collection, nameof(collection));
        ArgumentOutOfRangeException.ThrowIfLessThan(pageSize, 1);
        return ReadInTurnAsync(() => List(Prefix(team, collection), pageSize, afterId), cancellation);
    }

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<string>> ListTeamsAsync(CancellationToken cancellation) => ReadInTurnAsync<IReadOnlyList<string>>(() => ListTeams(cancellation), cancellation);

    /// <summary>Finishes the writes that wait, folds the log into the data file and lets go of the folder.</summary>
    /// <exception cref="TimeoutException">It did not close; what was acknowledged is in the log, and the folder stays taken until the process ends.</exception>
    public ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref _closed, 1) == 0)
        {
            _writer.Dispose();
            _log?.Dispose();
            CloseDatabase();
            _lock.Dispose();
        }

        return ValueTask.CompletedTask;
    }

    // LiteDB shows a collection to readers while the write that makes it is still under way, and a reader who comes then finds a page that is none yet:
    // so it is made, and folded into the data file, before anybody can read. The index by id comes with it; there is no other.
    private static void MakeCollection(LiteDatabase database)
    {
        if (database.CollectionExists(Documents))
        {
            return;
        }

        ILiteCollection<BsonDocument> made = database.GetCollection(Documents);
        database.BeginTrans();
        made.Insert(new BsonDocument { ["_id"] = Separator });
        made.Delete(Separator);
        database.Commit();
        database.Checkpoint();
    }

    // LiteDB waits without a limit for its own queue to be written.
    private void CloseDatabase()
    {
        Exception? failure = null;
        var closing = new Thread(() =>
        {
            try
            {
                _database.Dispose();
            }
#pragma warning disable CA1031 // It belongs to the one who closes.
            catch (Exception e)
#pragma warning restore CA1031
            {
                failure = e;
            }
        })
        { IsBackground = true, Name = "store closing" };
        closing.Start();
        if (!closing.Join(s_longestClose))
        {
            throw new TimeoutException("The store did not close in time. What was acknowledged is kept; the folder is free when this process ends.");
        }

        if (failure is not null)
        {
            ExceptionDispatchInfo.Throw(failure);
        }
    }

    private void Commit(Action work)
    {
        _database.BeginTrans();
        try
        {
            work();
            _database.Commit();
        }
        catch
        {
            _database.Rollback();
            throw;
        }

        FlushLog();
    }

    // A sync of any handle flushes the file: LiteDB's own handle stays its own. The log is not there before the first change.
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

    private DocumentPage List(string prefix, int pageSize, string? afterId)
    {
        BsonExpression within = Query.And(Query.GT("_id", prefix + afterId), Query.LT("_id", prefix + "\uffff"));
        List<StoredDocument> found = [.. _documents.Find(within, limit: pageSize + 1).Select(Read)];
        bool more = found.Count > pageSize;
        if (more)
        {
            found.RemoveAt(pageSize);
        }

        return new DocumentPage(found, more ? found[^1].Key.Id : null);
    }

    private List<string> ListTeams(CancellationToken cancellation)
    {
        // From team to team by the index, whatever each of them keeps.
        var teams = new List<string>();
        string after = "";
        while (_documents.Find(Query.GT("_id", after), limit: 1).FirstOrDefault() is { } first)
        {
            cancellation.ThrowIfCancellationRequested();
            string team = Read(first).Key.Team;
            teams.Add(team);
            after = team + Separator + "\uffff";
        }

        return teams;
    }

    private async ValueTask<T> ReadInTurnAsync<T>(Func<T> read, CancellationToken cancellation)
    {
        await _readers.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            return read();
        }
        finally
        {
            _readers.Release();
        }
    }

    private static void CheckKey(DocumentKey key)
    {
        CheckPart(key.Team, nameof(key));
        CheckPart(key.Collection, nameof(key));
        ArgumentException.ThrowIfNullOrEmpty(key.Id, nameof(key));
    }

    private static void CheckPart(string part, string parameter)
    {
        if (string.IsNullOrEmpty(part) || part.Contains(Separator, StringComparison.Ordinal))
        {
            throw new ArgumentException("A team or collection is not empty and has no slash: one team could read into another.", parameter);
        }
    }

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
}
