using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.SoundField;

/// <summary>One image of any source: where it lands and what its reflections took away.</summary>
internal readonly record struct ImageCell(
    double SignX, double SignY, double SignZ, double OffsetX, double OffsetY, double OffsetZ, int Order, int FirstFace, BandVector Kept);

/// <summary>
/// All mirror images of a box up to an order, worked out once for a room and then used for every source and receiver.
/// </summary>
/// <remarks>
/// Allen and Berkley 1979, J. Acoust. Soc. Am. 65(4) 943-950: an image lies at (1-2p) s + 2 n L in each coordinate, hits
/// the near wall |n-p| times and the far wall |n| times. Energies: 1 - absorption per hit.
/// </remarks>
public sealed class ImageLattice
{
    /// <summary>Highest order supported.</summary>
    public const int HighestOrder = 12;

    private readonly ImageCell[] _cells;

    /// <summary>Builds the images of a room up to an order, 0 (direct only) to <see cref="HighestOrder"/>.</summary>
    public ImageLattice(ShoeboxRoom room, int maxOrder)
    {
        ArgumentNullException.ThrowIfNull(room);
        ArgumentOutOfRangeException.ThrowIfNegative(maxOrder);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(maxOrder, HighestOrder);
        Room = room;
        MaxOrder = maxOrder;
        Vector3D size = room.Box.Size, origin = room.Box.Min;
        var cells = new List<ImageCell>();
        int reach = (maxOrder / 2) + 1;
        for (int i = -reach; i <= reach; i++)
        {
            for (int j = -reach; j <= reach; j++)
            {
                for (int k = -reach; k <= reach; k++)
                {
                    for (int flips = 0; flips < 8; flips++)
                    {
                        int p = flips & 1, q = (flips >> 1) & 1, r = flips >> 2;
                        ReadOnlySpan<int> hits = [Math.Abs(i - p), Math.Abs(i), Math.Abs(j - q), Math.Abs(j), Math.Abs(k - r), Math.Abs(k)];
                        int order = hits[0] + hits[1] + hits[2] + hits[3] + hits[4] + hits[5];
                        if (order <= maxOrder)
                        {
                            cells.Add(Cell(room, size, origin, (i, j, k), (p, q, r), hits, order));
                        }
                    }
                }
            }
        }

        cells.Sort((a, b) => a.Order.CompareTo(b.Order));
        _cells = [.. cells];
        Tail = room.TailEnergy(maxOrder + 1);
    }

    /// <summary>The room.</summary>
    public ShoeboxRoom Room { get; }

    /// <summary>Highest order of the images.</summary>
    public int MaxOrder { get; }

    /// <summary>Number of images, the source itself included.</summary>
    public int Count => _cells.Length;

    /// <summary>Diffuse energy above the last order, per unit of an omnidirectional source's energy at 1 m.</summary>
    public BandVector Tail { get; }

    internal ReadOnlySpan<ImageCell> Cells => _cells;

    private static ImageCell Cell(
        ShoeboxRoom room, Vector3D size, Vector3D origin, (int X, int Y, int Z) n, (int X, int Y, int Z) flip, ReadOnlySpan<int> hits, int order)
    {
        Span<double> kept = stackalloc double[BandVector.Lanes];
        int firstFace = -1;
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            kept[b] = 1;
        }

        for (int f = 0; f < 6; f++)
        {
            firstFace = hits[f] > 0 ? f : firstFace;
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                kept[b] *= Math.Pow(1 - room.AbsorptionAt(f, b), hits[f]);
            }
        }

        // In car coordinates: x' = o + (1-2p)(s - o) + 2 n L = (1-2p) s + 2 p o + 2 n L.
        return new ImageCell(
            1 - (2 * flip.X),
            1 - (2 * flip.Y),
            1 - (2 * flip.Z),
            (2 * n.X * size.X) + (2 * flip.X * origin.X),
            (2 * n.Y * size.Y) + (2 * flip.Y * origin.Y),
            (2 * n.Z * size.Z) + (2 * flip.Z * origin.Z),
            order,
            firstFace,
            BandVector.Load(kept));
    }
}
