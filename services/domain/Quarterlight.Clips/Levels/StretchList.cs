namespace Quarterlight.Clips.Levels;

/// <summary>Counts stretches and keeps the first of them.</summary>
internal sealed class StretchList(int limit)
{
    private readonly (long Start, long Samples)[] _first = new (long, long)[limit];
    private int _kept;
    private long _samples;

    /// <summary>How many there are.</summary>
    public long Count { get; private set; }

    /// <summary>Adds one.</summary>
    public void Add(long start, long samples)
    {
        Count++;
        _samples += samples;
        if (_kept < _first.Length)
        {
            _first[_kept++] = (start, samples);
        }
    }

    /// <summary>Forgets all.</summary>
    public void Clear() => (_kept, _samples, Count) = (0, 0, 0);

    /// <summary>A copy to add to.</summary>
    public StretchList Copy()
    {
        var copy = new StretchList(_first.Length) { _kept = _kept, _samples = _samples, Count = Count };
        _first.CopyTo(copy._first, 0);
        return copy;
    }

    /// <summary>These and others as one, in order of time.</summary>
    public static Stretches Merge(double sampleRateHz, params ReadOnlySpan<StretchList> lists)
    {
        List<(long Start, long Samples)> all = [];
        (long count, long samples) = (0, 0);
        foreach (StretchList list in lists)
        {
            all.AddRange(list._first.AsSpan(0, list._kept));
            (count, samples) = (count + list.Count, samples + list._samples);
        }

        IEnumerable<(long Start, long Samples)> first = all.OrderBy(s => s.Start).Take(lists[0]._first.Length);
        return new Stretches(count, samples, [.. first.Select(s => new Stretch(s.Start / sampleRateHz, s.Samples))]);
    }
}
