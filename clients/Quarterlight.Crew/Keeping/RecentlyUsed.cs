namespace Quarterlight.Crew.Keeping;

/// <summary>Values by key, the ones used last, up to a number. Safe for many at once.</summary>
internal sealed class RecentlyUsed<T>
    where T : class
{
    private readonly int most;
    private readonly Dictionary<string, LinkedListNode<(string Key, T Value)>> byKey = new(StringComparer.Ordinal);
    private readonly LinkedList<(string Key, T Value)> newestFirst = new();
    private readonly Lock gate = new();

    /// <param name="most">Values kept, 1 or more.</param>
    public RecentlyUsed(int most)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        this.most = most;
    }

    /// <summary>The value, which counts as used; null when there is none.</summary>
    public T? Find(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        lock (gate)
        {
            if (!byKey.TryGetValue(key, out LinkedListNode<(string Key, T Value)>? node))
            {
                return null;
            }

            newestFirst.Remove(node);
            newestFirst.AddFirst(node);
            return node.Value.Value;
        }
    }

    /// <summary>Keeps a value in place of the one before; forgets the one unused longest when there are too many.</summary>
    public void Keep(string key, T value)
    {
        ArgumentNullException.ThrowIfNull(key);
        lock (gate)
        {
            if (byKey.Remove(key, out LinkedListNode<(string Key, T Value)>? before))
            {
                newestFirst.Remove(before);
            }

            byKey[key] = newestFirst.AddFirst((key, value));
            if (byKey.Count > most)
            {
                byKey.Remove(newestFirst.Last!.Value.Key);
                newestFirst.RemoveLast();
            }
        }
    }
}
