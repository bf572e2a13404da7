namespace Quarterlight.Clips.Levels;

/// <summary>Finds clipping in the samples of one sign (made positive): runs at full scale, and runs cut flat at the highest level so far.</summary>
/// <remarks>
/// The top of a smooth wave is flat too, but then the samples beside a run of three or more lie at most about three steps lower (a parabola); a cut
/// wave
/// arrives and leaves with its slope. Numbers are judgement.
/// </remarks>
internal sealed class ClipTracker(float step, int limit)
{
    // Shortest run; lowest level of a cut wave (-26 dB re full scale); drop in steps that shows a cut; runs that are kept when the wave goes higher
    // later.
    private const int ShortestRun = 3, KinkSteps = 6, KeptRuns = 10;
    private const float Lowest = 0.05f;

    private StretchList _runs = new(limit);
    private float _top = Lowest, _last, _kink;
    private long _start;
    private int _length;

    /// <summary>A run at the top is under way.</summary>
    public bool Open => _length > 0;

    /// <summary>Samples from here on are at the top.</summary>
    public float Threshold => Math.Min(_top, 1) - step;

    /// <summary>The runs found.</summary>
    public StretchList Runs => _runs;

    /// <summary>A copy to go on with.</summary>
    public ClipTracker Copy()
    {
        var copy = (ClipTracker)MemberwiseClone();
        copy._runs = _runs.Copy();
        return copy;
    }

    /// <summary>Adds a sample.</summary>
    /// <param name="x">The sample.</param>
    /// <param name="before">The sample before it.</param>
    /// <param name="index">Its place.</param>
    public void Add(float x, float before, long index)
    {
        if (x > _top + step && _top < 1 - step)
        {
            _top = x;
            _length = 0;
            if (_runs.Count < KeptRuns)
            {
                _runs.Clear();
            }
        }

        if (x >= Threshold)
        {
            if (_length++ == 0)
            {
                (_start, _kink) = (index, x - before);
            }

            _last = x;
        }
        else
        {
            Close(_last - x);
        }
    }

    /// <summary>Ends the run under way.</summary>
    /// <param name="drop">How far the next sample lies below the run.</param>
    public void Close(float drop)
    {
        if (_length >= ShortestRun && (Threshold >= 1 - (1.5f * step) || Math.Max(_kink, drop) >= KinkSteps * step))
        {
            _runs.Add(_start, _length);
        }

        _length = 0;
    }
}
