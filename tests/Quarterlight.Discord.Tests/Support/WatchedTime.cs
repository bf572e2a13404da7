using System.Collections.Concurrent;
using Microsoft.Extensions.Time.Testing;

namespace Quarterlight.Discord.Tests.Support;

/// <summary>Time that stands still until told to move, and that shows which timers wait: so a test moves on only when the code is there.</summary>
internal sealed class WatchedTime : FakeTimeProvider
{
    private readonly ConcurrentDictionary<WatchedTimer, DateTimeOffset> waiting = new();

    public WatchedTime()
        : base(new DateTimeOffset(2031, 5, 4, 9, 0, 0, TimeSpan.Zero))
    {
    }

    /// <summary>Time since the start of the test.</summary>
    public TimeSpan Passed => GetUtcNow() - Start;

    /// <summary>What every waiting timer still has to wait, shortest first.</summary>
    public IReadOnlyList<TimeSpan> Waiting => [.. waiting.Values.Select(due => due - GetUtcNow()).Order()];

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new WatchedTimer(this);
        timer.Inner = base.CreateTimer(
            s =>
            {
                timer.Fired();
                callback(s);
            },
            state, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        timer.Change(dueTime, period);
        return timer;
    }

    /// <summary>Waits until a timer has this long to wait, then lets it.</summary>
    public async Task PassAsync(TimeSpan wait)
    {
        await Eventually.TrueAsync(() => Waiting.Any(w => Near(w, wait)), () => $"no timer waits for {wait}, but for {string.Join(", ", Waiting)}");
        Advance(Waiting.First(w => Near(w, wait)));
    }

    private static bool Near(TimeSpan one, TimeSpan other) => Math.Abs((one - other).TotalMilliseconds) < 1.5;

    private sealed class WatchedTimer(WatchedTime time) : ITimer
    {
        private volatile bool fired;

        public ITimer? Inner { get; set; }

        public void Fired()
        {
            fired = true;
            time.waiting.TryRemove(this, out _);
        }

        // Shown only once it is set: a test that sees it may let it pass at once.
        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            fired = false;
            time.waiting.TryRemove(this, out _);
            bool changed = Inner!.Change(dueTime, period);
            if (dueTime != Timeout.InfiniteTimeSpan)
            {
                time.waiting[this] = time.GetUtcNow() + dueTime;
                if (fired)
                {
                    time.waiting.TryRemove(this, out _);
                }
            }

            return changed;
        }

        public void Dispose()
        {
            time.waiting.TryRemove(this, out _);
            Inner!.Dispose();
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return default;
        }
    }
}
