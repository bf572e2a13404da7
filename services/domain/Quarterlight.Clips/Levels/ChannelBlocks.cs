namespace Quarterlight.Clips.Levels;

/// <summary>Splits a stream into blocks of one length, channel by channel, with some samples of the past before each: results never depend on how a
/// stream was cut.</summary>
internal sealed class ChannelBlocks
{
    private readonly float[][] _planes;
    private readonly long[] _notNumbers;
    private readonly int[] _picks;
    private readonly int _channels, _frames, _history;
    private int _filled;

    /// <summary>Makes empty blocks; the past is silence.</summary>
    /// <param name="channels">Channels of a frame.</param>
    /// <param name="frames">Frames of a block.</param>
    /// <param name="history">Samples of the past before each block.</param>
    /// <param name="picks">Channels kept, in this order; all if empty.</param>
    public ChannelBlocks(int channels, int frames, int history, params int[] picks)
    {
        (_channels, _frames, _history) = (channels, frames, history);
        _picks = picks.Length > 0 ? picks : [.. Enumerable.Range(0, channels)];
        _planes = [.. _picks.Select(_ => new float[history + frames])];
        _notNumbers = new long[_picks.Length];
    }

    /// <summary>Frames of the blocks before this one.</summary>
    public long Start { get; private set; }

    /// <summary>Frames in the block so far.</summary>
    public int Filled => _filled;

    /// <summary>True when the block can take no more.</summary>
    public bool Full => _filled == _frames;

    /// <summary>History and block of a channel; behind the filled part stands 0.</summary>
    public ReadOnlySpan<float> Plane(int channel) => _planes[channel];

    /// <summary>Samples of a channel that were no number or infinite, and were taken as 0.</summary>
    public long NotNumbers(int channel) => _notNumbers[channel];

    /// <summary>Takes what fits and returns the rest.</summary>
    public ReadOnlySpan<float> Take(ReadOnlySpan<float> interleaved)
    {
        LevelLimits.CheckFrames(interleaved.Length, _channels);
        int frames = Math.Min(interleaved.Length / _channels, _frames - _filled);
        for (int c = 0; c < _planes.Length; c++)
        {
            Span<float> to = _planes[c].AsSpan(_history + _filled, frames);
            int from = _picks[c], bad = 0;
            for (int i = 0; i < to.Length; i++)
            {
                float x = interleaved[from];
                from += _channels;
                bool good = float.IsFinite(x);
                to[i] = good ? x : 0;
                bad += good ? 0 : 1;
            }

            _notNumbers[c] += bad;
        }

        _filled += frames;
        return interleaved[(frames * _channels)..];
    }

    /// <summary>Begins the next block.</summary>
    public void Next()
    {
        Start += _filled;
        foreach (float[] plane in _planes)
        {
            plane.AsSpan(_filled, _history).CopyTo(plane);
            plane.AsSpan(_history).Clear();
        }

        _filled = 0;
    }
}
