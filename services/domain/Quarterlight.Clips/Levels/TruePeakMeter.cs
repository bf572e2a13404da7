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

    private readonly double _sampleRateHz;
    private readonly ChannelBlocks _blocks;
    private readonly Interpolator _interpolator;
    private readonly float[] _peaks;
    private readonly double[] _places;

    /// <summary>Begins a measurement.</summary>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    /// <param name="channels">Channels of a frame, in <see cref="LevelLimits.Channels"/>.</param>
    public TruePeakMeter(double sampleRateHz, int channels)
    {
        LevelLimits.Check(sampleRateHz, channels);
        _sampleRateHz = sampleRateHz;
        _blocks = new ChannelBlocks(channels, BlockFrames, (2 * Interpolator.Half) - 1);
        _interpolator = new Interpolator(sampleRateHz <= 64_000 ? 8 : sampleRateHz <= 128_000 ? 4 : 2);
        (_peaks, _places) = (new float[channels], new double[channels]);
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
                for (int c = 0; c < _peaks.Length; c++)
                {
                    Look(_blocks.Plane(c), BlockFrames, ref _peaks[c], ref _places[c]);
                }

                _blocks.Next();
            }
        }
    }

    /// <summary>The peaks so far, channel by channel, as if silence followed.</summary>
    public IReadOnlyList<TruePeak> Measure()
    {
        var result = new TruePeak[_peaks.Length];
        Span<float> tail = new float[BlockFrames + (3 * Interpolator.Half)];
        for (int c = 0; c < result.Length; c++)
        {
            tail.Clear();
            _blocks.Plane(c).CopyTo(tail);
            (float peak, double place) = (_peaks[c], _places[c]);
            int count = (_blocks.Filled + Interpolator.Half + 15) / 16 * 16;
            Look(tail, count, ref peak, ref place);
            result[c] = peak > 0 ? new TruePeak(LevelLimits.Db(peak), place / _sampleRateHz) : new TruePeak(null, null);
        }

        return result;
    }

    private void Look(ReadOnlySpan<float> x, int count, ref float peak, ref double place)
    {
        double found = _interpolator.Raise(x, count, ref peak);
        if (found >= 0)
        {
            // The first sample looked at lags the block by half the interpolator.
            place = Math.Max(0, _blocks.Start - Interpolator.Half + found);
        }
    }
}
