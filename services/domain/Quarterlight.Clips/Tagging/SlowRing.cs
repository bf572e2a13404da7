namespace Quarterlight.Clips.Tagging;

/// <summary>The last slow spectra (0.5 s, 0.25 s apart), with the median of each bin over a stretch of them: what comes and goes drops out, lines that stay remain.</summary>
internal sealed class SlowRing(int frames, int bins)
{
    private readonly float[] _power = new float[frames * bins];
    private readonly float[] _sorted = new float[frames];
    private readonly double[] _median = new double[bins];

    public long Count { get; private set; }

    public void Take(long index, ReadOnlySpan<double> power)
    {
        Span<float> kept = _power.AsSpan((int)(index % frames) * bins, bins);
        for (int k = 0; k < bins; k++)
        {
            kept[k] = (float)power[k];
        }

        Count = index + 1;
    }

    public ReadOnlySpan<float> Of(long index) => _power.AsSpan((int)(index % frames) * bins, bins);

    public ReadOnlySpan<double> Median(long from, long to)
    {
        Span<float> sorted = _sorted.AsSpan(0, (int)(to - from));
        for (int k = 0; k < bins; k++)
        {
            for (int f = 0; f < sorted.Length; f++)
            {
                sorted[f] = _power[((int)((from + f) % frames) * bins) + k];
            }

            sorted.Sort();
            _median[k] = sorted[sorted.Length / 2];
        }

        return _median;
    }
}
