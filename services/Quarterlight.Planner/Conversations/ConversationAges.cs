namespace Quarterlight.Planner.Conversations;

/// <summary>The conversations of one team by age, without what is in them. For one caller at a time.</summary>
internal sealed class ConversationAges
{
    private readonly Dictionary<string, DateTimeOffset> _times = [];
    private readonly SortedSet<(DateTimeOffset Time, string Id)> _byAge = [];

    /// <summary>How many there are.</summary>
    public int Count => _times.Count;

    /// <summary>Notes when one was last saved.</summary>
    public void Set(string id, DateTimeOffset time)
    {
        Remove(id);
        _times.Add(id, time);
        _byAge.Add((time, id));
    }

    /// <summary>Forgets one.</summary>
    public void Remove(string id)
    {
        if (_times.Remove(id, out DateTimeOffset time))
        {
            _byAge.Remove((time, id));
        }
    }

    /// <summary>Those that are older than a moment, and of the others the oldest that are too many.</summary>
    public IReadOnlyList<string> Outdated(DateTimeOffset oldest, int most)
    {
        int tooMany = Count - most;
        return [.. _byAge.TakeWhile((c, i) => i < tooMany || c.Time < oldest).Select(c => c.Id)];
    }
}
