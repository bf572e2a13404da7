using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>
/// Finds room for labels near what they name: tries places around the anchor, nearer first, and takes the one that costs
/// least. Labels never cover each other while there is room; covering a symbol or crossing a leader line costs.
/// </summary>
internal sealed class LabelPlacer(SKRect frame)
{
    private const int Directions = 24;
    private const float Gap = 5;
    private readonly List<SKRect> taken = [];
    private readonly List<(SKRect Box, float Weight)> obstacles = [];
    private readonly List<(SKPoint From, SKPoint To)> leaders = [];

    /// <summary>Marks a box no label may touch.</summary>
    public void Take(SKRect box) => taken.Add(box);

    /// <summary>Marks a box labels should keep off.</summary>
    /// <param name="box">Pixels.</param>
    /// <param name="weight">What it costs to cover it whole, in pixels of extra distance.</param>
    public void Avoid(SKRect box, float weight) => obstacles.Add((box, weight));

    /// <summary>Finds and takes a place for a label.</summary>
    /// <param name="anchor">What the label names, pixels.</param>
    /// <param name="size">Size of the label, pixels.</param>
    /// <param name="nearest">Least distance of the label's edge from the anchor; negative lets it sit on the anchor.</param>
    public SKRect Place(SKPoint anchor, SKSize size, float nearest) => PlaceAlong([anchor], size, nearest).Box;

    /// <summary>Finds and takes a place for a label that may point to any of several places, such as along a curve.</summary>
    /// <param name="anchors">Places the label may name, pixels, best first; at least one.</param>
    /// <param name="size">Size of the label, pixels.</param>
    /// <param name="nearest">Least distance of the label's edge from the anchor; negative lets it sit on the anchor.</param>
    public (SKPoint Anchor, SKRect Box) PlaceAlong(IReadOnlyList<SKPoint> anchors, SKSize size, float nearest)
    {
        (SKPoint Anchor, SKRect Box) best = default;
        double bestCost = double.PositiveInfinity;
        foreach (SKPoint anchor in anchors)
        {
            foreach (SKRect box in Candidates(anchor, size, nearest))
            {
                // Distance is part of the cost, so a place farther off than the best cost cannot win.
                if (SKPoint.Distance(anchor, Nearest(box, anchor)) >= bestCost)
                {
                    continue;
                }

                double cost = Cost(anchor, box, bestCost);
                if (cost < bestCost)
                {
                    (best, bestCost) = ((anchor, box), cost);
                }
            }
        }

        taken.Add(best.Box);
        leaders.Add((best.Anchor, Nearest(best.Box, best.Anchor)));
        return best;
    }

    /// <summary>Point of a box nearest to another point.</summary>
    public static SKPoint Nearest(SKRect box, SKPoint p) => new(Math.Clamp(p.X, box.Left, box.Right), Math.Clamp(p.Y, box.Top, box.Bottom));

    private IEnumerable<SKRect> Candidates(SKPoint anchor, SKSize size, float nearest)
    {
        if (nearest < 0)
        {
            yield return Inside(Around(anchor, size));
        }

        for (float distance = Math.Max(nearest, 2); distance < 600; distance += 14)
        {
            for (int i = 0; i < Directions; i++)
            {
                (float sin, float cos) = MathF.SinCos(2 * MathF.PI * i / Directions);
                // Along a ray until the box just clears the anchor by the distance.
                float reach = Math.Min(
                    cos == 0 ? float.MaxValue : ((size.Width / 2) + distance) / Math.Abs(cos),
                    sin == 0 ? float.MaxValue : ((size.Height / 2) + distance) / Math.Abs(sin));
                yield return Inside(Around(new(anchor.X + (reach * cos), anchor.Y - (reach * sin)), size));
            }
        }
    }

    // Costs only add up: once dearer than the best so far, the rest need not be known.
    private double Cost(SKPoint anchor, SKRect box, double best)
    {
        SKPoint end = Nearest(box, anchor);
        double cost = SKPoint.Distance(anchor, end);
        SKRect padded = SKRect.Inflate(box, Gap, Gap);
        foreach (SKRect other in taken)
        {
            // Far above any other cost, so that it only happens when there is no room at all.
            cost += (1e5 * Share(padded, other)) + (Crosses(anchor, end, other) ? 90 : 0);
        }

        foreach ((SKRect other, float weight) in obstacles)
        {
            if (cost >= best)
            {
                return cost;
            }

            cost += weight * Share(box, other);
        }

        foreach ((SKPoint from, SKPoint to) in leaders)
        {
            if (cost >= best)
            {
                return cost;
            }

            cost += (Crosses(from, to, padded) ? 400 : 0) + (Meet(anchor, end, from, to) ? 60 : 0);
        }

        return cost;
    }

    private SKRect Inside(SKRect box)
    {
        float dx = Math.Max(frame.Left - box.Left, 0) + Math.Min(frame.Right - box.Right, 0);
        float dy = Math.Max(frame.Top - box.Top, 0) + Math.Min(frame.Bottom - box.Bottom, 0);
        box.Offset(dx, dy);
        return box;
    }

    private static SKRect Around(SKPoint center, SKSize size) =>
        SKRect.Create(center.X - (size.Width / 2), center.Y - (size.Height / 2), size.Width, size.Height);

    private static double Share(SKRect box, SKRect other)
    {
        float width = Math.Min(box.Right, other.Right) - Math.Max(box.Left, other.Left);
        float height = Math.Min(box.Bottom, other.Bottom) - Math.Max(box.Top, other.Top);
        return width <= 0 || height <= 0 ? 0 : width * height / Math.Min(box.Width * box.Height, other.Width * other.Height);
    }

    private static bool Crosses(SKPoint from, SKPoint to, SKRect box)
    {
        const int Samples = 16;
        for (int i = 0; i <= Samples; i++)
        {
            float t = (float)i / Samples;
            if (box.Contains(from.X + (t * (to.X - from.X)), from.Y + (t * (to.Y - from.Y))))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Meet(SKPoint a, SKPoint b, SKPoint c, SKPoint d) =>
        Side(a, b, c) * Side(a, b, d) < 0 && Side(c, d, a) * Side(c, d, b) < 0;

    private static float Side(SKPoint a, SKPoint b, SKPoint p) => ((b.X - a.X) * (p.Y - a.Y)) - ((b.Y - a.Y) * (p.X - a.X));
}
