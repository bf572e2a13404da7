using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tagging;

/// <summary>
/// What the tagger hears in one channel: a row of features for each second, from a window of up to 3 s around it (at both ends of the clip
/// the window is made up on the other side). One pass, pieces of any size, the same result to the last bit; allocates only once a second.
/// </summary>
/// <remarks>
/// All rates are brought to 16 kHz first, and nothing above 7 kHz is used, so that a recording is not told by its rate. A sample that is not
/// a number counts as 0. Symbols and sources: docs/models/tagger.md.
/// </remarks>
public sealed class FeatureFrontEnd
{
    /// <summary>Shortest clip that gives features, s.</summary>
    public const double ShortestSeconds = 0.5;

    private const double WindowSeconds = 3;
    private const int SlowSize = 1024;
    private readonly AnalysisResampler _resampler;
    private readonly SpectrumFrames _fast;
    private readonly Decimator _lowDecimator = new(AnalysisResampler.RateHz);
    private readonly Decimator _envelopeDecimator = new(AnalysisResampler.RateHz);
    private readonly SpectrumFrames _low;
    private readonly SpectrumFrames _envelope;
    private readonly HeardFrames _frames;
    private readonly SlowRing _lowRing;
    private readonly SlowRing _envelopeRing;
    private readonly ShapePart _shape;
    private readonly MovementPart _movement;
    private readonly LowPart _lowPart;
    private readonly List<float[]> _rows = [];
    private readonly float[] _piece = new float[1024];
    private readonly float[] _swing = new float[1024];
    private readonly float[] _levels;
    private readonly double _rateHz;
    private float _before;
    private long _samples;
    private bool _finished;

    /// <summary>Starts a clip.</summary>
    /// <param name="rateHz">Samples a second, 8000 to 192 000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is out of range.</exception>
    public FeatureFrontEnd(double rateHz)
    {
        if (!LevelLimits.SampleRateHz.Contains(rateHz))
        {
            throw new ArgumentOutOfRangeException(nameof(rateHz), rateHz, $"The rate must be {LevelLimits.SampleRateHz.Min} to {LevelLimits.SampleRateHz.Max} Hz.");
        }

        _rateHz = rateHz;
        _resampler = new AnalysisResampler(rateHz, Take);
        _fast = new SpectrumFrames(AnalysisResampler.RateHz, HeardFrames.Size, TakeFast);
        int window = (int)(WindowSeconds / _fast.HopSeconds) + 1;
        _levels = new float[window];
        _frames = new HeardFrames(window + 2, _fast.BinHz);
        _shape = new ShapePart(_fast.BinHz, Math.Min(MelBands.HighestHz, 0.44 * rateHz), window);
        _movement = new MovementPart(window);
        int lowBins = (int)(Decimator.PassHz * SlowSize / _lowDecimator.RateHz) + 2;
        _lowRing = new SlowRing(16, lowBins);
        _envelopeRing = new SlowRing(16, lowBins);
        _low = new SpectrumFrames(_lowDecimator.RateHz, SlowSize, _lowRing.Take);
        _envelope = new SpectrumFrames(_envelopeDecimator.RateHz, SlowSize, _envelopeRing.Take);
        _lowPart = new LowPart(_low.BinHz);
    }

    /// <summary>Names of the features, in the order of a row.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. ShapePart.Names, .. MovementPart.Names, .. LowPart.Names];

    /// <summary>Values in a row.</summary>
    public static int Count => Names.Count;

    /// <summary>Takes the next samples, full scale 1.</summary>
    /// <exception cref="InvalidOperationException">The clip has been finished.</exception>
    public void Add(ReadOnlySpan<float> mono)
    {
        if (_finished)
        {
            throw new InvalidOperationException("The clip has been finished; start a new one.");
        }

        while (!mono.IsEmpty)
        {
            Span<float> piece = _piece.AsSpan(0, Math.Min(mono.Length, _piece.Length));
            for (int i = 0; i < piece.Length; i++)
            {
                piece[i] = float.IsFinite(mono[i]) ? mono[i] : 0;
            }

            mono = mono[piece.Length..];
            AddNumbers(piece);
        }
    }

    /// <summary>The same for samples that are known to be numbers.</summary>
    internal void AddNumbers(ReadOnlySpan<float> mono)
    {
        _samples += mono.Length;
        _resampler.Add(mono);
    }

    /// <summary>Ends the clip and gives its features.</summary>
    /// <exception cref="InvalidOperationException">The clip has been finished before.</exception>
    public ClipFeatures Finish()
    {
        if (_finished)
        {
            throw new InvalidOperationException("The clip has been finished; start a new one.");
        }

        _finished = true;
        _resampler.Finish();
        double duration = _samples / _rateHz;
        if (duration < ShortestSeconds || _fast.Count == 0)
        {
            return new(duration, []);
        }

        // A clip shorter than a slow frame is followed by silence, so that there is one.
        while (_lowRing.Count == 0)
        {
            TakeSlow(new float[256]);
        }

        int count = Math.Max(1, (int)Math.Round(duration, MidpointRounding.AwayFromZero));
        float[] last = Row(Math.Max(0, _fast.Count - (long)(WindowSeconds / _fast.HopSeconds)), _fast.Count);
        while (_rows.Count < count)
        {
            _rows.Add(last);
        }

        var seconds = new List<FeatureSecond>(count);
        for (int s = 0; s < count; s++)
        {
            double end = s == count - 1 ? duration : s + 1;
            seconds.Add(new(s, end, _rows[s]));
        }

        return new(duration, seconds);
    }

    private void Take(ReadOnlySpan<float> samples)
    {
        TakeSlow(samples);
        _fast.Add(samples);
    }

    // The envelope is the size of the steps from sample to sample: a high pass of 6 dB an octave, then rectified.
    private void TakeSlow(ReadOnlySpan<float> samples)
    {
        for (int i = 0; i < samples.Length; i++)
        {
            _swing[i] = Math.Abs(samples[i] - _before);
            _before = samples[i];
        }

        _lowDecimator.Add(samples, _low);
        _envelopeDecimator.Add(_swing.AsSpan(0, samples.Length), _envelope);
    }

    private void TakeFast(long index, ReadOnlySpan<double> power)
    {
        _frames.Take(index, power);

        // Second k is known when its window, k - 1 to k + 2 s, is full; the first second shares the window of the second one.
        double heard = (index + 2) * _fast.HopSeconds;
        int next = _rows.Count == 0 ? 1 : _rows.Count;
        if (heard >= next + 2)
        {
            float[] row = Row(Math.Max(0, index + 1 - (long)(WindowSeconds / _fast.HopSeconds)), index + 1);
            if (_rows.Count == 0)
            {
                _rows.Add(row);
            }

            _rows.Add(row);
        }
    }

    private float[] Row(long from, long to)
    {
        var row = new float[Count];
        Span<float> rest = row;
        Span<float> levels = _levels.AsSpan(0, (int)(to - from));
        for (int i = 0; i < levels.Length; i++)
        {
            levels[i] = _frames.Of(from + i)[0];
        }

        levels.Sort();
        _shape.Write(_frames, from, to, levels, ref rest);
        _movement.Write(_frames, from, to, levels, _shape.FloorLimitDb, ref rest);
        long slowTo = Math.Max(1, Math.Min(_lowRing.Count, (long)(to * _fast.HopSeconds / _low.HopSeconds)));
        long slowFrom = Math.Max(0, Math.Min(slowTo - 1, (long)(from * _fast.HopSeconds / _low.HopSeconds)));
        _lowPart.Write(_lowRing, _envelopeRing, Math.Max(slowFrom, slowTo - 14), slowTo, _shape.MeanReferenceDb, _shape.FloorReferenceDb, ref rest);
        return row;
    }
}
