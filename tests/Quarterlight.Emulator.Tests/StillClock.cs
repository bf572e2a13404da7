using Quarterlight.Chat.Emulator;

namespace Quarterlight.Emulator.Tests;

/// <summary>A clock that stands still: only what puts the emulator's clock forward moves it, however slow the machine is.</summary>
internal sealed class StillClock : TimeProvider
{
    public static PlatformOptions Options => new() { Time = new StillClock() };

    public override DateTimeOffset GetUtcNow() => new(2026, 1, 2, 3, 4, 5, TimeSpan.Zero);

    public override long GetTimestamp() => 0;
}
