using System.Numerics;
using System.Runtime.InteropServices;

namespace Quarterlight.Clips.Levels;

/// <summary>Sums the products of two signals at every lag up to a highest one, block by block.</summary>
internal sealed class LagCorrelator(int maxLag)
{
    /// <summary>Samples of a block.</summary>
    public const int Block = 1024;

    private readonly float[] _a = new float[Block + (2 * maxLag)], _b = new float[Block + (2 * maxLag)];
    private readonly double[] _sums = new double[(2 * maxLag) + 1];
    private double _energyA, _energyB;

    /// <summary>Energy of the second signal over that of the first; NaN when both are silent.</summary>
    public double EnergyRatio => _energyB / _energyA;

    /// <summary>Where the next block goes: first signal.</summary>
    public Span<float> NextA => _a.AsSpan(2 * maxLag);

    /// <summary>Where the next block goes: second signal.</summary>
    public Span<float> NextB => _b.AsSpan(2 * maxLag);

    /// <summary>Adds the block that was put in.</summary>
    public void Add()
    {
        ReadOnlySpan<float> a = _a.AsSpan(maxLag, Block);
        for (int lag = -maxLag; lag <= maxLag; lag++)
        {
            _sums[lag + maxLag] += Dot(a, _b.AsSpan(maxLag + lag, Block));
        }

        _energyA += Dot(a, a);
        ReadOnlySpan<float> b = _b.AsSpan(maxLag, Block);
        _energyB += Dot(b, b);
        _a.AsSpan(Block).CopyTo(_a);
        _b.AsSpan(Block).CopyTo(_b);
    }

    /// <summary>A copy to go on with.</summary>
    public LagCorrelator Copy()
    {
        var copy = new LagCorrelator(maxLag) { _energyA = _energyA, _energyB = _energyB };
        _a.CopyTo(copy._a, 0);
        _b.CopyTo(copy._b, 0);
        _sums.CopyTo(copy._sums, 0);
        return copy;
    }

    /// <summary>The lag of the strongest correlation, of nearly equal ones the shortest, and the correlation there; 0 for silence.</summary>
    public (int Lag, double Correlation) Best()
    {
        double energy = Math.Sqrt(_energyA * _energyB);
        if (!(energy > 0))
        {
            return (0, 0);
        }

        (int best, double strongest) = (0, -1);
        for (int lag = -maxLag; lag <= maxLag; lag++)
        {
            // A steady tone is as strong a period later: up to 2 % is given for being near.
            double strength = Math.Abs(_sums[lag + maxLag]) * (1 - (0.02 * Math.Abs(lag) / maxLag));
            (best, strongest) = strength > strongest ? (lag, strength) : (best, strongest);
        }

        double top = _sums[best + maxLag];
        if (Math.Abs(best) < maxLag)
        {
            // Height of the parabola through three lags: the true delay may lie between.
            double l = _sums[best + maxLag - 1], r = _sums[best + maxLag + 1], bend = l - (2 * top) + r;
            top -= bend * top < 0 ? (l - r) * (l - r) / (8 * bend) : 0;
        }

        return (best, Math.Clamp(top / energy, -1, 1));
    }

    /// <summary>Sum of products.</summary>
    public static double Dot(ReadOnlySpan<float> a, ReadOnlySpan<float> b)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(b.Length, a.Length, nameof(b));
        ref float x = ref MemoryMarshal.GetReference(a), y = ref MemoryMarshal.GetReference(b);
        int stride = Vector<float>.Count, i = 0;
        Vector<float> s0 = Vector<float>.Zero, s1 = s0, s2 = s0, s3 = s0;
        for (; i + (4 * stride) <= a.Length; i += 4 * stride)
        {
            nuint at = (nuint)i, step = (nuint)stride;
            s0 = Vector.FusedMultiplyAdd(Vector.LoadUnsafe(ref x, at), Vector.LoadUnsafe(ref y, at), s0);
            s1 = Vector.FusedMultiplyAdd(Vector.LoadUnsafe(ref x, at + step), Vector.LoadUnsafe(ref y, at + step), s1);
            s2 = Vector.FusedMultiplyAdd(Vector.LoadUnsafe(ref x, at + (2 * step)), Vector.LoadUnsafe(ref y, at + (2 * step)), s2);
            s3 = Vector.FusedMultiplyAdd(Vector.LoadUnsafe(ref x, at + (3 * step)), Vector.LoadUnsafe(ref y, at + (3 * step)), s3);
        }

        double sum = Vector.Sum((s0 + s1) + (s2 + s3));
        for (; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
