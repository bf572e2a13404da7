namespace Quarterlight.Clips.Levels;

/// <summary>Compares two channels of a stream: identical, polarity, delay within ±20 ms.</summary>
/// <remarks>
/// Coarse: both are averaged down to about 8 kHz, their low end turned down, and multiplied at every lag over the whole stream. Fine: the loudest
/// stretch of about
/// 0.13 s is kept at full rate and searched near the coarse lag, with a parabola through the top. Memory does not grow; a call allocates nothing.
/// </remarks>
public sealed class ChannelRelationMeter
{
    /// <summary>Correlation from which channels count as related (judgement).</summary>
    public const double LeastCorrelation = 0.3;

    private const double CoarseRateHz = 8_000, MaxDelaySeconds = 0.02;
    private const float LowEnd = 0.95f;

    // Values of the past that the coarse filter needs, a channel.
    private const int Past = 3;

    private readonly double _sampleRateHz;
    private readonly int _ratio, _maxLag;
    private readonly ChannelBlocks _blocks;
    private readonly LagCorrelator _coarse;
    private readonly float[] _bestA, _bestB, _past = new float[2 * Past];
    private double _bestEnergy;
    private bool _differs, _any;

    /// <summary>Begins a comparison.</summary>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    /// <param name="channels">Channels of a frame, in <see cref="LevelLimits.Channels"/>.</param>
    /// <param name="first">Index of the first channel, from 0.</param>
    /// <param name="second">Index of the second channel, from 0.</param>
    public ChannelRelationMeter(double sampleRateHz, int channels, int first, int second)
    {
        LevelLimits.Check(sampleRateHz, channels);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)first, (uint)channels, nameof(first));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)second, (uint)channels, nameof(second));
        _sampleRateHz = sampleRateHz;
        _ratio = Math.Max(1, (int)Math.Round(sampleRateHz / CoarseRateHz));
        int coarseLag = (int)Math.Ceiling(MaxDelaySeconds * sampleRateHz / _ratio);
        _maxLag = coarseLag * _ratio;
        _coarse = new LagCorrelator(coarseLag);
        _blocks = new ChannelBlocks(channels, LagCorrelator.Block * _ratio, 2 * _maxLag, first, second);
        (_bestA, _bestB) = (new float[_blocks.Plane(0).Length], new float[_blocks.Plane(0).Length]);
    }

    /// <summary>Adds a piece of any number of whole frames.</summary>
    /// <param name="interleaved">Samples, full scale ±1, frame by frame.</param>
    public void Add(ReadOnlySpan<float> interleaved)
    {
        _any |= !interleaved.IsEmpty;
        while (!interleaved.IsEmpty)
        {
            interleaved = _blocks.Take(interleaved);
            if (_blocks.Full)
            {
                EndBlock();
            }
        }
    }

    /// <summary>What was found so far.</summary>
    public ChannelRelation Measure()
    {
        LagCorrelator coarse = _coarse.Copy();
        Span<float> past = stackalloc float[2 * Past];
        _past.CopyTo(past);
        Reduce(coarse, past);
        coarse.Add();
        coarse.NextA.Clear();
        coarse.NextB.Clear();
        coarse.Add();
        (int lag, double correlation) = coarse.Best();
        bool related = Math.Abs(correlation) >= LeastCorrelation, tail = Energy() > _bestEnergy;
        double? delay = related
            ? Fine(tail ? _blocks.Plane(0) : _bestA, tail ? _blocks.Plane(1) : _bestB, lag * _ratio, Math.Sign(correlation))
            : null;
        return new ChannelRelation
        {
            Identical = _any && !_differs && SameBlock(),
            Correlation = correlation,
            DelaySamples = delay,
            DelayMs = delay * 1000 / _sampleRateHz,
            LevelDifferenceDb = coarse.EnergyRatio is > 0 and < double.PositiveInfinity ? 10 * Math.Log10(coarse.EnergyRatio) : null,
        };
    }

    private void EndBlock()
    {
        _differs |= !SameBlock();
        double energy = Energy();
        if (energy > _bestEnergy)
        {
            _bestEnergy = energy;
            _blocks.Plane(0).CopyTo(_bestA);
            _blocks.Plane(1).CopyTo(_bestB);
        }

        Reduce(_coarse, _past);
        _coarse.Add();
        _blocks.Next();
    }

    private bool SameBlock() => _blocks.Plane(0)[(2 * _maxLag)..].SequenceEqual(_blocks.Plane(1)[(2 * _maxLag)..]);

    // Of the middle part, for which every lag is at hand.
    private double Energy()
    {
        ReadOnlySpan<float> a = _blocks.Plane(0)[_maxLag..^_maxLag], b = _blocks.Plane(1)[_maxLag..^_maxLag];
        return LagCorrelator.Dot(a, a) * LagCorrelator.Dot(b, b);
    }

    private void Reduce(LagCorrelator to, Span<float> past)
    {
        for (int c = 0; c < 2; c++)
        {
            ReadOnlySpan<float> x = _blocks.Plane(c)[(2 * _maxLag)..];
            Span<float> y = c == 0 ? to.NextA : to.NextB, p = past.Slice(c * Past, Past);
            for (int i = 0; i < y.Length; i++)
            {
                float sum = 0;
                foreach (float v in x.Slice(i * _ratio, _ratio))
                {
                    sum += v;
                }

                // Twice the mean of two against what folds at 4 kHz, so that the lags between the grid's are seen too; then the low end down.
                float once = sum + p[0], twice = once + p[1];
                y[i] = twice - (LowEnd * p[2]);
                (p[0], p[1], p[2]) = (sum, once, twice);
            }
        }
    }

    private double Fine(ReadOnlySpan<float> a, ReadOnlySpan<float> b, int about, int sign)
    {
        (float[] x, float[] y) = (Sharpen(a), Sharpen(b));
        int reach = _ratio == 1 ? 1 : 2 * _ratio, low = Math.Max(-_maxLag, about - reach), high = Math.Min(_maxLag, about + reach);
        var sums = new double[high - low + 1];
        ReadOnlySpan<float> middle = x.AsSpan(_maxLag, x.Length - (2 * _maxLag));
        for (int lag = low; lag <= high; lag++)
        {
            sums[lag - low] = sign * LagCorrelator.Dot(middle, y.AsSpan(_maxLag + lag, middle.Length));
        }

        int best = Array.IndexOf(sums, sums.Max());
        if (sums[best] <= 0)
        {
            return about;
        }

        if (best == 0 || best == sums.Length - 1)
        {
            return low + best;
        }

        double l = sums[best - 1], m = sums[best], r = sums[best + 1], bend = l - (2 * m) + r;
        return low + best + (bend < 0 ? 0.5 * (l - r) / bend : 0);
    }

    private static float[] Sharpen(ReadOnlySpan<float> x)
    {
        var y = new float[x.Length];
        for (int i = 1; i < y.Length; i++)
        {
            y[i] = x[i] - (LowEnd * x[i - 1]);
        }

        return y;
    }
}
