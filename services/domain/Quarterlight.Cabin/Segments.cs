using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Nearest approach of points and segments; squares, to spare the root in inner loops.</summary>
internal static class Segments
{
    public static double DistanceSquared(Vector3D point, Vector3D from, Vector3D to)
    {
        Vector3D d = to - from;
        double t = Math.Clamp((point - from).Dot(d) / Math.Max(d.LengthSquared, 1e-12), 0, 1);
        return (from + (t * d) - point).LengthSquared;
    }

    // The usual clamped two-parameter minimisation.
    public static double DistanceSquared(Vector3D p1, Vector3D q1, Vector3D p2, Vector3D q2)
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
