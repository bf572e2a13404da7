using System.Collections.Concurrent;
using Quarterlight.Store;

namespace Quarterlight.Planner.Library;

/// <summary>
/// Parsed documents by key, so that a look-up costs little more than an empty call. Values are shared: nobody changes one.
/// </summary>
internal sealed class DocumentCache
{
    // Stored bytes; parsed they take a few times as much.
    private const long MostBytes = 8 * 1024 * 1024;

    private readonly ConcurrentDictionary<DocumentKey, Entry> _entries = new();
    private long _bytes;
    private long _writes;

    /// <summary>Counts writes: a reader that began before one must not keep what it read.</summary>
    public long Writes => Interlocked.Read(ref _writes);

    public bool TryGet<T>(DocumentKey key, out T value)
        where T : class
    {
        value = _entries.TryGetValue(key, out Entry? entry) ? (T)entry.Value : null!;
        return value is not null;
    }

    /// <summary>Keeps what was read, unless something was written since the reader looked at <see cref="Writes"/>.</summary>
    public void Keep(DocumentKey key, object value, int storedBytes, long writesBefore)
    {
        if (Interlocked.Read(ref _bytes) > MostBytes)
        {
            _entries.Clear();
            Interlocked.Exchange(ref _bytes, 0);
        }

        if (_entries.TryAdd(key, new Entry(value, storedBytes)))
        {
            Interlocked.Add(ref _bytes, storedBytes);
        }

        if (Writes != writesBefore)
        {
            Remove(key);
        }
    }

    /// <summary>Forgets a document that was written or deleted.</summary>
    public void Forget(DocumentKey key)
    {
        Interlocked.Increment(ref _writes);
        Remove(key);
    }

    private void Remove(DocumentKey key)
    {
        if (_entries.TryRemove(key, out Entry? entry))
        {
            Interlocked.Add(ref _bytes, -entry.Bytes);
        }
    }

    private sealed record Entry(object Value, int Bytes);
}
