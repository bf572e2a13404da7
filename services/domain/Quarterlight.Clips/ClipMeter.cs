using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips;

/// <summary>
/// Measures a clip in one pass: levels, loudness, spectrum, speech, tags, timeline, and how its channels hang together. Takes pieces of any number of
/// whole frames, with the same result.
/// </summary>
/// <remarks>
/// Memory does not grow with the length, but for the tags and engine speeds of each second. A call allocates nothing, but for those. Samples that are no
/// number count as 0 and are counted. One instance serves one caller at a time.
/// </remarks>
public sealed class ClipMeter
{
    private const int BlockFrames = 2048, AllPairsUpTo = 4;

    private readonly int _sampleRateHz, _channels;
    private readonly ChannelBlocks _blocks;
    private readonly ChannelMeter[] _meters;
    private readonly LoudnessMeter _loudness;
    private readonly ChannelPairs _pairs;
    private long _frames;
    private bool _finished;

    /// <summary>Starts a clip.</summary>
    /// <param name="sampleRateHz">Frames a second, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    /// <param name="channels">Channels of a frame, in <see cref="LevelLimits.Channels"/>.</param>
    /// <param name="options">What to look for; the defaults if left out.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public ClipMeter(int sampleRateHz, int channels, ClipMeterOptions? options = null)
    {
        LevelLimits.Check(sampleRateHz, channels);
        options ??= new ClipMeterOptions();
        (_sampleRateHz, _channels) = (sampleRateHz, channels);
        _blocks = new ChannelBlocks(channels, BlockFrames, ChannelMeter.History);
        Interpolator grid = PeakScan.GridFor(sampleRateHz);
        _meters = [.. Enumerable.Range(0, channels).Select(c => new ChannelMeter(c, sampleRateHz, grid, options))];
        _loudness = new LoudnessMeter(sampleRateHz, channels);
        _pairs = new ChannelPairs(sampleRateHz, channels, channels <= AllPairsUpTo);
    }

    /// <summary>Seconds taken so far.</summary>
    public double Seconds => _frames / (double)_sampleRateHz;

    /// <summary>Adds a piece of any number of whole frames.</summary>
    /// <param name="interleaved">Samples, full scale ±1, frame by frame.</param>
    /// <exception cref="ArgumentException">The piece is no whole number of frames.</exception>
    /// <exception cref="InvalidOperationException">The clip has been finished.</exception>
    public void Add(ReadOnlySpan<float> interleaved)
    {
        ThrowIfFinished();
        LevelLimits.CheckFrames(interleaved.Length, _channels);
        _frames += interleaved.Length / _channels;
        _loudness.Add(interleaved);
        _pairs.Add(interleaved);
        while (!interleaved.IsEmpty)
        {
            interleaved = _blocks.Take(interleaved);
            if (_blocks.Full)
            {
                for (int c = 0; c < _meters.Length; c++)
                {
                    _meters[c].Add(_blocks.Plane(c), _blocks.Start);
                }

                _pairs.Digest(_blocks, ChannelMeter.History);
                _blocks.Next();
            }
        }
    }

    /// <summary>Ends the clip and gives all that was measured.</summary>
    /// <exception cref="InvalidOperationException">The clip has been finished before.</exception>
    public ClipMeasures Finish()
    {
        ThrowIfFinished();
        _finished = true;
        LoudnessReport loudness = _loudness.Measure();
        var channels = new ChannelMeasures[_channels];
        for (int c = 0; c < channels.Length; c++)
        {
            channels[c] = _meters[c].Finish(_blocks.Plane(c), _blocks.Filled, _blocks.Start, _blocks.NotNumbers(c), loudness.Channels[c]);
        }

        _pairs.Digest(_blocks, ChannelMeter.History);
        return new ClipMeasures
        {
            DurationSeconds = Seconds,
            SampleRateHz = _sampleRateHz,
            Channels = channels,
            Programme = loudness.Programme,
            Pairs = _pairs.Finish(channels),
        };
    }

    private void ThrowIfFinished()
    {
        if (_finished)
        {
            throw new InvalidOperationException("The clip has been finished; start a new one.");
        }
    }
}
