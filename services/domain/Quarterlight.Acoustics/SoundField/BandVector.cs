using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.SoundField;

/// <summary>
/// Seven octave-band energies (linear, 125 Hz first) and one idle lane, kept in two vectors so that a formula works on
/// all bands at once. The idle lane stays 0 for energies.
/// </summary>
public readonly struct BandVector
{
    /// <summary>Lanes, the idle one included.</summary>
    public const int Lanes = 8;

    private readonly Vector256<double> _low;
    private readonly Vector256<double> _high;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private BandVector(Vector256<double> low, Vector256<double> high)
    {
        _low = low;
        _high = high;
    }

    /// <summary>Energy of a band, 0 = 125 Hz to 6 = 8 kHz.</summary>
    public double this[int band] => band < 4 ? _low.GetElement(band) : _high.GetElement(band - 4);

    /// <summary>Energy factors of A-weighting; the idle lane is 0.</summary>
    public static BandVector AWeights { get; } = FromDb(new BandLevels(OctaveBands.AWeightingDb));

    /// <summary>All lanes zero.</summary>
    public static BandVector Zero => default;

    /// <summary>The same value in all seven bands.</summary>
    public static BandVector Splat(double value) => new(Vector256.Create(value), Vector256.Create(value, value, value, 0));

    /// <summary>Reads eight values; the last is the idle lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BandVector Load(ReadOnlySpan<double> eight) => new(Vector256.Create(eight), Vector256.Create(eight[4..]));

    /// <summary>Reads eight values from a place the caller has checked to have them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static BandVector LoadUnchecked(ref double first, int offset) =>
        new(Vector256.LoadUnsafe(ref first, (nuint)offset), Vector256.LoadUnsafe(ref first, (nuint)(offset + 4)));

    /// <summary>Writes eight values to a place the caller has checked to have them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void StoreUnchecked(ref double first, int offset)
    {
        _low.StoreUnsafe(ref first, (nuint)offset);
        _high.StoreUnsafe(ref first, (nuint)(offset + 4));
    }

    /// <summary>Energies 10^(dB/10) of a spectrum.</summary>
    public static BandVector FromDb(BandLevels db)
    {
        Span<double> lanes = stackalloc double[Lanes];
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            lanes[b] = Math.Pow(10, db[b] / 10);
        }

        return Load(lanes);
    }

    /// <summary>Writes eight values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Store(Span<double> eight)
    {
        _low.CopyTo(eight);
        _high.CopyTo(eight[4..]);
    }

    /// <summary>Sum.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BandVector operator +(BandVector a, BandVector b) => new(a._low + b._low, a._high + b._high);

    /// <summary>Band by band product.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BandVector operator *(BandVector a, BandVector b) => new(a._low * b._low, a._high * b._high);

    /// <summary>Scaled.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BandVector operator *(double s, BandVector a) => new(s * a._low, s * a._high);

    /// <summary>Band by band quotient; the idle lane becomes 0/0 and must not be read.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BandVector operator /(BandVector a, BandVector b) => new(a._low / b._low, a._high / b._high);

    /// <summary>Binary logarithm of every lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public BandVector Log2() => new(Vector256.Log2(_low), Vector256.Log2(_high));

    /// <summary>Lane by lane a*b + this.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public BandVector PlusProduct(double a, BandVector b) =>
        new(Vector256.FusedMultiplyAdd(Vector256.Create(a), b._low, _low), Vector256.FusedMultiplyAdd(Vector256.Create(a), b._high, _high));

    /// <summary>Lane by lane maximum.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BandVector Max(BandVector a, BandVector b) => new(Vector256.Max(a._low, b._low), Vector256.Max(a._high, b._high));

    /// <summary>Sum of the seven bands.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Sum() => Vector256.Sum(_low) + Vector256.Sum(_high.WithElement(3, 0));

    /// <summary>Weighted sum over the seven bands; the weights' idle lane must be 0 and this idle lane finite.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Dot(BandVector weights) => Vector256.Sum(_low * weights._low) + Vector256.Sum(_high * weights._high);

    /// <summary>The spectrum in dB: 10 lg of every band.</summary>
    public BandLevels ToDb()
    {
        BandVector self = this;
        return BandLevels.Create(b => 10 * Math.Log10(self[b]));
    }
}
