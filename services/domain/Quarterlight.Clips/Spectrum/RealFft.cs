using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// Discrete Fourier transform of real samples, X(k) = sum of x(n) exp(-2 pi i k n / N) for k = 0 to N/2. One instance keeps
/// its twiddles and work space, so it allocates nothing per call and serves one caller at a time.
/// </summary>
/// <remarks>
/// Stockham's self-sorting form in radix 4, with one radix 2 step for odd powers, of N/2 complex values, then the usual split for real input
/// (Van Loan, Computational Frameworks for the Fast Fourier Transform, 1992, sections 1.7 and 4.3, from memory). Checked against the direct sum.
/// </remarks>
public sealed class RealFft
{
    /// <summary>Smallest transform, samples.</summary>
    public const int MinSize = 1 << 6;

    /// <summary>Largest transform, samples.</summary>
    public const int MaxSize = 1 << 16;

    private readonly int _half;
    private readonly double[] _cos;
    private readonly double[] _sin;

    // Turns of the first step, whose neighbours differ: 1, 2 and 3 times, cosines and sines.
    private readonly double[] _first;
    private double[] _re;
    private double[] _im;
    private double[] _re2;
    private double[] _im2;

    /// <summary>Prepares transforms of one size.</summary>
    /// <param name="size">Samples, a power of two from <see cref="MinSize"/> to <see cref="MaxSize"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is not such a power.</exception>
    public RealFft(int size)
    {
        if (size is < MinSize or > MaxSize || !BitOperations.IsPow2(size))
        {
            throw new ArgumentOutOfRangeException(nameof(size), size, $"The size must be a power of two from {MinSize} to {MaxSize}.");
        }

        Size = size;
        _half = size / 2;
        _cos = new double[size];
        _sin = new double[size];
        for (int i = 0; i < size; i++)
        {
            (_sin[i], _cos[i]) = Math.SinCos(-2 * Math.PI * i / size);
        }

        int quarter = _half / 4;
        _first = new double[6 * quarter];
        for (int p = 0; p < quarter; p++)
        {
            for (int m = 1; m <= 3; m++)
            {
                (_first[((2 * m) - 2) * quarter + p], _first[((2 * m) - 1) * quarter + p]) = (_cos[2 * m * p], _sin[2 * m * p]);
            }
        }

        (_re, _im, _re2, _im2) = (new double[_half], new double[_half], new double[_half], new double[_half]);
    }

    /// <summary>Samples in, N.</summary>
    public int Size { get; }

    /// <summary>Values out, N/2 + 1.</summary>
    public int Bins => _half + 1;

    /// <summary>Transforms <see cref="Size"/> samples into <see cref="Bins"/> real and imaginary parts.</summary>
    /// <exception cref="ArgumentException">A length does not fit.</exception>
    public void Transform(ReadOnlySpan<double> samples, Span<double> real, Span<double> imaginary)
    {
        if (samples.Length != Size || real.Length != Bins || imaginary.Length != Bins)
        {
            throw new ArgumentException($"A transform of {Size} samples gives {Bins} real and {Bins} imaginary parts.");
        }

        Load(samples);
        HalfTransform();
        for (int k = 0; k <= _half; k++)
        {
            (real[k], imaginary[k]) = Bin(k);
        }
    }

    /// <summary>Transforms <see cref="Size"/> samples and gives the squared magnitude of each of the <see cref="Bins"/> values.</summary>
    /// <exception cref="ArgumentException">A length does not fit.</exception>
    public void Power(ReadOnlySpan<double> samples, Span<double> power)
    {
        if (samples.Length != Size || power.Length != Bins)
        {
            throw new ArgumentException($"A transform of {Size} samples gives {Bins} powers.");
        }

        Load(samples);
        HalfTransform();
        WritePower(power);
    }

    /// <summary>Squared magnitudes of samples under a window.</summary>
    /// <exception cref="ArgumentException">A length does not fit.</exception>
    internal void Power(ReadOnlySpan<float> samples, ReadOnlySpan<double> window, Span<double> power)
    {
        if (samples.Length != Size || window.Length != Size || power.Length != Bins)
        {
            throw new ArgumentException($"A transform of {Size} samples gives {Bins} powers.");
        }

        ref float x = ref MemoryMarshal.GetReference(samples);
        ref double w = ref MemoryMarshal.GetReference(window);
        for (int i = 0; i < Size; i += 8)
        {
            Vector256<float> eight = Vector256.LoadUnsafe(ref x, (nuint)i);
            (Vector256<double> low, Vector256<double> high) = Vector256.Widen(eight);
            Part(low * Vector256.LoadUnsafe(ref w, (nuint)i), high * Vector256.LoadUnsafe(ref w, (nuint)i + 4), i / 2);
        }

        HalfTransform();
        WritePower(power);
    }

    // Even samples as real, odd samples as imaginary parts: Z = E + iO, taken apart by symmetry.
    private (double Re, double Im) Bin(int k)
    {
        int a = k & (_half - 1);
        int b = (_half - k) & (_half - 1);
        double evenRe = 0.5 * (_re[a] + _re[b]);
        double evenIm = 0.5 * (_im[a] - _im[b]);
        double oddRe = 0.5 * (_im[a] + _im[b]);
        double oddIm = -0.5 * (_re[a] - _re[b]);
        double c = _cos[k];
        double s = _sin[k];
        return (evenRe + (c * oddRe) - (s * oddIm), evenIm + (c * oddIm) + (s * oddRe));
    }

    private void Load(ReadOnlySpan<double> samples)
    {
        ref double x = ref MemoryMarshal.GetReference(samples);
        for (int i = 0; i < Size; i += 8)
        {
            Part(Vector256.LoadUnsafe(ref x, (nuint)i), Vector256.LoadUnsafe(ref x, (nuint)i + 4), i / 2);
        }
    }

    // Eight samples to four real and four imaginary parts.
    private void Part(Vector256<double> low, Vector256<double> high, int at)
    {
        Vector256<double> a = Vector256.Shuffle(low, Vector256.Create(0L, 2, 1, 3)), b = Vector256.Shuffle(high, Vector256.Create(0L, 2, 1, 3));
        Vector256.Create(a.GetLower(), b.GetLower()).CopyTo(_re, at);
        Vector256.Create(a.GetUpper(), b.GetUpper()).CopyTo(_im, at);
    }

    private void HalfTransform()
    {
        FirstStep();
        Swap();
        int n = _half / 4;
        int stride = 4;
        for (; n >= 4; n /= 4, stride *= 4)
        {
            RadixFour(n, stride);
            Swap();
        }

        if (n == 2)
        {
            for (int q = 0; q < stride; q += Vector256<double>.Count)
            {
                Vector256<double> a = Vector256.Create(_re, q), b = Vector256.Create(_re, q + stride), c = Vector256.Create(_im, q), d = Vector256.Create(_im, q + stride);
                (a + b).CopyTo(_re2, q);
                (a - b).CopyTo(_re2, q + stride);
                (c + d).CopyTo(_im2, q);
                (c - d).CopyTo(_im2, q + stride);
            }

            Swap();
        }
    }

    private void WritePower(Span<double> power)
    {
        (power[0], power[_half]) = ((_re[0] + _im[0]) * (_re[0] + _im[0]), (_re[0] - _im[0]) * (_re[0] - _im[0]));

        // Bins k and N/2 - k share their even and odd parts: E + wO and the conjugate of E - wO. Four at a time, then those left in the middle.
        ref double re = ref MemoryMarshal.GetArrayDataReference(_re), im = ref MemoryMarshal.GetArrayDataReference(_im);
        ref double cos = ref MemoryMarshal.GetArrayDataReference(_cos), sin = ref MemoryMarshal.GetArrayDataReference(_sin);
        ref double to = ref MemoryMarshal.GetReference(power);
        var back = Vector256.Create(3L, 2, 1, 0);
        var half = Vector256.Create(0.5);
        int k = 1;
        for (; (2 * k) + 6 < _half; k += 4)
        {
            nuint up = (nuint)k, down = (nuint)(_half - k - 3);
            Vector256<double> reA = Vector256.LoadUnsafe(ref re, up), imA = Vector256.LoadUnsafe(ref im, up);
            Vector256<double> reB = Vector256.Shuffle(Vector256.LoadUnsafe(ref re, down), back), imB = Vector256.Shuffle(Vector256.LoadUnsafe(ref im, down), back);
            Vector256<double> evenRe = half * (reA + reB), evenIm = half * (imA - imB), oddRe = half * (imA + imB), oddIm = half * (reB - reA);
            Vector256<double> c = Vector256.LoadUnsafe(ref cos, up), s = Vector256.LoadUnsafe(ref sin, up);
            Vector256<double> turnedRe = (c * oddRe) - (s * oddIm), turnedIm = Vector256.FusedMultiplyAdd(c, oddIm, s * oddRe);
            Vector256<double> upRe = evenRe + turnedRe, upIm = evenIm + turnedIm, downRe = evenRe - turnedRe, downIm = evenIm - turnedIm;
            Vector256.FusedMultiplyAdd(upRe, upRe, upIm * upIm).StoreUnsafe(ref to, up);
            Vector256.Shuffle(Vector256.FusedMultiplyAdd(downRe, downRe, downIm * downIm), back).StoreUnsafe(ref to, down);
        }

        for (; k <= _half / 2; k++)
        {
            (double upRe, double upIm) = Bin(k);
            (double downRe, double downIm) = Bin(_half - k);
            power[k] = (upRe * upRe) + (upIm * upIm);
            power[_half - k] = (downRe * downRe) + (downIm * downIm);
        }
    }

    private void Swap() => (_re, _im, _re2, _im2) = (_re2, _im2, _re, _im);

    // Neighbours turn by different angles and land four apart: four are worked out together and laid across.
    private void FirstStep()
    {
        int quarter = _half / 4;
        ref double re = ref MemoryMarshal.GetArrayDataReference(_re), im = ref MemoryMarshal.GetArrayDataReference(_im);
        ref double turn = ref MemoryMarshal.GetArrayDataReference(_first);
        for (int p = 0; p < quarter; p += Vector256<double>.Count)
        {
            var four = new Butterfly(ref re, ref im, (nuint)p, (nuint)quarter);
            Vector256<double> Turn(int i, ref double from) => Vector256.LoadUnsafe(ref from, (nuint)((i * quarter) + p));
            (Vector256<double> r1, Vector256<double> i1) = Butterfly.Turned(four.Re1, four.Im1, Turn(0, ref turn), Turn(1, ref turn));
            (Vector256<double> r2, Vector256<double> i2) = Butterfly.Turned(four.Re2, four.Im2, Turn(2, ref turn), Turn(3, ref turn));
            (Vector256<double> r3, Vector256<double> i3) = Butterfly.Turned(four.Re3, four.Im3, Turn(4, ref turn), Turn(5, ref turn));
            Across(four.Re0, r1, r2, r3, _re2, 4 * p);
            Across(four.Im0, i1, i2, i3, _im2, 4 * p);
        }
    }

    private void RadixFour(int n, int stride)
    {
        int quarter = n / 4;
        nuint step = (nuint)(stride * quarter), apart = (nuint)stride;
        ref double re = ref MemoryMarshal.GetArrayDataReference(_re), im = ref MemoryMarshal.GetArrayDataReference(_im);
        ref double toRe = ref MemoryMarshal.GetArrayDataReference(_re2), toIm = ref MemoryMarshal.GetArrayDataReference(_im2);
        for (int p = 0; p < quarter; p++)
        {
            int turn = Size / n * p;
            Vector256<double> c1 = Vector256.Create(_cos[turn]), s1 = Vector256.Create(_sin[turn]), c2 = Vector256.Create(_cos[2 * turn]);
            Vector256<double> s2 = Vector256.Create(_sin[2 * turn]), c3 = Vector256.Create(_cos[3 * turn]), s3 = Vector256.Create(_sin[3 * turn]);
            for (int q = 0; q < stride; q += Vector256<double>.Count)
            {
                var four = new Butterfly(ref re, ref im, (nuint)((stride * p) + q), step);
                nuint to = (nuint)((stride * 4 * p) + q);
                four.Re0.StoreUnsafe(ref toRe, to);
                four.Im0.StoreUnsafe(ref toIm, to);
                Store(Butterfly.Turned(four.Re1, four.Im1, c1, s1), ref toRe, ref toIm, to + apart);
                Store(Butterfly.Turned(four.Re2, four.Im2, c2, s2), ref toRe, ref toIm, to + (2 * apart));
                Store(Butterfly.Turned(four.Re3, four.Im3, c3, s3), ref toRe, ref toIm, to + (3 * apart));
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store((Vector256<double> Re, Vector256<double> Im) value, ref double re, ref double im, nuint at)
    {
        value.Re.StoreUnsafe(ref re, at);
        value.Im.StoreUnsafe(ref im, at);
    }

    // Rows become columns.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Across(Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> d, double[] to, int at)
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

    // Four butterflies side by side, before their turns.
    private readonly ref struct Butterfly
    {
        public readonly Vector256<double> Re0, Im0, Re1, Im1, Re2, Im2, Re3, Im3;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public Butterfly(ref double re, ref double im, nuint from, nuint step)
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

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static (Vector256<double> Re, Vector256<double> Im) Turned(Vector256<double> re, Vector256<double> im, Vector256<double> c, Vector256<double> s) =>
            (Vector256.FusedMultiplyAdd(re, c, -(im * s)), Vector256.FusedMultiplyAdd(im, c, re * s));
    }
}
