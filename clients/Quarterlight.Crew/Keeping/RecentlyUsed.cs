namespace Quarterlight.Crew.Keeping;

/// <summary>Values by key, the ones used last, up to a number. Safe for many at once.</summary>
/// <typeparam name="TKey">What tells values apart.</typeparam>
/// <typeparam name="TValue">What is kept.</typeparam>
public sealed class RecentlyUsed<TKey, TValue>
    where TKey : notnull
    where TValue : class
{
    private readonly int most;
    private readonly Dictionary<TKey, LinkedListNode<(TKey Key, TValue Value)>> byKey = [];
    private readonly LinkedList<(TKey Key, TValue Value)> newestFirst = new();
    private readonly Lock gate = new();

    /// <summary>Nothing kept yet.</summary>
    /// <param name="most">Values kept, 1 or more.</param>
    public RecentlyUsed(int most)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        this.most = most;
    }

    /// <summary>The value, which counts as used; null when there is none.</summary>
    /// <param name="key">Its key.</param>
    public TValue? Find(TKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        lock (gate)
        {
            return Touch(key);
        }
    }

    /// <summary>The value, which counts as used; made and kept when there is none.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="make">Makes it; must return soon.</param>
    public TValue FindOrMake(TKey key, Func<TKey, TValue> make)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(make);
        lock (gate)
        {
            if (Touch(key) is { } there)
            {
                return there;
            }

            TValue made = make(key);
            Put(key, made);
            return made;
        }
    }

    /// <summary>Keeps a value in place of the one before; forgets the one unused longest when there are too many.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="value">The value.</param>
    public void Keep(TKey key, TValue value)
    {
        ArgumentNullException.ThrowIfNull(key);
        lock (gate)
        {
            if (byKey.Remove(key, out LinkedListNode<(TKey Key, TValue Value)>? before))
            {
                newestFirst.Remove(before);
            }

            Put(key, value);
        }
    }

    private TValue? Touch(TKey key)
    {
        if (!byKey.TryGetValue(key, out LinkedListNode<(TKey Key, TValue Value)>? node))
        {
            return null;
        }

        newestFirst.Remove(node);
        newestFirst.AddFirst(node);
        return node.Value.Value;
    }

    private void Put(TKey key, TValue value)
    {
        byKey[key] = newestFirst.AddFirst((key, value));
        if (byKey.Count > most)
        {
            byKey.Remove(newestFirst.Last!.Value.Key);
            newestFirst.RemoveLast();
        }
    }
}
