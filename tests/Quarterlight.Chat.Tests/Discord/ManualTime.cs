namespace Quarterlight.Chat.Tests.Discord;

/// <summary>A clock that stands until it is moved, with timers that fire when it passes them.</summary>
internal sealed class ManualTime : TimeProvider
{
    private readonly Lock gate = new();
    private readonly List<ManualTimer> timers = [];
    private TimeSpan now;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override DateTimeOffset GetUtcNow() => new DateTimeOffset(2030, 1, 1, 0, 0, 0, TimeSpan.Zero) + Now;

    public override long GetTimestamp() => Now.Ticks;

    public TimeSpan Now
    {
        get
        {
            lock (gate)
            {
                return now;
            }
        }
    }

    public void Advance(TimeSpan by)
    {
        List<ManualTimer> due;
        lock (gate)
        {
            now += by;
            due = [.. timers.Where(t => t.Due <= now)];
            due.ForEach(t => timers.Remove(t));
        }

        due.ForEach(t => t.Fire());
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new ManualTimer(this, callback, state);
        timer.Change(dueTime, period);
        return timer;
    }

    private sealed class ManualTimer(ManualTime time, TimerCallback callback, object? state) : ITimer
    {
        public TimeSpan Due { get; private set; }

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            bool now = false;
            lock (time.gate)
            {
                time.timers.Remove(this);
                if (dueTime == Timeout.InfiniteTimeSpan)
                {
                    return true;
                }

                Due = time.now + dueTime;
                now = dueTime <= TimeSpan.Zero;
                if (!now)
                {
                    time.timers.Add(this);
                }
            }

            if (now)
            {
                ThreadPool.QueueUserWorkItem(_ => Fire());
            }

            return true;
        }

        public void Fire() => callback(state);

        public void Dispose()
        {
            lock (time.gate)
            {
                time.timers.Remove(this);
            }
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
