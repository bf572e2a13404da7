namespace Quarterlight.Discord.Rest;

/// <summary>Time since the start on the monotonic clock, and waits on it: the wall clock of a laptop on set is often wrong.</summary>
internal sealed class RestClock(TimeProvider time)
{
    private readonly long start = time.GetTimestamp();

    /// <summary>Where the time comes from.</summary>
    public TimeProvider Time => time;

    /// <summary>Time since the start.</summary>
    public TimeSpan Now => time.GetElapsedTime(start);

    /// <summary>A timestamp of the <see cref="TimeProvider"/> as time since the start.</summary>
    public TimeSpan At(long timestamp) => time.GetElapsedTime(start, timestamp);

    /// <summary>Waits, in whole milliseconds rounded up: timers drop the rest and would be early.</summary>
    public Task WaitAsync(TimeSpan span, CancellationToken cancellation) => span > TimeSpan.Zero ? Task.Delay(TimeSpan.FromMilliseconds(Math.Ceiling(span.TotalMilliseconds)), time, cancellation) : Task.CompletedTask;
}
