namespace Quarterlight.Chat.Emulator.World;

/// <summary>Makes ids as the platform does: milliseconds since its epoch above bit 22, a counter below (API reference, Snowflakes).</summary>
internal sealed class Snowflakes(TimeProvider time)
{
    private const long EpochMs = 1_420_070_400_000;
    private const int TimeShift = 22;
    private long made;

    /// <summary>An id nobody has.</summary>
    public ulong Next()
    {
        ulong counter = (ulong)Interlocked.Increment(ref made) & ((1UL << TimeShift) - 1);
        return ((ulong)(time.GetUtcNow().ToUnixTimeMilliseconds() - EpochMs) << TimeShift) | counter;
    }
}
