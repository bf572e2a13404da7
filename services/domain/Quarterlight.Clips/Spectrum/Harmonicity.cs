using System.Runtime.Intrinsics;

namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// How much of a frame repeats with a voice's period: the highest value of the normalised autocorrelation of the compressed and levelled
/// spectrum, 100 Hz to 4 kHz, for periods of 80 to 400 Hz. About 0.1 for noise, above 0.3 for clear vowels.
/// </summary>
/// <remarks>
/// Generalised autocorrelation, |X| to the power 2/3, after Tolonen and Karjalainen, IEEE Trans. Speech and Audio Processing 8 (2000) (from
/// memory); each bin is divided by the mean of the 400 Hz to each side first, so that a steep noise does not count as a low voice.
/// </remarks>
internal sealed class Harmonicity
{
    private const int Size = 512;
    private readonly RealFft _fft = new(Size);
    private readonly double[] _in = new double[Size];
    private readonly double[] _sums;
    private readonly double[] _re;
    private readonly double[] _im;
    private readonly int _first;
    private readonly int _last;
    private readonly int _reach;
    private readonly int _shortest;
    private readonly int _longest;

    public Harmonicity(int bins, double binHz)
    {
        _first = Math.Max(1, (int)Math.Ceiling(100 / binHz));
        _last = Math.Min(Math.Min(bins - 1, Size / 2), (int)(4000 / binHz));
        _reach = Math.Max(4, (int)(400 / binHz));
        _shortest = (int)(Size * binHz / 400);
        _longest = Math.Min(Size / 2, (int)(Size * binHz / 80));
        _sums = new double[_last + 2];
        (_re, _im) = (new double[_fft.Bins], new double[_fft.Bins]);
    }

    private static void CubeRoots(ReadOnlySpan<double> from, Span<double> to)
    {
        int i = 0;
        for (; i + Vector256<double>.Count <= from.Length; i += Vector256<double>.Count)
        {
            // The logarithm of 0 is minus infinity, whose power is 0 again.
            Vector256.Exp(Vector256.Log(Vector256.Create(from[i..])) / 3).CopyTo(to[i..]);
        }

        for (; i < from.Length; i++)
        {
            to[i] = Math.Cbrt(from[i]);
        }
    }

    public double Of(ReadOnlySpan<double> power)
    {
        CubeRoots(power[_first..(_last + 1)], _in.AsSpan(_first));
        for (int k = _first; k <= _last; k++)
        {
            _sums[k + 1] = _sums[k] + _in[k];
        }

        for (int k = _first; k <= _last; k++)
        {
            int from = Math.Max(_first, k - _reach);
            int to = Math.Min(_last, k + _reach);
            double mean = (_sums[to + 1] - _sums[from]) / (to + 1 - from);
            _in[k] = mean > 0 ? _in[k] / mean : 0;
        }

        _fft.Transform(_in, _re, _im);
        double best = 0;
        for (int lag = _shortest; lag <= _longest; lag++)
        {
            best = Math.Max(best, _re[lag]);
        }

        return _re[0] > 0 ? best / _re[0] : 0;
    }
}
