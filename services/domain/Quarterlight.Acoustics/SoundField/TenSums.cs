using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.SoundField;

/// <summary>
/// What a set of arrivals amounts to for any first-order microphone: per band the sums S = sum w, V = sum w d and
/// M = sum w d d^T over arrivals of energy w from unit direction d (pointing from the microphone toward where the sound
/// comes from). A capsule A + B cos aimed along u receives the energy A^2 S + 2 A B u.V + B^2 u^T M u.
/// </summary>
/// <remarks>Exact: it is the square of A + B u.d summed over the arrivals, rearranged. Values live in caller-owned spans of <see cref="Length"/> doubles.</remarks>
public readonly ref struct TenSums
{
    /// <summary>Doubles per set: ten sums of eight lanes.</summary>
    public const int Length = 10 * BandVector.Lanes;

    private readonly Span<double> _sums;

    /// <summary>Works on a span of <see cref="Length"/> doubles that the caller owns.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public TenSums(Span<double> sums)
    {
        if (sums.Length != Length)
        {
            throw new ArgumentException("Ten sums take 80 doubles.", nameof(sums));
        }

        _sums = sums;
    }

    /// <summary>Adds an arrival of the given energies from a unit direction.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(Vector3D d, BandVector energy)
    {
        ref double first = ref MemoryMarshal.GetReference(_sums);
        BandVector x = d.X * energy, y = d.Y * energy, z = d.Z * energy;
        Accumulate(ref first, 0, energy);
        Accumulate(ref first, 1, x);
        Accumulate(ref first, 2, y);
        Accumulate(ref first, 3, z);
        Accumulate(ref first, 4, d.X * x);
        Accumulate(ref first, 5, d.Y * y);
        Accumulate(ref first, 6, d.Z * z);
        Accumulate(ref first, 7, d.Y * x);
        Accumulate(ref first, 8, d.Z * x);
        Accumulate(ref first, 9, d.Z * y);
    }

    /// <summary>Adds energy that comes from everywhere alike: V gains nothing, M a third of it on its diagonal.</summary>
    public void AddDiffuse(BandVector energy)
    {
        ref double first = ref MemoryMarshal.GetReference(_sums);
        BandVector third = (1.0 / 3) * energy;
        Accumulate(ref first, 0, energy);
        Accumulate(ref first, 4, third);
        Accumulate(ref first, 5, third);
        Accumulate(ref first, 6, third);
    }

    /// <summary>Adds another set, each band scaled.</summary>
    public void AddScaled(ReadOnlySpan<double> other, BandVector scale)
    {
        ref double first = ref MemoryMarshal.GetReference(_sums);
        ref double from = ref MemoryMarshal.GetReference(Checked(other));
        for (int at = 0; at < Length; at += BandVector.Lanes)
        {
            (BandVector.LoadUnchecked(ref first, at) + (scale * BandVector.LoadUnchecked(ref from, at))).StoreUnchecked(ref first, at);
        }
    }

    /// <summary>Energy per band that a pattern aimed along a unit vector receives.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BandVector Received(ReadOnlySpan<double> sums, in AimCoefficients c)
    {
        ref double first = ref MemoryMarshal.GetReference(Checked(sums));
        BandVector e = c.S * BandVector.LoadUnchecked(ref first, 0);
        e = e.PlusProduct(c.X, BandVector.LoadUnchecked(ref first, 8)).PlusProduct(c.Y, BandVector.LoadUnchecked(ref first, 16));
        e = e.PlusProduct(c.Z, BandVector.LoadUnchecked(ref first, 24)).PlusProduct(c.XX, BandVector.LoadUnchecked(ref first, 32));
        e = e.PlusProduct(c.YY, BandVector.LoadUnchecked(ref first, 40)).PlusProduct(c.ZZ, BandVector.LoadUnchecked(ref first, 48));
        e = e.PlusProduct(c.XY, BandVector.LoadUnchecked(ref first, 56)).PlusProduct(c.XZ, BandVector.LoadUnchecked(ref first, 64));
        return e.PlusProduct(c.YZ, BandVector.LoadUnchecked(ref first, 72));
    }

    /// <summary>Energy per band that an omnidirectional microphone receives: the sum S.</summary>
    public static BandVector Total(ReadOnlySpan<double> sums) => BandVector.Load(sums);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Accumulate(ref double first, int index, BandVector energy) =>
        (BandVector.LoadUnchecked(ref first, index * BandVector.Lanes) + energy).StoreUnchecked(ref first, index * BandVector.Lanes);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ReadOnlySpan<double> Checked(ReadOnlySpan<double> sums) =>
        sums.Length == Length ? sums : throw new ArgumentException("Ten sums take 80 doubles.", nameof(sums));
}

/// <summary>The ten factors that a pattern and an aim put before the ten sums.</summary>
public readonly struct AimCoefficients
{
    /// <summary>For the capsule A + B cos aimed along a unit vector.</summary>
    public AimCoefficients(double a, double b, Vector3D aim)
    {
        double ab = 2 * a * b, bb = b * b;
        S = a * a;
        X = ab * aim.X;
        Y = ab * aim.Y;
        Z = ab * aim.Z;
        XX = bb * aim.X * aim.X;
        YY = bb * aim.Y * aim.Y;
        ZZ = bb * aim.Z * aim.Z;
        XY = 2 * bb * aim.X * aim.Y;
        XZ = 2 * bb * aim.X * aim.Z;
        YZ = 2 * bb * aim.Y * aim.Z;
    }

    internal double S { get; }

    internal double X { get; }

    internal double Y { get; }

    internal double Z { get; }

    internal double XX { get; }

    internal double YY { get; }

    internal double ZZ { get; }

    internal double XY { get; }

    internal double XZ { get; }

    internal double YZ { get; }
}
