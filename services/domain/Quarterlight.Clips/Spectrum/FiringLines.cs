namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// How well a firing frequency fits the lines of the last three slow frames. Score, dB: mean height (<see cref="LineHeights"/>) at up to five multiples,
/// weighted 1/√n, less half the mean height half way between them and half that at one and two thirds of the first, where a wrong candidate finds
/// lines too. The highest line counts for at most 10 dB more than the second, and fewer than two multiples below 800 Hz are no answer.
/// </summary>
internal sealed class FiringLines
{
    private const int MaxMultiples = 5;
    private const int Averaged = 3;
    private const double LoneDb = 10;
    private static readonly double[] s_weights = [.. Enumerable.Range(0, MaxMultiples + 1).Select(n => 1 / Math.Sqrt(Math.Max(1, n)))];
    private readonly LineHeights _lines;
    private readonly double[][] _last;
    private readonly double[] _smooth;
    private readonly double[] _wide;
    private readonly double _binHz;

    public FiringLines(double binHz)
    {
        _binHz = binHz;
        _lines = new LineHeights((int)(Decimator.PassHz / binHz) + 1);
        _wide = new double[_lines.Heights.Length];
        _smooth = new double[_wide.Length];
        _last = [.. Enumerable.Range(0, Averaged).Select(_ => new double[_wide.Length])];
    }

    /// <summary>How far each bin stood above its neighbourhood when last taken, dB.</summary>
    public ReadOnlySpan<double> Heights => _lines.Heights;

    // The mean of up to three frames, 2 s in all: noise comes and goes, orders stay. Then each bin takes the highest of its neighbours,
    // so that no line falls between two candidates.
    public void Take(long index, ReadOnlySpan<double> power)
    {
        int frames = (int)Math.Min(index + 1, Averaged);
        power[.._smooth.Length].CopyTo(_last[(int)(index % Averaged)]);
        for (int k = 0; k < _smooth.Length; k++)
        {
            _smooth[k] = 0;
            for (int f = 0; f < frames; f++)
            {
                _smooth[k] += _last[f][k] / frames;
            }
        }

        _lines.Take(_smooth);
        ReadOnlySpan<double> heights = _lines.Heights;
        for (int k = 1; k < _wide.Length - 1; k++)
        {
            _wide[k] = Math.Max(heights[k], Math.Max(heights[k - 1], heights[k + 1]));
        }
    }

    public double Score(double firingHz)
    {
        int multiples = Multiples(firingHz);
        if (multiples < 2)
        {
            return 0;
        }

        double on = 0, between = 0, weights = 0, highest = 0, second = 0, highestWeight = 0;
        for (int n = 1; n <= multiples; n++)
        {
            double height = HeightAt(n * firingHz);
            (highest, second, highestWeight) = height > highest
                ? (height, highest, s_weights[n])
                : (highest, Math.Max(second, height), highestWeight);
            on += s_weights[n] * height;
            between += s_weights[n] * HeightAt((n - 0.5) * firingHz);
            weights += s_weights[n];
        }

        // A lone tone is no engine.
        on -= highestWeight * Math.Max(0, highest - second - LoneDb);
        double thirds = (HeightAt(firingHz / 3) + HeightAt(firingHz * 2 / 3)) / 2;
        return ((on - (0.5 * between)) / weights) - (0.5 * thirds);
    }

    // Least squares over the peaks near each multiple: f = sum h n p / sum h n².
    public double Refine(double firingHz)
    {
        ReadOnlySpan<double> heights = _lines.Heights;
        double top = 0, bottom = 0;
        for (int n = 1; n <= Multiples(firingHz); n++)
        {
            double at = n * firingHz / _binHz;
            double reach = Math.Max(1.5, at * 0.008);
            int peak = (int)Math.Round(at);
            for (int k = Math.Max(1, (int)(at - reach)); k <= Math.Min(heights.Length - 2, (int)(at + reach) + 1); k++)
            {
                peak = heights[k] > heights[peak] ? k : peak;
            }

            double a = heights[peak - 1], b = heights[peak], c = heights[peak + 1];
            double bend = a - (2 * b) + c;
            double place = peak + (bend < 0 ? Math.Clamp(0.5 * (a - c) / bend, -0.5, 0.5) : 0);
            top += b * n * place * _binHz;
            bottom += b * n * n;
        }

        return bottom > 0 ? top / bottom : firingHz;
    }

    // How much the even multiples stand above the odd ones, dB. The firing order has both; half of it finds only what lies between, such as the
    // turning of the crank.
    public double EvenOverOdd(double firingHz)
    {
        Span<double> sums = stackalloc double[2], counts = stackalloc double[2];
        for (int n = 1; n <= MaxMultiples && n * firingHz < (_wide.Length - 2) * _binHz; n++)
        {
            sums[n % 2] += HeightAt(n * firingHz);
            counts[n % 2]++;
        }

        return counts[0] > 0 ? (sums[0] / counts[0]) - (sums[1] / counts[1]) : 0;
    }

    // Level of the lines in one frame alone, dB.
    public double Level(ReadOnlySpan<double> power, double firingHz)
    {
        double sum = 1e-20;
        for (int n = 1; n <= Multiples(firingHz); n++)
        {
            sum += BinSums.Between(power, _binHz, (n * firingHz * 0.99) - (2 * _binHz), (n * firingHz * 1.01) + (2 * _binHz));
        }

        return 10 * Math.Log10(sum);
    }

    private int Multiples(double firingHz) => Math.Min(MaxMultiples, (int)((_wide.Length - 2) * _binHz / firingHz));

    private double HeightAt(double hz)
    {
        double at = hz / _binHz;
        int k = (int)at;
        return _wide[k] + ((at - k) * (_wide[k + 1] - _wide[k]));
    }
}
