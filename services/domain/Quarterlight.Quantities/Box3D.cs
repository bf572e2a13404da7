namespace Quarterlight.Quantities;

/// <summary>A box with faces parallel to the car's axes, in metres.</summary>
/// <param name="Min">Corner with the smallest coordinates.</param>
/// <param name="Max">Corner with the largest coordinates; not below <paramref name="Min"/> in any coordinate.</param>
public readonly record struct Box3D(Vector3D Min, Vector3D Max)
{
    /// <summary>Edge lengths in metres.</summary>
    public Vector3D Size => Max - Min;

    /// <summary>Centre point.</summary>
    public Vector3D Center => 0.5 * (Min + Max);

    /// <summary>Volume in cubic metres.</summary>
    public double VolumeM3 => Size.X * Size.Y * Size.Z;

    /// <summary>A box about a centre with the given full edge lengths in metres.</summary>
    public static Box3D Around(Vector3D center, double sizeX, double sizeY, double sizeZ)
    {
        var half = new Vector3D(sizeX / 2, sizeY / 2, sizeZ / 2);
        return new(center - half, center + half);
    }

    /// <summary>True when the point is inside or on the surface.</summary>
    public bool Contains(Vector3D p) =>
        p.X >= Min.X && p.X <= Max.X && p.Y >= Min.Y && p.Y <= Max.Y && p.Z >= Min.Z && p.Z <= Max.Z;

    /// <summary>The same box grown by a margin in metres on every side (a negative margin shrinks it).</summary>
    public Box3D Grown(double marginM) => new(Min - new Vector3D(marginM, marginM, marginM), Max + new Vector3D(marginM, marginM, marginM));

    /// <summary>The nearest point inside the box.</summary>
    public Vector3D Clamp(Vector3D p) =>
        new(Math.Clamp(p.X, Min.X, Max.X), Math.Clamp(p.Y, Min.Y, Max.Y), Math.Clamp(p.Z, Min.Z, Max.Z));

    /// <summary>The same box seen in a mirror on the plane y = 0.</summary>
    public Box3D MirroredLeftRight() => new(Min with { Y = -Max.Y }, Max with { Y = -Min.Y });

    /// <summary>True when the straight segment between two points passes through the box (slab test).</summary>
    public bool Cuts(Vector3D from, Vector3D to) => TryCut(from, to, out _, out _);

    /// <summary>Finds where the segment enters and leaves, as fractions 0 to 1 of its length; false when it misses.</summary>
    public bool TryCut(Vector3D from, Vector3D to, out double enterFraction, out double leaveFraction)
    {
        Vector3D d = to - from;
        double t0 = 0, t1 = 1;
        bool hit = Slab(from.X, d.X, Min.X, Max.X, ref t0, ref t1)
            && Slab(from.Y, d.Y, Min.Y, Max.Y, ref t0, ref t1)
            && Slab(from.Z, d.Z, Min.Z, Max.Z, ref t0, ref t1);
        enterFraction = t0;
        leaveFraction = t1;
        return hit;
    }

    private static bool Slab(double origin, double direction, double min, double max, ref double t0, ref double t1)
    {
        if (Math.Abs(direction) < 1e-12)
        {
            return origin >= min && origin <= max;
        }

        double inverse = 1 / direction;
        double near = (min - origin) * inverse, far = (max - origin) * inverse;
        if (near > far)
        {
            (near, far) = (far, near);
        }

        t0 = Math.Max(t0, near);
        t1 = Math.Min(t1, far);
        return t0 <= t1;
    }
}
