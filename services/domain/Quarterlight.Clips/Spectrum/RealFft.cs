using System.Numerics;

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

        HalfTransform(samples);
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

        HalfTransform(samples);
        (power[0], power[_half]) = ((_re[0] + _im[0]) * (_re[0] + _im[0]), (_re[0] - _im[0]) * (_re[0] - _im[0]));

        // Bins k and N/2 - k share their even and odd parts: E + wO and the conjugate of E - wO.
        for (int k = 1; k <= _half / 2; k++)
        {
            int b = _half - k;
            double evenRe = 0.5 * (_re[k] + _re[b]), evenIm = 0.5 * (_im[k] - _im[b]);
            double oddRe = 0.5 * (_im[k] + _im[b]), oddIm = -0.5 * (_re[k] - _re[b]);
            double turnedRe = (_cos[k] * oddRe) - (_sin[k] * oddIm), turnedIm = (_cos[k] * oddIm) + (_sin[k] * oddRe);
            double upRe = evenRe + turnedRe, upIm = evenIm + turnedIm, downRe = evenRe - turnedRe, downIm = evenIm - turnedIm;
            power[k] = (upRe * upRe) + (upIm * upIm);
            power[b] = (downRe * downRe) + (downIm * downIm);
        }
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

    private void HalfTransform(ReadOnlySpan<double> samples)
    {
        for (int i = 0; i < _half; i++)
        {
            _re[i] = samples[2 * i];
            _im[i] = samples[(2 * i) + 1];
        }

        int n = _half;
        int stride = 1;
        for (; n >= 4; n /= 4, stride *= 4)
        {
            RadixFour(n, stride);
            Swap();
        }

        if (n == 2)
        {
            for (int q = 0; q < stride; q++)
            {
                (_re2[q], _re2[q + stride]) = (_re[q] + _re[q + stride], _re[q] - _re[q + stride]);
                (_im2[q], _im2[q + stride]) = (_im[q] + _im[q + stride], _im[q] - _im[q + stride]);
            }

            Swap();
        }
    }

    private void Swap() => (_re, _im, _re2, _im2) = (_re2, _im2, _re, _im);

    private void RadixFour(int n, int stride)
    {
        int quarter = n / 4;
        for (int p = 0; p < quarter; p++)
        {
            int turn = Size / n * p;
            var w = new Twiddles(_cos[turn], _sin[turn], _cos[2 * turn], _sin[2 * turn], _cos[3 * turn], _sin[3 * turn]);
            int from = stride * p;
            int step = stride * quarter;
            int to = stride * 4 * p;
            int q = 0;
            for (; q <= stride - Vector<double>.Count; q += Vector<double>.Count)
            {
                ButterflyVector(from + q, step, to + q, stride, w);
            }

            for (; q < stride; q++)
            {
                Butterfly(from + q, step, to + q, stride, w);
            }
        }
    }

    private void Butterfly(int from, int step, int to, int stride, in Twiddles w)
    {
        double[] re = _re, im = _im, re2 = _re2, im2 = _im2;
        double sumRe = re[from] + re[from + (2 * step)], sumIm = im[from] + im[from + (2 * step)];
        double difRe = re[from] - re[from + (2 * step)], difIm = im[from] - im[from + (2 * step)];
        double sum2Re = re[from + step] + re[from + (3 * step)], sum2Im = im[from + step] + im[from + (3 * step)];
        double dif2Re = re[from + step] - re[from + (3 * step)], dif2Im = im[from + step] - im[from + (3 * step)];
        re2[to] = sumRe + sum2Re;
        im2[to] = sumIm + sum2Im;
        double aRe = difRe + dif2Im, aIm = difIm - dif2Re;
        double bRe = sumRe - sum2Re, bIm = sumIm - sum2Im;
        double cRe = difRe - dif2Im, cIm = difIm + dif2Re;
        (re2[to + stride], im2[to + stride]) = ((w.C1 * aRe) - (w.S1 * aIm), (w.C1 * aIm) + (w.S1 * aRe));
        (re2[to + (2 * stride)], im2[to + (2 * stride)]) = ((w.C2 * bRe) - (w.S2 * bIm), (w.C2 * bIm) + (w.S2 * bRe));
        (re2[to + (3 * stride)], im2[to + (3 * stride)]) = ((w.C3 * cRe) - (w.S3 * cIm), (w.C3 * cIm) + (w.S3 * cRe));
    }

    private void ButterflyVector(int from, int step, int to, int stride, in Twiddles w)
    {
        Vector<double> re0 = new(_re, from), re1 = new(_re, from + step), re2 = new(_re, from + (2 * step)), re3 = new(_re, from + (3 * step));
        Vector<double> im0 = new(_im, from), im1 = new(_im, from + step), im2 = new(_im, from + (2 * step)), im3 = new(_im, from + (3 * step));
        Vector<double> sumRe = re0 + re2, sumIm = im0 + im2, difRe = re0 - re2, difIm = im0 - im2;
        Vector<double> sum2Re = re1 + re3, sum2Im = im1 + im3, dif2Re = re1 - re3, dif2Im = im1 - im3;
        (sumRe + sum2Re).CopyTo(_re2, to);
        (sumIm + sum2Im).CopyTo(_im2, to);
        Vector<double> aRe = difRe + dif2Im, aIm = difIm - dif2Re;
        Vector<double> bRe = sumRe - sum2Re, bIm = sumIm - sum2Im;
        Vector<double> cRe = difRe - dif2Im, cIm = difIm + dif2Re;
        ((aRe * w.C1) - (aIm * w.S1)).CopyTo(_re2, to + stride);
        ((aIm * w.C1) + (aRe * w.S1)).CopyTo(_im2, to + stride);
        ((bRe * w.C2) - (bIm * w.S2)).CopyTo(_re2, to + (2 * stride));
        ((bIm * w.C2) + (bRe * w.S2)).CopyTo(_im2, to + (2 * stride));
        ((cRe * w.C3) - (cIm * w.S3)).CopyTo(_re2, to + (3 * stride));
        ((cIm * w.C3) + (cRe * w.S3)).CopyTo(_im2, to + (3 * stride));
    }

    private readonly record struct Twiddles(double C1, double S1, double C2, double S2, double C3, double S3);
}
