namespace Quarterlight.Radio.Channels;

/// <summary>Which channels lie too near to something.</summary>
internal static class ChannelSpan
{
    /// <summary>The channels x with |k x - r| below the guard, as numbers from the first, inclusive, to the last, exclusive.</summary>
    public static (int From, int To) Within(CandidateGrid grid, int k, long rHz, long guardHz)
    {
        long low = rHz - guardHz + 1, high = rHz + guardHz;
        if (high <= k * grid.LowHz || low > k * grid.HighHz)
        {
            return (0, 0);
        }

        // Both are positive here, so that division rounds down; adding k - 1 rounds it up.
        return (grid.FirstAtOrAbove((Math.Max(low, 0) + k - 1) / k), grid.FirstAtOrAbove((high + k - 1) / k));
    }
}
