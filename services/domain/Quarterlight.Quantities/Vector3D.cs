namespace Quarterlight.Quantities;

/// <summary>
/// A point or direction in the car's frame: x forward, y left, z up (axis system of ISO 8855, from memory), metres for
/// points and dimensionless for directions.
/// </summary>
/// <remarks>
/// The origin is on the floor, on the centre line, below the reference point of the front seats. Components may be any
/// finite number; callers reject NaN before a vector is made.
/// </remarks>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>The zero vector.</summary>
    public static Vector3D Zero => default;

    /// <summary>Unit vector forward (+x).</summary>
    public static Vector3D Forward => new(1, 0, 0);

    /// <summary>Unit vector to the left (+y).</summary>
    public static Vector3D Left => new(0, 1, 0);

    /// <summary>Unit vector up (+z).</summary>
    public static Vector3D Up => new(0, 0, 1);

    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(LengthSquared);

    /// <summary>Square of the Euclidean length.</summary>
    public double LengthSquared => (X * X) + (Y * Y) + (Z * Z);

    /// <summary>True when all three components are finite.</summary>
    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);

    /// <summary>Componentwise sum.</summary>
    public static Vector3D operator +(Vector3D a, Vector3D b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Componentwise difference.</summary>
    public static Vector3D operator -(Vector3D a, Vector3D b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite vector.</summary>
    public static Vector3D operator -(Vector3D a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Scales a vector.</summary>
    public static Vector3D operator *(double s, Vector3D a) => new(s * a.X, s * a.Y, s * a.Z);

    /// <summary>Scales a vector.</summary>
    public static Vector3D operator *(Vector3D a, double s) => s * a;

    /// <summary>Scalar product.</summary>
    public double Dot(Vector3D other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product, right-handed.</summary>
    public Vector3D Cross(Vector3D o) => new((Y * o.Z) - (Z * o.Y), (Z * o.X) - (X * o.Z), (X * o.Y) - (Y * o.X));

    /// <summary>Distance in metres to another point.</summary>
    public double DistanceTo(Vector3D other) => (this - other).Length;

    /// <summary>The unit vector of the same direction.</summary>
    /// <exception cref="InvalidOperationException">The vector has no length.</exception>
    public Vector3D Normalized()
    {
        double length = Length;
        return length > 0 ? (1 / length) * this : throw new InvalidOperationException("A zero vector has no direction.");
    }

    /// <summary>Angle in radians between two directions, 0 to pi.</summary>
    public double AngleTo(Vector3D other) => Math.Atan2(Cross(other).Length, Dot(other));

    /// <summary>The same point or direction seen in a mirror on the plane y = 0.</summary>
    public Vector3D MirroredLeftRight() => this with { Y = -Y };

    /// <summary>
    /// The unit vector with this azimuth (radians, counter-clockwise from forward seen from above) and elevation
    /// (radians above the horizontal).
    /// </summary>
    public static Vector3D FromAngles(double azimuthRad, double elevationRad)
    {
        (double sinA, double cosA) = Math.SinCos(azimuthRad);
        (double sinE, double cosE) = Math.SinCos(elevationRad);
        return new(cosE * cosA, cosE * sinA, sinE);
    }

    /// <summary>Azimuth in radians, counter-clockwise from forward seen from above, in (-pi, pi]; 0 for a vertical direction.</summary>
    public double AzimuthRad => X == 0 && Y == 0 ? 0 : Math.Atan2(Y, X);

    /// <summary>Elevation in radians above the horizontal, -pi/2 to pi/2.</summary>
    public double ElevationRad => Math.Atan2(Z, Math.Sqrt((X * X) + (Y * Y)));
}
