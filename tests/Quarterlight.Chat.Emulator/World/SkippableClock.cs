namespace Quarterlight.Chat.Emulator.World;

/// <summary>A clock that runs as another one does, and can be put forward: the three seconds and the fifteen minutes of an interaction need no waiting.</summary>
/// <param name="inner">The clock below.</param>
public sealed class SkippableClock(TimeProvider inner) : TimeProvider
{
    private long skippedTicks;

    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => inner.LocalTimeZone;

    /// <inheritdoc/>
    public override long TimestampFrequency => inner.TimestampFrequency;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => inner.GetUtcNow().AddTicks(Interlocked.Read(ref skippedTicks));

    /// <inheritdoc/>
    public override long GetTimestamp() =>
        inner.GetTimestamp() + (long)(Interlocked.Read(ref skippedTicks) * ((double)inner.TimestampFrequency / TimeSpan.TicksPerSecond));

    /// <summary>Puts the clock forward. Timers are not moved: only what reads the time sees it.</summary>
    /// <param name="by">How far; not negative.</param>
    public void Advance(TimeSpan by)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(by, TimeSpan.Zero);
        Interlocked.Add(ref skippedTicks, by.Ticks);
    }
}
