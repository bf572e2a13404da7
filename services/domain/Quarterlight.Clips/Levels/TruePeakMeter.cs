namespace Quarterlight.Clips.Levels;

/// <summary>True peak of a channel: the highest point of the curve through the samples.</summary>
/// <param name="PeakDbtp">Level in dB re full scale (dBTP); null when the channel is all zeros.</param>
/// <param name="Seconds">Where it stands, in seconds from the start; null with it.</param>
public sealed record TruePeak(double? PeakDbtp, double? Seconds);

/// <summary>True peak of each channel of a stream by ITU-R BS.1770-5 Annex 2, with a finer grid than asked for.</summary>
/// <remarks>
/// Grid: eight times the sample rate up to 64 kHz, four times up to 128 kHz, twice above. Worst shortfall, of a sine at 0.4 of the sample rate: 20
/// lg cos(pi 0.4 / 8) = -0.11 dB.
/// Memory does not grow with the length; a call allocates nothing. Samples that are no number count as 0.
/// </remarks>
public sealed class TruePeakMeter
{
    // Looked at in a block: a multiple of every vector length.
    private const int BlockFrames = 2048;

    private readonly ChannelBlocks _blocks;
    private readonly PeakScan[] _scans;

    /// <summary>Begins a measurement.</summary>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    /// <param name="channels">Channels of a frame, in <see cref="LevelLimits.Channels"/>.</param>
    public TruePeakMeter(double sampleRateHz, int channels)
    {
        LevelLimits.Check(sampleRateHz, channels);
        _blocks = new ChannelBlocks(channels, BlockFrames, PeakScan.History);
        Interpolator grid = PeakScan.GridFor(sampleRateHz);
        _scans = [.. Enumerable.Range(0, channels).Select(_ => new PeakScan(grid, sampleRateHz))];
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
                for (int c = 0; c < _scans.Length; c++)
                {
                    _scans[c].Add(_blocks.Plane(c), _blocks.Start);
                }

                _blocks.Next();
            }
        }
    }

    /// <summary>The peaks so far, channel by channel, as if silence followed.</summary>
    public IReadOnlyList<TruePeak> Measure() => [.. _scans.Select((s, c) => s.Measure(_blocks.Plane(c), _blocks.Filled, _blocks.Start))];
}
