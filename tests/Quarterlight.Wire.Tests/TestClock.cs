namespace Quarterlight.Wire.Tests;

/// <summary>A clock that stands still until it is moved.</summary>
public sealed class TestClock : TimeProvider
{
    private DateTimeOffset _now = new(2031, 3, 4, 5, 6, 7, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => _now;

    public void Advance(TimeSpan by) => _now += by;
}
