using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Quarterlight.Clips.Levels;

/// <summary>K-weighting of up to four channels at once, one a lane, with the sum of squares of each.</summary>
/// <remarks>Direct form 1 in double precision: only one multiplication stands between a result and the next, so the lanes set the speed.</remarks>
internal sealed class KFilter(FilterSection shelf, FilterSection highPass)
{
    /// <summary>Lanes of one filter.</summary>
    public const int Lanes = 4;

    // Below this nothing is heard and arithmetic on subnormal numbers would be slow.
    private const double Tiny = 1e-30;

    private Vector256<double> _x1, _x2, _y1, _y2, _z1, _z2, _sum;

    /// <summary>Filters frames of four lanes.</summary>
    public void Add(ReadOnlySpan<float> lanes)
    {
        Vector256<double> b0 = Vector256.Create(shelf.B0), b1 = Vector256.Create(shelf.B1), b2 = Vector256.Create(shelf.B2);
        Vector256<double> a1 = Vector256.Create(-shelf.A1), a2 = Vector256.Create(-shelf.A2);
        Vector256<double> c0 = Vector256.Create(highPass.B0), c1 = Vector256.Create(highPass.B1), c2 = Vector256.Create(highPass.B2);
        Vector256<double> e1 = Vector256.Create(-highPass.A1), e2 = Vector256.Create(-highPass.A2);
        Vector256<double> x1 = _x1, x2 = _x2, y1 = _y1, y2 = _y2, z1 = _z1, z2 = _z2, sum = _sum;
        foreach (Vector128<float> frame in MemoryMarshal.Cast<float, Vector128<float>>(lanes))
        {
            (Vector128<double> low, Vector128<double> high) = Vector128.Widen(frame);
            var x = Vector256.Create(low, high);
            Vector256<double> t = Vector256.FusedMultiplyAdd(b1, x1, b0 * x);
            t = Vector256.FusedMultiplyAdd(a2, y2, Vector256.FusedMultiplyAdd(b2, x2, t));
            Vector256<double> y = Vector256.FusedMultiplyAdd(a1, y1, t);
            Vector256<double> u = Vector256.FusedMultiplyAdd(c1, y1, c0 * y);
            u = Vector256.FusedMultiplyAdd(e2, z2, Vector256.FusedMultiplyAdd(c2, y2, u));
            Vector256<double> z = Vector256.FusedMultiplyAdd(e1, z1, u);
            (x2, x1, y2, y1, z2, z1) = (x1, x, y1, y, z1, z);
            sum = Vector256.FusedMultiplyAdd(z, z, sum);
        }

        (_x1, _x2, _y1, _y2, _z1, _z2, _sum) = (x1, x2, y1, y2, z1, z2, sum);
    }

    /// <summary>Hands out the sums of squares since the last time and begins anew.</summary>
    public Vector256<double> TakeSums()
    {
        Vector256<double> sum = _sum;
        (_sum, _y1, _y2, _z1, _z2) = (Vector256<double>.Zero, Settle(_y1), Settle(_y2), Settle(_z1), Settle(_z2));
        return sum;
    }

    private static Vector256<double> Settle(Vector256<double> v) => v & Vector256.GreaterThan(Vector256.Abs(v), Vector256.Create(Tiny));
}
