namespace Quarterlight.Bench;

/// <summary>The plain reference: alike carriers upwards, and for each one tried all products of the set made and compared again.</summary>
internal static class PlainBacktracking
{
    /// <summary>Finds the first clean set, or null when there is none.</summary>
    public static long[]? Solve(int carriers, int channels, long stepHz, long spacingHz, long guardHz)
    {
        var set = new List<long>();
        return Place(set, 0, carriers, channels, stepHz, spacingHz, guardHz) ? [.. set] : null;
    }

    private static bool Place(List<long> set, int from, int carriers, int channels, long stepHz, long spacingHz, long guardHz)
    {
        if (set.Count == carriers)
        {
            return true;
        }

        for (int channel = from; channel < channels; channel++)
        {
            set.Add(channel * stepHz);
            if (Clean(set, spacingHz, guardHz) && Place(set, channel + 1, carriers, channels, stepHz, spacingHz, guardHz))
            {
                return true;
            }

            set.RemoveAt(set.Count - 1);
        }

        return false;
    }

    private static bool Clean(List<long> f, long spacingHz, long guardHz)
    {
        if (f.Count > 1 && f[^1] - f[^2] < spacingHz)
        {
            return false;
        }

        for (int a = 0; a < f.Count; a++)
        {
            for (int b = 0; b < f.Count; b++)
            {
                for (int c = 0; c < f.Count; c++)
                {
                    // a == b is 2A-C; a carrier less itself is no product.
                    if (c != a && c != b && Hits(f, f[a] + f[b] - f[c], guardHz))
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }

    private static bool Hits(List<long> f, long productHz, long guardHz)
    {
        foreach (long victim in f)
        {
            if (Math.Abs(productHz - victim) < guardHz)
            {
                return true;
            }
        }

        return false;
    }
}
