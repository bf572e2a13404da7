namespace Quarterlight.Fuzz;

/// <summary>Picks the few inputs worth keeping for good: small ones that together reach the new edges.</summary>
internal static class Harvest
{
    /// <summary>Largest input worth keeping.</summary>
    public const int MostBytesEach = 6_000;

    /// <summary>Picks, smallest first.</summary>
    /// <param name="execute">Takes an input; false when it is a finding.</param>
    /// <param name="map">The coverage; is forgotten.</param>
    /// <param name="seeds">What is in the corpus.</param>
    /// <param name="candidates">What was kept.</param>
    /// <param name="mostBytes">Room there is.</param>
    public static List<byte[]> Pick(Func<byte[], bool> execute, CoverageMap map, IEnumerable<byte[]> seeds, IEnumerable<byte[]> candidates, long mostBytes)
    {
        map.Reset();
        foreach (byte[] seed in seeds)
        {
            _ = execute(seed);
            map.Keep();
        }

        var picked = new List<byte[]>();
        foreach (byte[] candidate in candidates.Where(c => c.Length <= MostBytesEach).OrderBy(c => c.Length).ThenBy(c => WorkFolder.NameOf(c), StringComparer.Ordinal))
        {
            if (candidate.Length <= mostBytes && execute(candidate) && map.News(ofEdgesOnly: true) is not null)
            {
                map.Keep();
                picked.Add(candidate);
                mostBytes -= candidate.Length;
            }
        }

        return picked;
    }
}
