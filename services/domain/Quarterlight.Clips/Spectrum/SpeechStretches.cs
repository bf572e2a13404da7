using Quarterlight.Clips.Judgement;

namespace Quarterlight.Clips.Spectrum;

/// <summary>Where there was speech: stretches of frames, the longest of them kept.</summary>
/// <param name="hopSeconds">Time from one frame to the next, s; a frame lasts twice as long.</param>
internal sealed class SpeechStretches(double hopSeconds)
{
    /// <summary>Most stretches kept.</summary>
    public const int Most = 200;

    private readonly (long First, long Last)[] _kept = new (long, long)[Most];
    private int _count;
    private long _first = -1, _last;

    /// <summary>A speech frame; frames come in order.</summary>
    /// <param name="frame">Number of the frame.</param>
    /// <param name="joined">True when it belongs to the stretch under way.</param>
    public void Add(long frame, bool joined)
    {
        if (_first < 0 || !joined)
        {
            Close();
            _first = frame;
        }

        _last = frame;
    }

    /// <summary>The stretches in order of time; ends the one under way.</summary>
    public IReadOnlyList<TimeStretch> Finish()
    {
        Close();

        // The middle half of a frame belongs to it alone.
        return [.. _kept.Take(_count).OrderBy(s => s.First).Select(s => new TimeStretch((s.First + 0.5) * hopSeconds, (s.Last + 1.5) * hopSeconds))];
    }

    private void Close()
    {
        if (_first < 0)
        {
            return;
        }

        if (_count < Most)
        {
            _kept[_count++] = (_first, _last);
        }
        else
        {
            int shortest = 0;
            for (int i = 1; i < Most; i++)
            {
                shortest = _kept[i].Last - _kept[i].First < _kept[shortest].Last - _kept[shortest].First ? i : shortest;
            }

            if (_last - _first > _kept[shortest].Last - _kept[shortest].First)
            {
                _kept[shortest] = (_first, _last);
            }
        }

        _first = -1;
    }
}
