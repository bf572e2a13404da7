namespace Quarterlight.Discord.Rest;

/// <summary>
/// All buckets (Rate Limits): a route belongs to the bucket the platform names in its answers, apart for each top-level resource. Until a route has
/// been answered once it has a bucket of its own, whose requests go one after the other; when the name is known it becomes the named one.
/// </summary>
internal sealed class RateBuckets(RestClock clock)
{
    private static readonly TimeSpan Idle = TimeSpan.FromMinutes(1);
    private const int SweepEvery = 64;

    private readonly Lock sync = new();
    private readonly Dictionary<string, RateBucket> table = [];
    private readonly Dictionary<string, string> names = [];
    private int untilSweep = SweepEvery;

    /// <summary>Buckets in memory.</summary>
    public int Count
    {
        get
        {
            lock (sync)
            {
                return table.Count;
            }
        }
    }

    /// <summary>Waits for the turn in the route's bucket.</summary>
    /// <returns>The bucket, to be given back with <see cref="Exit"/>; null when the turn did not come in time.</returns>
    public async Task<RateBucket?> EnterAsync(RestRoute route, TimeSpan longest, CancellationToken cancellation)
    {
        TimeSpan until = clock.Now + longest;
        while (true)
        {
            RateBucket bucket;
            lock (sync)
            {
                bucket = Find(route);
                bucket.Users++;
            }

            bool entered = false;
            try
            {
                entered = await bucket.Gate.EnterAsync(until - clock.Now, cancellation).ConfigureAwait(false);
            }
            finally
            {
                if (!entered)
                {
                    Leave(bucket);
                }
            }

            if (!entered)
            {
                return null;
            }

            if (Holds(route, bucket))
            {
                return bucket;
            }

            // While we waited the route turned out to belong elsewhere.
            Exit(bucket);
        }
    }

    /// <summary>Gives the bucket to the next.</summary>
    public void Exit(RateBucket bucket)
    {
        bucket.Gate.Exit();
        Leave(bucket);
    }

    /// <summary>True while the route belongs to this bucket.</summary>
    public bool Holds(RestRoute route, RateBucket bucket)
    {
        lock (sync)
        {
            return ReferenceEquals(Find(route), bucket);
        }
    }

    /// <summary>Time until a request may be sent; zero when it may now.</summary>
    public TimeSpan Room(RateBucket bucket)
    {
        lock (sync)
        {
            return bucket.Room(clock.Now);
        }
    }

    /// <summary>A request goes out.</summary>
    public void Spend(RateBucket bucket)
    {
        lock (sync)
        {
            bucket.Spend();
        }
    }

    /// <summary>No answer came.</summary>
    public void Lost(RateBucket bucket)
    {
        lock (sync)
        {
            bucket.Lost(clock.Now);
        }
    }

    /// <summary>Nothing of this bucket goes out for a while.</summary>
    public void Block(RateBucket bucket, TimeSpan wait)
    {
        lock (sync)
        {
            bucket.Block(clock.Now + wait);
        }
    }

    /// <summary>Takes what an answer said.</summary>
    public void Learn(RestRoute route, RateBucket bucket, LimitHeaders headers)
    {
        lock (sync)
        {
            RateBucket named = bucket;
            if (headers.Bucket is { } name)
            {
                names[NameKey(route)] = name;
                string key = $"{name}|{route.Top}";
                if (bucket.Key != key)
                {
                    named = Rename(bucket, key);
                }
            }

            named.Learn(headers, clock.Now, ReferenceEquals(named, bucket));
        }
    }

    private RateBucket Rename(RateBucket bucket, string key)
    {
        if (bucket.Provisional)
        {
            table.Remove(bucket.Key);
        }

        if (table.TryGetValue(key, out RateBucket? other))
        {
            return other;
        }

        if (bucket.Provisional)
        {
            bucket.Key = key;
            bucket.Provisional = false;
            table[key] = bucket;
            return bucket;
        }

        return table[key] = new RateBucket(key, provisional: false, clock.Time);
    }

    private RateBucket Find(RestRoute route)
    {
        string own = $"?{NameKey(route)}|{route.Top}";
        if (table.TryGetValue(own, out RateBucket? bucket))
        {
            return bucket;
        }

        bool known = names.TryGetValue(NameKey(route), out string? name);
        string key = known ? $"{name}|{route.Top}" : own;
        if (!table.TryGetValue(key, out bucket))
        {
            table[key] = bucket = new RateBucket(key, !known, clock.Time);
        }

        return bucket;
    }

    private void Leave(RateBucket bucket)
    {
        lock (sync)
        {
            bucket.Users--;
            bucket.LastUse = clock.Now;
            if (bucket.Forgettable(clock.Now, Idle))
            {
                Forget(bucket);
            }

            if (--untilSweep <= 0)
            {
                // The more there are the rarer a sweep, so that a sweep costs little a request.
                foreach (RateBucket idle in table.Values.Where(b => b.Forgettable(clock.Now, Idle)).ToArray())
                {
                    Forget(idle);
                }

                untilSweep = Math.Max(SweepEvery, table.Count);
            }
        }
    }

    private void Forget(RateBucket bucket)
    {
        if (table.TryGetValue(bucket.Key, out RateBucket? kept) && ReferenceEquals(kept, bucket))
        {
            table.Remove(bucket.Key);
        }
    }

    private static string NameKey(RestRoute route) => $"{route.Method} {route.Template}";
}
