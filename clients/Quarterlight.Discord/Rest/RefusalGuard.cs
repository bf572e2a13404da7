namespace Quarterlight.Discord.Rest;

/// <summary>Counts refused requests of the last 10 minutes, in steps of 10 s: the platform shuts an address out that makes too many (Rate Limits, Invalid Request Limit).</summary>
internal sealed class RefusalGuard(RestClock clock, int limit)
{
    private const int Steps = 61;
    private static readonly TimeSpan Step = TimeSpan.FromSeconds(10);

    private readonly Lock sync = new();
    private readonly int[] counts = new int[Steps];
    private long newest;
    private int sum;
    private bool told;

    /// <summary>Refusals of the last 10 minutes.</summary>
    public int Count
    {
        get
        {
            lock (sync)
            {
                Advance();
                return sum;
            }
        }
    }

    /// <summary>True while nothing may be sent.</summary>
    public bool IsShut => Count >= limit;

    /// <summary>Counts one.</summary>
    /// <returns>True when it is the one that shuts, to be told once.</returns>
    public bool Add()
    {
        lock (sync)
        {
            Advance();
            counts[newest % Steps]++;
            sum++;
            if (sum < limit || told)
            {
                return false;
            }

            return told = true;
        }
    }

    private void Advance()
    {
        long step = (long)(clock.Now / Step);
        for (int i = 0; newest < step && i < Steps; i++)
        {
            newest++;
            sum -= counts[newest % Steps];
            counts[newest % Steps] = 0;
        }

        newest = step;
        told &= sum >= limit;
    }
}
