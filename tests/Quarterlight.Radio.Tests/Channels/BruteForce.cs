using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

/// <summary>The plainest possible answer, written from the definitions alone: every choice of channels, every product, every victim.</summary>
internal static class BruteForce
{
    public static bool Clean(IReadOnlyList<long> own, IReadOnlyList<long> neighbours, CoordinationLimits limits)
    {
        long[] all = [.. own, .. neighbours];
        for (int i = 0; i < own.Count; i++)
        {
            for (int j = 0; j < all.Length; j++)
            {
                if (j != i && Math.Abs(all[i] - all[j]) < limits.MinSpacingHz)
                {
                    return false;
                }
            }
        }

        return Hits(own, neighbours, limits) == 0;
    }

    public static int Hits(IReadOnlyList<long> own, IReadOnlyList<long> neighbours, CoordinationLimits limits)
    {
        long[] all = [.. own, .. neighbours];
        int hits = 0;
        void Product(long hz, long guardHz, params int[] members)
        {
            for (int v = 0; v < all.Length; v++)
            {
                bool concernsUs = v < own.Count || members.Any(m => m < own.Count);
                hits += concernsUs && Math.Abs(hz - all[v]) < Math.Max(1, guardHz) ? 1 : 0;
            }
        }

        for (int a = 0; a < all.Length; a++)
        {
            for (int b = 0; b < all.Length; b++)
            {
                if (a == b)
                {
                    continue;
                }

                Product(all[a] + all[a] - all[b], limits.ThirdOrderGuardHz, a, b);
                if (limits.FifthOrder != FifthOrderScope.None)
                {
                    Product((3 * all[a]) - (2 * all[b]), limits.FifthOrderGuardHz, a, b);
                }

                for (int c = 0; c < all.Length; c++)
                {
                    if (c == a || c == b)
                    {
                        continue;
                    }

                    if (a < b)
                    {
                        Product(all[a] + all[b] - all[c], limits.ThirdOrderGuardHz, a, b, c);
                    }

                    if (limits.FifthOrder == FifthOrderScope.TwoAndThreeSignal)
                    {
                        if (b < c)
                        {
                            Product((3 * all[a]) - all[b] - all[c], limits.FifthOrderGuardHz, a, b, c);
                        }

                        Product((2 * all[a]) + all[b] - (2 * all[c]), limits.FifthOrderGuardHz, a, b, c);
                    }
                }
            }
        }

        return hits;
    }

    /// <summary>How many transmitters the largest clean set holds.</summary>
    public static int Largest(CoordinationTask task)
    {
        long[] neighbours = [.. task.Neighbours.Select(n => n.FrequencyHz)];
        long[][] channels = [.. task.Transmitters.Select(t => Channels(t, task))];
        int best = 0;
        var own = new List<long>();
        void Choose(int t)
        {
            // A set with a hit stays one whatever is added: a product and its victim do not go away.
            if (own.Count + channels.Length - t <= best || !Clean(own, neighbours, task.Limits))
            {
                return;
            }

            if (t == channels.Length)
            {
                best = own.Count;
                return;
            }

            foreach (long hz in channels[t])
            {
                own.Add(hz);
                Choose(t + 1);
                own.RemoveAt(own.Count - 1);
            }

            Choose(t + 1);
        }

        Choose(0);
        return best;
    }

    /// <summary>Fewest hits of all ways to give everybody a channel at the spacing; null when there is no way.</summary>
    public static int? FewestHits(CoordinationTask task)
    {
        long[] neighbours = [.. task.Neighbours.Select(n => n.FrequencyHz)];
        long[][] channels = [.. task.Transmitters.Select(t => Channels(t, task))];
        int? fewest = null;
        long[] own = new long[channels.Length];
        void Choose(int t)
        {
            if (t == channels.Length)
            {
                int hits = Hits(own, neighbours, task.Limits);
                fewest = Math.Min(fewest ?? hits, hits);
                return;
            }

            foreach (long hz in channels[t])
            {
                if (own.Take(t).Concat(neighbours).All(o => Math.Abs(o - hz) >= task.Limits.MinSpacingHz))
                {
                    own[t] = hz;
                    Choose(t + 1);
                }
            }
        }

        Choose(0);
        return fewest;
    }

    public static long[] Channels(ChannelTransmitter t, CoordinationTask task)
    {
        var set = new SortedSet<long>();
        foreach (TuningRange range in t.TuningRanges)
        {
            for (int i = 0; range.LowHz + (i * t.StepHz) <= range.HighHz; i++)
            {
                set.Add(range.LowHz + (i * t.StepHz));
            }
        }

        return t.FixedHz is long hz ? [hz] : [.. set.Where(f => !task.ExcludedBlocks.Any(b => b.LowHz <= f && f <= b.HighHz))];
    }
}
