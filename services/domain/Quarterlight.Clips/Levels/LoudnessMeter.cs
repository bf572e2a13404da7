using System.Runtime.Intrinsics;

namespace Quarterlight.Clips.Levels;

/// <summary>Loudness of a stream by ITU-R BS.1770-5 Annex 1, EBU Tech 3341 and Tech 3342: of each channel and of all together.</summary>
/// <remarks>Memory does not grow with the length; a call allocates nothing. Samples that are no number count as 0.</remarks>
public sealed class LoudnessMeter
{
    private const int MaxScratchFrames = 512;

    private readonly double _sampleRateHz;
    private readonly int _channels;
    private readonly double[] _weights;
    private readonly KFilter[] _filters;
    private readonly LoudnessWindows _programme;
    private readonly LoudnessWindows[] _each;
    private readonly float[] _lanes = new float[MaxScratchFrames * KFilter.Lanes];
    private long _frames, _steps, _edge;

    /// <summary>Begins a measurement.</summary>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    /// <param name="channels">Channels of a frame, in <see cref="LevelLimits.Channels"/>.</param>
    /// <param name="weights">Weight of each channel in the sum of all, 0 or more; 1 each if left out, as for separate tracks.</param>
    public LoudnessMeter(double sampleRateHz, int channels, IReadOnlyList<double>? weights = null)
    {
        LevelLimits.Check(sampleRateHz, channels);
        if (weights is not null && (weights.Count != channels || weights.Any(w => !double.IsFinite(w) || w < 0)))
        {
            throw new ArgumentException("There must be one weight of 0 or more for each channel.", nameof(weights));
        }

        (_sampleRateHz, _channels) = (sampleRateHz, channels);
        _weights = weights is null ? [.. Enumerable.Repeat(1.0, channels)] : [.. weights];
        FilterSection shelf = KWeighting.Shelf(sampleRateHz), highPass = KWeighting.HighPass(sampleRateHz);
        _filters = [.. Enumerable.Range(0, (channels + KFilter.Lanes - 1) / KFilter.Lanes).Select(_ => new KFilter(shelf, highPass))];
        _programme = new LoudnessWindows(sampleRateHz);

        // One channel of weight 1 is the programme already.
        _each = channels == 1 && _weights[0] == 1 ? [_programme] : [.. Enumerable.Range(0, channels).Select(_ => new LoudnessWindows(sampleRateHz))];
        _edge = LoudnessWindows.Edge(1, sampleRateHz);
    }

    /// <summary>Weights of left, right, centre, left surround, right surround (BS.1770-5 Annex 1).</summary>
    public static IReadOnlyList<double> SurroundWeights { get; } = [1, 1, 1, 1.41, 1.41];

    /// <summary>Adds a piece of any number of whole frames.</summary>
    /// <param name="interleaved">Samples, full scale ±1, frame by frame.</param>
    public void Add(ReadOnlySpan<float> interleaved)
    {
        LevelLimits.CheckFrames(interleaved.Length, _channels);
        while (!interleaved.IsEmpty)
        {
            int frames = (int)Math.Min(Math.Min(interleaved.Length / _channels, MaxScratchFrames), _edge - _frames);
            for (int g = 0; g < _filters.Length; g++)
            {
                Spread(interleaved[..(frames * _channels)], g * KFilter.Lanes);
                _filters[g].Add(_lanes.AsSpan(0, frames * KFilter.Lanes));
            }

            interleaved = interleaved[(frames * _channels)..];
            _frames += frames;
            if (_frames == _edge)
            {
                EndStep();
            }
        }
    }

    /// <summary>What was found so far; a started step of 10 ms at the end is left out.</summary>
    public LoudnessReport Measure()
    {
        Loudness programme = _programme.Measure();
        return new LoudnessReport(programme, [.. _each.Select(e => e == _programme ? programme : e.Measure())]);
    }

    // Puts up to four channels side by side; lanes without a channel stay 0.
    private void Spread(ReadOnlySpan<float> interleaved, int first)
    {
        int lanes = Math.Min(KFilter.Lanes, _channels - first);
        for (int lane = 0; lane < lanes; lane++)
        {
            int to = lane;
            for (int from = first + lane; from < interleaved.Length; from += _channels)
            {
                float x = interleaved[from];
                _lanes[to] = float.IsFinite(x) ? x : 0;
                to += KFilter.Lanes;
            }
        }

        for (int lane = lanes; _filters.Length > 1 && lane < KFilter.Lanes; lane++)
        {
            for (int to = lane; to < _lanes.Length; to += KFilter.Lanes)
            {
                _lanes[to] = 0;
            }
        }
    }

    private void EndStep()
    {
        double all = 0;
        for (int g = 0; g < _filters.Length; g++)
        {
            Vector256<double> sums = _filters[g].TakeSums();
            for (int c = g * KFilter.Lanes; c < Math.Min((g + 1) * KFilter.Lanes, _channels); c++)
            {
                double sum = sums[c % KFilter.Lanes];
                all += _weights[c] * sum;
                if (_each[c] != _programme)
                {
                    _each[c].Add(sum);
                }
            }
        }

        _programme.Add(all);
        _edge = LoudnessWindows.Edge(++_steps + 1, _sampleRateHz);
    }
}
