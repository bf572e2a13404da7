using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Something opaque that cuts a sight line.</summary>
/// <param name="Name">What it is, in words, such as "driver's backrest".</param>
public abstract record Occluder(string Name)
{
    /// <summary>Depth in metres of the skin in which a point counts as lying on the surface, not behind it.</summary>
    public const double SkinM = 0.01;

    /// <summary>True when the straight segment between two points passes through it.</summary>
    public abstract bool Cuts(Vector3D from, Vector3D to);

    /// <summary>
    /// True when it hides a point from an eye. A point in the skin of this very surface is not hidden by it from the
    /// front, yet still from behind: for such a point the body is taken one skin smaller.
    /// </summary>
    public abstract bool Hides(Vector3D eye, Vector3D point);

    /// <summary>True when the point is inside.</summary>
    public abstract bool Contains(Vector3D point);
}

/// <summary>A box parallel to the axes: backrest, dash, door below the sill, roof.</summary>
public sealed record BoxOccluder(string Name, Box3D Box) : Occluder(Name)
{
    /// <inheritdoc/>
    public override bool Cuts(Vector3D from, Vector3D to) => Box.Cuts(from, to);

    /// <inheritdoc/>
    public override bool Hides(Vector3D eye, Vector3D point)
    {
        // Most segments miss; only a hit is worth the second look.
        if (!Box.Cuts(eye, point))
        {
            return false;
        }

        if (!Box.Grown(SkinM).Contains(point))
        {
            return true;
        }

        Vector3D size = Box.Size;
        return Math.Min(size.X, Math.Min(size.Y, size.Z)) > 2 * SkinM && Box.Grown(-SkinM).Cuts(eye, point);
    }

    /// <inheritdoc/>
    public override bool Contains(Vector3D point) => Box.Contains(point);
}

/// <summary>A ball: a head.</summary>
public sealed record BallOccluder(string Name, Vector3D Center, double RadiusM) : Occluder(Name)
{
    /// <inheritdoc/>
    public override bool Cuts(Vector3D from, Vector3D to) => Segments.DistanceSquared(Center, from, to) < RadiusM * RadiusM;

    /// <inheritdoc/>
    public override bool Hides(Vector3D eye, Vector3D point)
    {
        double d2 = Segments.DistanceSquared(Center, eye, point);
        if (d2 >= RadiusM * RadiusM)
        {
            return false;
        }

        double skin = RadiusM + SkinM, core = RadiusM - SkinM;
        return (point - Center).LengthSquared > skin * skin || (core > 0 && d2 < core * core);
    }

    /// <inheritdoc/>
    public override bool Contains(Vector3D point) => (point - Center).LengthSquared < RadiusM * RadiusM;
}

/// <summary>A round post between two points: a pillar.</summary>
public sealed record PostOccluder(string Name, Vector3D Start, Vector3D End, double RadiusM) : Occluder(Name)
{
    /// <inheritdoc/>
    public override bool Cuts(Vector3D from, Vector3D to) => Segments.DistanceSquared(from, to, Start, End) < RadiusM * RadiusM;

    /// <inheritdoc/>
    public override bool Hides(Vector3D eye, Vector3D point)
    {
        double d2 = Segments.DistanceSquared(eye, point, Start, End);
        if (d2 >= RadiusM * RadiusM)
        {
            return false;
        }

        double skin = RadiusM + SkinM, core = RadiusM - SkinM;
        return Segments.DistanceSquared(point, Start, End) > skin * skin || (core > 0 && d2 < core * core);
    }

    /// <inheritdoc/>
    public override bool Contains(Vector3D point) => Segments.DistanceSquared(point, Start, End) < RadiusM * RadiusM;
}
