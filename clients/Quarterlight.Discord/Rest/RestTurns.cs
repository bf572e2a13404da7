namespace Quarterlight.Discord.Rest;

/// <summary>Everything a request waits for before it goes out: its bucket, the bot's global limit, and a stop for all of them.</summary>
internal sealed class RestTurns
{
    private readonly RestClock clock;
    private readonly RestOptions options;
    private readonly RestMetrics metrics;
    private readonly RateBuckets buckets;
    private readonly GlobalLimit global;

    // Something before the platform said stop, by address: that holds for requests of every kind.
    private readonly GlobalLimit edge;

    public RestTurns(RestClock clock, RestOptions options, RestMetrics metrics)
    {
        this.clock = clock;
        this.options = options;
        this.metrics = metrics;
        buckets = new RateBuckets(clock);
        global = new GlobalLimit(clock, options.BotRequestsPerSecond);
        edge = new GlobalLimit(clock, int.MaxValue);
    }

    /// <summary>Buckets in memory.</summary>
    public int BucketCount => buckets.Count;

    /// <summary>A turn for a call; to be disposed of when the call is over.</summary>
    public RestTurn Begin(RestCall call) => new(this, call);

    /// <summary>The turn of one call. It keeps its place over all tries, so that a request sent again is not overtaken.</summary>
    internal sealed class RestTurn(RestTurns turns, RestCall call) : IDisposable
    {
        private RateBucket? bucket;

        private RestRoute Route => call.Route;

        /// <summary>Waits until the request may go out, and counts it.</summary>
        /// <exception cref="DiscordException"><see cref="DiscordFault.RateLimited"/>: that would be too long.</exception>
        public async Task WaitAsync(CancellationToken cancellation)
        {
            TimeSpan begun = turns.clock.Now;
            if (bucket is not null && !turns.buckets.Holds(Route, bucket))
            {
                Dispose();
            }

            TimeSpan patience = call.LastStart is { } last ? turns.clock.At(last) - begun : turns.options.LongestQueue;
            bucket ??= await turns.buckets.EnterAsync(Route, Shorter(patience, turns.options.LongestQueue), cancellation).ConfigureAwait(false)
                ?? throw TooLong("its turn behind other requests did not come in time");
            while (true)
            {
                TimeSpan wait = Longer(turns.buckets.Room(bucket), turns.edge.Left);
                if (wait > TimeSpan.Zero)
                {
                    if (wait > Patience())
                    {
                        throw TooLong("the limit lasts longer than may be waited");
                    }

                    await turns.clock.WaitAsync(wait, cancellation).ConfigureAwait(false);
                    continue;
                }

                if (!Route.IsBot)
                {
                    break;
                }

                TimeSpan slot = turns.global.Reserve(Patience()) ?? throw TooLong("the bot's global limit lasts longer than may be waited");
                await turns.clock.WaitAsync(slot, cancellation).ConfigureAwait(false);
                if (Longer(Longer(turns.buckets.Room(bucket), turns.edge.Left), turns.global.Left) == TimeSpan.Zero)
                {
                    break;
                }
            }

            turns.buckets.Spend(bucket);
            turns.metrics.Waited(Route, turns.clock.Now - begun);
        }

        /// <summary>Takes what the answer says about limits.</summary>
        /// <returns>For a 429: the scope and how long nothing goes out; null for anything else.</returns>
        public (string Scope, TimeSpan Wait)? Learn(RestOutcome outcome, Func<TimeSpan, TimeSpan> lengthen)
        {
            if (outcome.Status == 0)
            {
                Lost();
                return null;
            }

            turns.buckets.Learn(Route, bucket!, outcome.Limits);
            if (outcome.Status != 429)
            {
                return null;
            }

            RestError error = outcome.Error;
            TimeSpan wait = lengthen(error.RetryAfter ?? outcome.Limits.RetryAfter ?? outcome.Limits.ResetAfter ?? TimeSpan.FromSeconds(5));
            if (!error.IsJson)
            {
                turns.edge.Block(wait);
                return ("edge", wait);
            }

            if (Route.IsBot && (error.IsGlobal || outcome.Limits.IsGlobal || outcome.Limits.Scope == "global"))
            {
                turns.global.Block(wait);
                return ("global", wait);
            }

            turns.buckets.Block(bucket!, wait);
            return (outcome.Limits.Scope ?? "user", wait);
        }

        /// <summary>No answer came, or nobody waits for it any more.</summary>
        public void Lost()
        {
            if (bucket is not null)
            {
                turns.buckets.Lost(bucket);
            }
        }

        /// <summary>Gives the turn to the next.</summary>
        public void Dispose()
        {
            if (bucket is { } held)
            {
                bucket = null;
                turns.buckets.Exit(held);
            }
        }

        private TimeSpan Patience()
        {
            TimeSpan longest = turns.options.LongestWait;
            return call.LastStart is { } last ? Shorter(longest, turns.clock.At(last) - turns.clock.Now) : longest;
        }

        private DiscordException TooLong(string why) => new(DiscordFault.RateLimited, $"{Route}: {why}");
    }

    private static TimeSpan Longer(TimeSpan one, TimeSpan other) => one > other ? one : other;

    private static TimeSpan Shorter(TimeSpan one, TimeSpan other) => one < other ? one : other;
}
