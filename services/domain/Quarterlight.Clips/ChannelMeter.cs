using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips;

/// <summary>All meters of one channel, fed with blocks of one length and some past before each.</summary>
internal sealed class ChannelMeter
{
    /// <summary>Samples of the past before each block.</summary>
    public const int History = PeakScan.History;

    private const int Listed = 50;

    private readonly int _index;
    private readonly SampleScan _samples;
    private readonly PeakScan _peak;
    private readonly SpeechEnvelope _envelope;
    private readonly ClipSpectrum _spectrum;
    private readonly TimelineMeter? _timeline;
    private readonly FeatureFrontEnd? _heard;
    private readonly ISoundTagger? _tagger;

    /// <summary>Starts a channel.</summary>
    public ChannelMeter(int index, int sampleRateHz, Interpolator grid, ClipMeterOptions options)
    {
        _index = index;
        _samples = new SampleScan(sampleRateHz, (float)SampleMeter.DefaultStep, Listed);
        _peak = new PeakScan(grid, sampleRateHz);
        _envelope = new SpeechEnvelope(sampleRateHz);
        _spectrum = new ClipSpectrum(sampleRateHz, options.Cylinders, frame: options.Timeline ? TakeFrame : null);
        _timeline = options.Timeline ? new TimelineMeter(sampleRateHz, _spectrum.FastBins) : null;
        _tagger = options.Tagger;
        _heard = _tagger is null ? null : new FeatureFrontEnd(sampleRateHz);
    }

    /// <summary>Adds a whole block.</summary>
    /// <param name="x"><see cref="History"/> samples of the past, then the block.</param>
    /// <param name="start">Place of the block's first sample.</param>
    public void Add(ReadOnlySpan<float> x, long start)
    {
        _peak.Add(x, start);
        AddSamples(x);
    }

    /// <summary>Ends the channel with a block that may be part full.</summary>
    /// <param name="x"><see cref="History"/> samples of the past, then the block, 0 behind its filled part.</param>
    /// <param name="filled">Samples of the block.</param>
    /// <param name="start">Place of the block's first sample.</param>
    /// <param name="notNumbers">Samples that were no number.</param>
    /// <param name="loudness">Loudness of the channel.</param>
    public ChannelMeasures Finish(ReadOnlySpan<float> x, int filled, long start, long notNumbers, Loudness loudness)
    {
        TruePeak peak = _peak.Measure(x, filled, start);
        AddSamples(x[..(History + filled)]);
        SampleLevels samples = _samples.Finish(notNumbers);
        ClipSpectrumReport spectrum = _spectrum.Finish();
        return new ChannelMeasures
        {
            Index = _index,
            Samples = samples,
            TruePeak = peak,
            Loudness = loudness,
            SpeechLevel = _envelope.Measure(),
            Spectrum = spectrum,
            Speech = spectrum.Speech,
            Tags = _heard is null || samples.PeakDbfs is null ? null : ClipTagger.Tag(_heard.Finish(), _tagger!),
            Timeline = _timeline?.Finish() ?? TimelineMeter.Empty,
        };
    }

    private void AddSamples(ReadOnlySpan<float> x)
    {
        _samples.Add(x[(History - 1)..]);
        ReadOnlySpan<float> block = x[History..];
        _envelope.Add(block);
        _timeline?.Add(block);
        _spectrum.AddNumbers(block);
        _heard?.AddNumbers(block);
    }

    private void TakeFrame(long index, ReadOnlySpan<double> power) => _timeline!.Take(power);
}
