namespace Quarterlight.CrewBot.Discord;

/// <summary>Interactions taken lately, so that one delivered twice is answered once. Bounded; safe for many at once.</summary>
internal sealed class RecentInteractions(TimeProvider time, int most)
{
    /// <summary>How long one is remembered: longer than its token lives.</summary>
    public static readonly TimeSpan Remembered = TimeSpan.FromMinutes(20);

    private readonly HashSet<ulong> known = [];
    private readonly Queue<(ulong Id, long Taken)> oldestFirst = new();
    private readonly Lock gate = new();

    /// <summary>True when it was not taken before.</summary>
    public bool Take(ulong interactionId)
    {
        lock (gate)
        {
            while (oldestFirst.TryPeek(out (ulong Id, long Taken) oldest) && (oldestFirst.Count >= most || time.GetElapsedTime(oldest.Taken) > Remembered))
            {
                oldestFirst.Dequeue();
                known.Remove(oldest.Id);
            }

            if (!known.Add(interactionId))
            {
                return false;
            }

            oldestFirst.Enqueue((interactionId, time.GetTimestamp()));
            return true;
        }
    }
}
