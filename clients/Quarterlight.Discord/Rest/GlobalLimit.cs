namespace Quarterlight.Discord.Rest;

/// <summary>The bot's global limit: no more than so many requests in any second (Rate Limits, Global Rate Limit), and none while the platform says so.</summary>
internal sealed class GlobalLimit(RestClock clock, int perSecond)
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);

    private readonly Lock sync = new();
    private readonly Queue<TimeSpan> slots = [];
    private TimeSpan blocked;

    /// <summary>Reserves the next free moment, in the order of asking.</summary>
    /// <returns>Time until then; null when that is longer than allowed, and nothing is reserved.</returns>
    public TimeSpan? Reserve(TimeSpan longest)
    {
        lock (sync)
        {
            TimeSpan now = clock.Now;
            TimeSpan slot = blocked > now ? blocked : now;
            if (slots.Count >= perSecond && slots.Peek() + Second > slot)
            {
                slot = slots.Peek() + Second;
            }

            if (slot > now && slot - now > longest)
            {
                return null;
            }

            slots.Enqueue(slot);
            while (slots.Count > perSecond)
            {
                slots.Dequeue();
            }

            return slot - now;
        }
    }

    /// <summary>Time until a stop is over; zero when there is none.</summary>
    public TimeSpan Left
    {
        get
        {
            lock (sync)
            {
                TimeSpan now = clock.Now;
                return blocked > now ? blocked - now : TimeSpan.Zero;
            }
        }
    }

    /// <summary>Nothing goes out for a while.</summary>
    public void Block(TimeSpan wait)
    {
        lock (sync)
        {
            TimeSpan until = clock.Now + wait;
            blocked = until > blocked ? until : blocked;
        }
    }
}
