namespace Quarterlight.Clips.Levels;

/// <summary>Peak, mean, rms, clipping, digital silence and dropouts of each channel of a stream.</summary>
/// <remarks>Memory does not grow with the length; a call allocates nothing. Samples that are no number count as 0 and are counted.</remarks>
public sealed class SampleMeter
{
    /// <summary>Step within which samples count as alike at the top: two steps of 16 bits.</summary>
    public const double DefaultStep = 2.0 / 32768;

    private const int BlockFrames = 32 * SampleScan.Piece;

    private readonly ChannelBlocks _blocks;
    private readonly SampleScan[] _scans;

    /// <summary>Begins a measurement.</summary>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    /// <param name="channels">Channels of a frame, in <see cref="LevelLimits.Channels"/>.</param>
    /// <param name="listed">How many stretches of a kind are listed; all are counted.</param>
    /// <param name="step">Share of full scale within which samples count as alike at the top, above 0 and below 0.01.</param>
    public SampleMeter(double sampleRateHz, int channels, int listed = 50, double step = DefaultStep)
    {
        LevelLimits.Check(sampleRateHz, channels);
        ArgumentOutOfRangeException.ThrowIfNegative(listed);
        if (!(step > 0 && step < 0.01))
        {
            throw new ArgumentOutOfRangeException(nameof(step), step, "The step must be above 0 and below 0.01.");
        }

        _blocks = new ChannelBlocks(channels, BlockFrames, 1);
        _scans = [.. Enumerable.Range(0, channels).Select(_ => new SampleScan(sampleRateHz, (float)step, listed))];
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
                    _scans[c].Add(_blocks.Plane(c));
                }

                _blocks.Next();
            }
        }
    }

    /// <summary>What was found so far, channel by channel.</summary>
    public IReadOnlyList<SampleLevels> Measure()
    {
        var result = new SampleLevels[_scans.Length];
        for (int c = 0; c < result.Length; c++)
        {
            SampleScan scan = _scans[c].Copy();
            scan.Add(_blocks.Plane(c)[..(_blocks.Filled + 1)]);
            result[c] = scan.Finish(_blocks.NotNumbers(c));
        }

        return result;
    }
}
