namespace Quarterlight.Clips.Levels;

/// <summary>Active speech level of each channel of a stream by ITU-T P.56 method B.</summary>
/// <remarks>Memory does not grow with the length; a call allocates nothing. Samples that are no number count as 0.</remarks>
public sealed class ActiveSpeechLevelMeter
{
    private const int BlockFrames = 2048;

    private readonly ChannelBlocks _blocks;
    private readonly SpeechEnvelope[] _envelopes;

    /// <summary>Begins a measurement.</summary>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    /// <param name="channels">Channels of a frame, in <see cref="LevelLimits.Channels"/>.</param>
    public ActiveSpeechLevelMeter(double sampleRateHz, int channels)
    {
        LevelLimits.Check(sampleRateHz, channels);
        _blocks = new ChannelBlocks(channels, BlockFrames, 0);
        _envelopes = [.. Enumerable.Range(0, channels).Select(_ => new SpeechEnvelope(sampleRateHz))];
    }

    /// <summary>Adds a piece of any number of whole frames.</summary>
    /// <param name="interleaved">Samples, full scale ±1, frame by frame.</param>
    public void Add(ReadOnlySpan<float> interleaved)
    {
        while (!interleaved.IsEmpty)
        {
            interleaved = _blocks.Take(interleaved);
            if (_blocks.Full)
            {
                for (int c = 0; c < _envelopes.Length; c++)
                {
                    _envelopes[c].Add(_blocks.Plane(c));
                }

                _blocks.Next();
            }
        }
    }

    /// <summary>Levels so far, channel by channel.</summary>
    public IReadOnlyList<ActiveSpeechLevel> Measure()
    {
        var result = new ActiveSpeechLevel[_envelopes.Length];
        for (int c = 0; c < result.Length; c++)
        {
            SpeechEnvelope envelope = _envelopes[c].Copy();
            envelope.Add(_blocks.Plane(c)[.._blocks.Filled]);
            result[c] = envelope.Measure();
        }

        return result;
    }
}
