namespace Quarterlight.Clips.Tagging;

/// <summary>The last slow spectra (0.5 s, 0.25 s apart), with the median of each bin over a stretch of them: what comes and goes drops out, lines that stay remain.</summary>
internal sealed class SlowRing(int frames, int bins)
{
    // Bin after bin, so that the frames of one bin lie together.
    private readonly float[] _power = new float[frames * bins];
    private readonly float[] _frame = new float[bins];
    private readonly float[] _sorted = new float[frames];
    private readonly double[] _median = new double[bins];

    public long Count { get; private set; }

    public void Take(long index, ReadOnlySpan<double> power)
    {
        int place = (int)(index % frames);
        for (int k = 0; k < bins; k++)
        {
            _power[(k * frames) + place] = (float)power[k];
        }

        Count = index + 1;
    }

    /// <summary>One spectrum, until the next is asked for.</summary>
    public ReadOnlySpan<float> Of(long index)
    {
        int place = (int)(index % frames);
        for (int k = 0; k < bins; k++)
        {
            _frame[k] = _power[(k * frames) + place];
        }

        return _frame;
    }

    public ReadOnlySpan<double> Median(long from, long to)
    {
        Span<float> sorted = _sorted.AsSpan(0, (int)(to - from));
        for (int k = 0; k < bins; k++)
        {
            int start = (int)(from % frames), first = Math.Min(sorted.Length, frames - start);
            _power.AsSpan((k * frames) + start, first).CopyTo(sorted);
            _power.AsSpan(k * frames, sorted.Length - first).CopyTo(sorted[first..]);

            sorted.Sort();
            _median[k] = sorted[sorted.Length / 2];
        }

        return _median;
    }
}
