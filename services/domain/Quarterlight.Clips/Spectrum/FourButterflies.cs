using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Quarterlight.Clips.Spectrum;

/// <summary>Four butterflies of radix 4 side by side, before their turns.</summary>
internal readonly ref struct FourButterflies
{
    public readonly Vector256<double> Re0, Im0, Re1, Im1, Re2, Im2, Re3, Im3;

    /// <summary>Works them out.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public FourButterflies(ref double re, ref double im, nuint from, nuint step)
    {
        Vector256<double> a = Vector256.LoadUnsafe(ref re, from), b = Vector256.LoadUnsafe(ref re, from + step);
        Vector256<double> c = Vector256.LoadUnsafe(ref re, from + (2 * step)), d = Vector256.LoadUnsafe(ref re, from + (3 * step));
        Vector256<double> e = Vector256.LoadUnsafe(ref im, from), f = Vector256.LoadUnsafe(ref im, from + step);
        Vector256<double> g = Vector256.LoadUnsafe(ref im, from + (2 * step)), h = Vector256.LoadUnsafe(ref im, from + (3 * step));
        Vector256<double> sumRe = a + c, sumIm = e + g, difRe = a - c, difIm = e - g;
        Vector256<double> sum2Re = b + d, sum2Im = f + h, dif2Re = b - d, dif2Im = f - h;
        (Re0, Im0) = (sumRe + sum2Re, sumIm + sum2Im);
        (Re1, Im1) = (difRe + dif2Im, difIm - dif2Re);
        (Re2, Im2) = (sumRe - sum2Re, sumIm - sum2Im);
        (Re3, Im3) = (difRe - dif2Im, difIm + dif2Re);
    }

    /// <summary>Turned by the angle of a cosine and sine.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector256<double> Re, Vector256<double> Im) Turned(Vector256<double> re, Vector256<double> im, Vector256<double> c, Vector256<double> s) =>
        (Vector256.FusedMultiplyAdd(re, c, -(im * s)), Vector256.FusedMultiplyAdd(im, c, re * s));

    /// <summary>Writes four vectors so that rows become columns.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Across(Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> d, double[] to, int at)
    {
        if (Avx.IsSupported)
        {
            Vector256<double> ab = Avx.UnpackLow(a, b), ab2 = Avx.UnpackHigh(a, b), cd = Avx.UnpackLow(c, d), cd2 = Avx.UnpackHigh(c, d);
            Avx.Permute2x128(ab, cd, 0x20).CopyTo(to, at);
            Avx.Permute2x128(ab2, cd2, 0x20).CopyTo(to, at + 4);
            Avx.Permute2x128(ab, cd, 0x31).CopyTo(to, at + 8);
            Avx.Permute2x128(ab2, cd2, 0x31).CopyTo(to, at + 12);
            return;
        }

        for (int i = 0; i < Vector256<double>.Count; i++)
        {
            Vector256.Create(a[i], b[i], c[i], d[i]).CopyTo(to, at + (4 * i));
        }
    }
}
