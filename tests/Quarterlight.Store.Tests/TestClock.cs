namespace Quarterlight.Store.Tests;

/// <summary>A clock that stands still until it is moved.</summary>
public sealed class TestClock : TimeProvider
{
    private DateTimeOffset _now = new DateTimeOffset(2031, 3, 4, 5, 6, 7, TimeSpan.Zero).AddTicks(1234567);

    public override DateTimeOffset GetUtcNow() => _now;

    public void Advance(TimeSpan by) => _now += by;
}
