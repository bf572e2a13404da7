namespace Quarterlight.Drawing;

/// <summary>Spreads labels along a line so that they keep apart and stay as near as can be to what they name.</summary>
internal static class LabelRow
{
    /// <summary>Centres of labels, in the order given, each at least a pitch from the next and inside the bounds.</summary>
    /// <param name="wanted">Where each would like to be, rising, pixels.</param>
    /// <param name="pitch">Least distance between neighbouring centres; made smaller when there is no room for it.</param>
    /// <param name="low">Least centre.</param>
    /// <param name="high">Greatest centre.</param>
    /// <remarks>
    /// Least sum of squared moves: with z = wanted - i pitch the centres must rise, which is isotonic regression, solved by
    /// pooling neighbours that break the order; clamping the pooled values to the bounds keeps it the best.
    /// </remarks>
    public static IReadOnlyList<float> Spread(IReadOnlyList<float> wanted, float pitch, float low, float high)
    {
        if (wanted.Count == 0)
        {
            return [];
        }

        float step = wanted.Count > 1 ? Math.Min(pitch, (high - low) / (wanted.Count - 1)) : 0;
        var pools = new List<(double Sum, int Count)>();
        for (int i = 0; i < wanted.Count; i++)
        {
            pools.Add((wanted[i] - (i * step), 1));
            while (pools.Count > 1 && pools[^2].Sum / pools[^2].Count > pools[^1].Sum / pools[^1].Count)
            {
                pools[^2] = (pools[^2].Sum + pools[^1].Sum, pools[^2].Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }
        }

        float last = high - ((wanted.Count - 1) * step);
        var places = new List<float>(wanted.Count);
        foreach ((double sum, int count) in pools)
        {
            float z = Math.Clamp((float)(sum / count), low, Math.Max(low, last));
            for (int k = 0; k < count; k++)
            {
                places.Add(z + (places.Count * step));
            }
        }

        return places;
    }
}
