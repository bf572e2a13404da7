using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Something opaque that cuts a sight line.</summary>
/// <param name="Name">What it is, in words, such as "driver's backrest".</param>
public abstract record Occluder(string Name)
{
    /// <summary>True when the straight segment between two points passes through it.</summary>
    public abstract bool Cuts(Vector3D from, Vector3D to);
}

/// <summary>A box parallel to the axes: backrest, dash, door below the sill, roof.</summary>
public sealed record BoxOccluder(string Name, Box3D Box) : Occluder(Name)
{
    /// <inheritdoc/>
    public override bool Cuts(Vector3D from, Vector3D to) => Box.Cuts(from, to);
}

/// <summary>A ball: a head.</summary>
public sealed record BallOccluder(string Name, Vector3D Center, double RadiusM) : Occluder(Name)
{
    /// <inheritdoc/>
    public override bool Cuts(Vector3D from, Vector3D to)
    {
        Vector3D d = to - from;
        double t = Math.Clamp((Center - from).Dot(d) / Math.Max(d.LengthSquared, 1e-12), 0, 1);
        return (from + (t * d) - Center).LengthSquared < RadiusM * RadiusM;
    }
}

/// <summary>A round post between two points: a pillar.</summary>
public sealed record PostOccluder(string Name, Vector3D Start, Vector3D End, double RadiusM) : Occluder(Name)
{
    /// <inheritdoc/>
    public override bool Cuts(Vector3D from, Vector3D to) => SegmentDistanceSquared(from, to, Start, End) < RadiusM * RadiusM;

    // Nearest approach of two segments; the usual clamped two-parameter minimisation.
    private static double SegmentDistanceSquared(Vector3D p1, Vector3D q1, Vector3D p2, Vector3D q2)
    {
        Vector3D d1 = q1 - p1, d2 = q2 - p2, r = p1 - p2;
        double a = Math.Max(d1.LengthSquared, 1e-12), e = Math.Max(d2.LengthSquared, 1e-12);
        double f = d2.Dot(r), c = d1.Dot(r), b = d1.Dot(d2);
        double denominator = (a * e) - (b * b);
        double s = denominator > 1e-12 ? Math.Clamp(((b * f) - (c * e)) / denominator, 0, 1) : 0;
        double t = Math.Clamp(((b * s) + f) / e, 0, 1);
        s = Math.Clamp(((b * t) - c) / a, 0, 1);
        return (p1 + (s * d1) - (p2 + (t * d2))).LengthSquared;
    }
}
