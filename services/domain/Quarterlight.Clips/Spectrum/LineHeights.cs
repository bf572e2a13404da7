namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// How far each bin stands above its neighbourhood, dB, 0 to <see cref="TopDb"/>. The neighbourhood's floor is the lower 30 % point of
/// the bins around, every eighth worked out and the rest drawn straight between; lines thus do not lift it. When the highest line stands
/// higher than <see cref="TopDb"/>, all are lowered alike, so that only the strongest lines count.
/// </summary>
internal sealed class LineHeights
{
    public const double TopDb = 30;
    private const int Every = 8;
    private const int MaxReach = 24;
    private readonly double[] _sorted = new double[(2 * MaxReach) + 1];
    private readonly double[] _floors;
    private readonly double[] _heights;

    public LineHeights(int bins)
    {
        _heights = new double[bins];
        _floors = new double[((bins + Every - 1) / Every) + 1];
    }

    public ReadOnlySpan<double> Heights => _heights;

    public void Take(ReadOnlySpan<double> power)
    {
        for (int i = 0; i < _floors.Length; i++)
        {
            _floors[i] = FloorAt(power, Math.Min(i * Every, _heights.Length - 1));
        }

        double highest = 0;
        for (int k = 0; k < _heights.Length; k++)
        {
            double part = k % Every / (double)Every;
            double floor = (_floors[k / Every] * (1 - part)) + (_floors[(k / Every) + 1] * part);
            _heights[k] = floor > 0 && power[k] > floor ? 10 * Math.Log10(power[k] / floor) : 0;
            highest = Math.Max(highest, _heights[k]);
        }

        for (int k = 0; highest > TopDb && k < _heights.Length; k++)
        {
            _heights[k] = Math.Max(0, _heights[k] + TopDb - highest);
        }
    }

    // The reach grows with frequency, so that a steep low end is not flattened into a line.
    private double FloorAt(ReadOnlySpan<double> power, int middle)
    {
        int reach = Math.Clamp(middle / 2, 6, MaxReach);
        int from = Math.Max(1, middle - reach);
        int to = Math.Min(_heights.Length - 1, middle + reach);
        Span<double> sorted = _sorted.AsSpan(0, to - from + 1);
        power.Slice(from, sorted.Length).CopyTo(sorted);
        sorted.Sort();
        return sorted[sorted.Length * 3 / 10];
    }
}
