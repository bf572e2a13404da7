using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>
/// A thousand directions spread evenly over the sphere (golden-angle spiral), each with its nearest neighbours, so that an
/// aim can be climbed to instead of scanned.
/// </summary>
public static class AimGrid
{
    /// <summary>Number of directions; neighbours are about 6 degrees apart.</summary>
    public const int Count = 1000;

    internal const int NeighbourCount = 8;

    private const int CoarseStep = 20;

    private static readonly Vector3D[] s_directions = MakeDirections();
    private static readonly int[] s_neighbours = MakeNeighbours();
    private static readonly int[] s_coarse = [.. Enumerable.Range(0, Count / CoarseStep).Select(i => (i * CoarseStep) + (CoarseStep / 2))];

    /// <summary>The directions, unit vectors.</summary>
    public static ReadOnlySpan<Vector3D> Directions => s_directions;

    /// <summary>Fifty of them, themselves spread over the sphere.</summary>
    internal static ReadOnlySpan<int> Coarse => s_coarse;

    internal static ReadOnlySpan<int> NeighboursOf(int direction) => s_neighbours.AsSpan(direction * NeighbourCount, NeighbourCount);

    /// <summary>Number of the direction nearest to a unit vector.</summary>
    public static int NearestTo(Vector3D direction)
    {
        // Walk from a good start over the neighbour graph: the cosine has one maximum on the sphere.
        int at = 0;
        double best = double.NegativeInfinity;
        foreach (int i in s_coarse)
        {
            double dot = s_directions[i].Dot(direction);
            if (dot > best)
            {
                (best, at) = (dot, i);
            }
        }

        while (true)
        {
            int from = at;
            foreach (int n in NeighboursOf(from))
            {
                double dot = s_directions[n].Dot(direction);
                if (dot > best)
                {
                    (best, at) = (dot, n);
                }
            }

            if (at == from)
            {
                return at;
            }
        }
    }

    private static Vector3D[] MakeDirections()
    {
        double golden = Math.PI * (3 - Math.Sqrt(5));
        var directions = new Vector3D[Count];
        for (int i = 0; i < Count; i++)
        {
            double z = 1 - (((2 * i) + 1.0) / Count);
            double r = Math.Sqrt(1 - (z * z));
            directions[i] = new Vector3D(r * Math.Cos(golden * i), r * Math.Sin(golden * i), z);
        }

        return directions;
    }

    private static int[] MakeNeighbours()
    {
        var all = new int[Count * NeighbourCount];
        Span<int> nearest = stackalloc int[NeighbourCount];
        Span<double> dots = stackalloc double[NeighbourCount];
        for (int i = 0; i < Count; i++)
        {
            dots.Fill(double.NegativeInfinity);
            for (int j = 0; j < Count; j++)
            {
                double dot = s_directions[i].Dot(s_directions[j]);
                if (j == i || dot <= dots[^1])
                {
                    continue;
                }

                int at = NeighbourCount - 1;
                while (at > 0 && dots[at - 1] < dot)
                {
                    dots[at] = dots[at - 1];
                    nearest[at] = nearest[at - 1];
                    at--;
                }

                dots[at] = dot;
                nearest[at] = j;
            }

            nearest.CopyTo(all.AsSpan(i * NeighbourCount));
        }

        return all;
    }
}
