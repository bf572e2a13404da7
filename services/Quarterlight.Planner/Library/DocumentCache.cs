using System.Collections.Concurrent;
using Quarterlight.Store;

namespace Quarterlight.Planner.Library;

/// <summary>
/// Parsed documents by key, so that a look-up costs little more than an empty call. Values are shared: nobody changes one.
/// </summary>
internal sealed class DocumentCache
{
    private const int Most = 1024;

    private readonly ConcurrentDictionary<DocumentKey, object> _values = new();
    private long _writes;

    /// <summary>Counts writes: a reader that began before one must not keep what it read.</summary>
    public long Writes => Interlocked.Read(ref _writes);

    public bool TryGet<T>(DocumentKey key, out T value)
        where T : class
    {
        value = _values.TryGetValue(key, out object? kept) ? (T)kept : null!;
        return value is not null;
    }

    /// <summary>Keeps what was read, unless something was written since the reader looked at <see cref="Writes"/>.</summary>
    public void Keep(DocumentKey key, object value, long writesBefore)
    {
        if (_values.Count >= Most)
        {
            _values.Clear();
        }

        _values[key] = value;
        if (Writes != writesBefore)
        {
            _values.TryRemove(key, out _);
        }
    }

    /// <summary>Forgets a document that was written or deleted.</summary>
    public void Forget(DocumentKey key)
    {
        Interlocked.Increment(ref _writes);
        _values.TryRemove(key, out _);
    }
}
