namespace Quarterlight.Clips.Levels;

/// <summary>Finds runs of one repeated sample: digital silence, and dropouts inside sound.</summary>
internal sealed class RepeatTracker(double sampleRateHz, int limit)
{
    // Judgement: quieter than -40 dB re full scale is no sound here, because the crest of a low tone of few bits stands still too. A cut is
    // sudden: with the sound further off than 5 ms it is the end of a fade.
    private const float Sound = 0.01f;
    private const double DropoutSeconds = 0.002, SilenceSeconds = 0.01, NearSeconds = 0.005;

    private readonly long _dropout = Samples(sampleRateHz, DropoutSeconds), _silence = Samples(sampleRateHz, SilenceSeconds);
    private readonly long _near = Samples(sampleRateHz, NearSeconds);
    private StretchList _silences = new(limit), _dropouts = new(limit);
    private long _start, _length, _lastSound = long.MinValue / 2, _soundBefore, _pendingStart, _pendingLength;
    private float _value = float.NaN;

    /// <summary>Runs of zeros.</summary>
    public StretchList Silences => _silences;

    /// <summary>Runs inside sound.</summary>
    public StretchList Dropouts => _dropouts;

    /// <summary>Nothing is repeated at the moment.</summary>
    public bool Idle => _length <= 1 && _pendingLength == 0;

    /// <summary>A copy to go on with.</summary>
    public RepeatTracker Copy()
    {
        var copy = (RepeatTracker)MemberwiseClone();
        (copy._silences, copy._dropouts) = (_silences.Copy(), _dropouts.Copy());
        return copy;
    }

    /// <summary>Passes over a piece without repetition whose first sample differs from the one before.</summary>
    /// <param name="last">Last sample.</param>
    /// <param name="highest">Highest absolute sample.</param>
    /// <param name="end">Place behind the piece.</param>
    public void Skip(float last, float highest, long end)
    {
        _soundBefore = _lastSound;
        if (highest >= Sound)
        {
            _lastSound = end - 1;
        }

        (_value, _start, _length) = (last, end - 1, 1);
    }

    /// <summary>Adds a sample.</summary>
    /// <param name="x">The sample.</param>
    /// <param name="index">Its place.</param>
    /// <param name="clipped">The sample stands at the level where the channel is cut.</param>
    public void Add(float x, long index, bool clipped)
    {
        if (x == _value)
        {
            _length = clipped ? 1 : _length + 1;
            return;
        }

        Close();
        if (Math.Abs(x) >= Sound)
        {
            if (_pendingLength > 0 && index - (_pendingStart + _pendingLength) <= _near)
            {
                _dropouts.Add(_pendingStart, _pendingLength);
            }

            (_pendingLength, _lastSound) = (0, index);
        }

        (_value, _start, _length, _soundBefore) = (x, index, 1, _lastSound);
    }

    /// <summary>Ends the run under way.</summary>
    public void Close()
    {
        if (_value == 0 && _length >= _silence)
        {
            _silences.Add(_start, _length);
        }

        if (_length >= _dropout && _start - _soundBefore <= _near)
        {
            (_pendingStart, _pendingLength) = (_start, _length);
        }

        _length = 0;
    }

    private static long Samples(double sampleRateHz, double seconds) => (long)Math.Ceiling(sampleRateHz * seconds);
}
