namespace Quarterlight.Discord.Rest;

/// <summary>One bucket of requests: who is next, and what is known of its limit. Only <see cref="RateBuckets"/> touches it, under its lock.</summary>
internal sealed class RateBucket(string key, bool provisional, TimeProvider time)
{
    private int? limit;
    private int remaining;
    private TimeSpan reset;
    private TimeSpan window;
    private TimeSpan blocked;

    /// <summary>Name in the table.</summary>
    public string Key { get; set; } = key;

    /// <summary>True until the platform has named it.</summary>
    public bool Provisional { get; set; } = provisional;

    /// <summary>Requests that hold it or wait for it.</summary>
    public int Users { get; set; }

    /// <summary>When it was last let go.</summary>
    public TimeSpan LastUse { get; set; }

    /// <summary>One request at a time, in order.</summary>
    public FifoGate Gate { get; } = new(time);

    /// <summary>Time until a request may be sent; zero for now.</summary>
    public TimeSpan Room(TimeSpan now)
    {
        if (blocked > now)
        {
            return blocked - now;
        }

        if (limit is { } full && reset <= now)
        {
            // What begins now is taken to last as long as the longest window seen, until an answer says better.
            remaining = full;
            reset = now + window;
        }

        return limit is null || remaining > 0 ? TimeSpan.Zero : reset - now;
    }

    /// <summary>A request goes out.</summary>
    public void Spend() => remaining--;

    /// <summary>No answer came: the request may have opened a new window anywhere up to now.</summary>
    public void Lost(TimeSpan now) => reset = Later(reset, limit is null ? TimeSpan.Zero : now + window);

    /// <summary>Nothing goes out before.</summary>
    public void Block(TimeSpan until) => blocked = Later(blocked, until);

    /// <summary>Takes what an answer said. <paramref name="own"/> is false when the answer was to a request that was not counted here: then only the worse is believed.</summary>
    public void Learn(LimitHeaders headers, TimeSpan now, bool own)
    {
        if (headers is not { Limit: { } said and > 0, Remaining: { } left, ResetAfter: { } after })
        {
            return;
        }

        bool known = limit is not null;
        limit = said;
        window = Later(window, after);
        remaining = own || !known ? left : Math.Min(remaining, left);
        reset = own || !known ? now + after : Later(reset, now + after);
    }

    /// <summary>True when nothing is lost by forgetting it.</summary>
    public bool Forgettable(TimeSpan now, TimeSpan idle) =>
        Users == 0 && blocked <= now && (limit is null || (reset <= now && LastUse + idle <= now));

    private static TimeSpan Later(TimeSpan one, TimeSpan other) => one > other ? one : other;
}
