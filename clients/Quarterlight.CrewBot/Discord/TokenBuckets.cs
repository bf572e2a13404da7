namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// Questions by key (a user, a team), each with a bucket that refills steadily. Our own few lines and not System.Threading.RateLimiting because that
/// reads its own clock, so that nobody could test when it lets a question in again. Bounded; safe for many at once.
/// </summary>
internal sealed class TokenBuckets(AskingRate rate, TimeProvider time, int most)
{
    private readonly Dictionary<ulong, (double Tokens, long At)> buckets = [];
    private readonly Lock gate = new();

    /// <summary>Takes one; zero when there was one, else how long until there is.</summary>
    public TimeSpan Take(ulong key)
    {
        lock (gate)
        {
            double tokens = Now(key);
            if (tokens >= 1)
            {
                Keep(key, tokens - 1);
                return TimeSpan.Zero;
            }

            return TimeSpan.FromMinutes((1 - tokens) / rate.PerMinute);
        }
    }

    /// <summary>Gives one back that was taken in vain.</summary>
    public void GiveBack(ulong key)
    {
        lock (gate)
        {
            Keep(key, Math.Min(rate.AtOnce, Now(key) + 1));
        }
    }

    private double Now(ulong key) => buckets.TryGetValue(key, out (double Tokens, long At) bucket)
        ? Math.Min(rate.AtOnce, bucket.Tokens + (time.GetElapsedTime(bucket.At).TotalMinutes * rate.PerMinute))
        : rate.AtOnce;

    private void Keep(ulong key, double tokens)
    {
        if (buckets.Count >= most && !buckets.ContainsKey(key))
        {
            // A full bucket is as good as none. If all are in use, nobody may flood us by coming under ever new names: the oldest goes.
            foreach (ulong full in buckets.Keys.Where(k => Now(k) >= rate.AtOnce).ToArray())
            {
                buckets.Remove(full);
            }

            if (buckets.Count >= most)
            {
                buckets.Remove(buckets.MinBy(b => b.Value.At).Key);
            }
        }

        buckets[key] = (tokens, time.GetTimestamp());
    }
}
