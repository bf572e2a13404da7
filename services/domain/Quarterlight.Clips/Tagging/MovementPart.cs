namespace Quarterlight.Clips.Tagging;

/// <summary>How the sound moves: spread of its level, change over 16 ms to 0.64 s in three bands, and how much of it is voice-like.</summary>
internal sealed class MovementPart(int longest)
{
    private static readonly int[] s_lags = [1, 4, 16, 40];
    private static readonly string[] s_bands = ["low", "mid", "high"];
    private readonly float[] _harmonic = new float[longest];
    private readonly float[] _levels = new float[longest];

    public static IEnumerable<string> Names =>
    [
        "spread_90_50", "spread_50_10", "spread_10_02",
        .. s_bands.SelectMany(b => s_lags.Select(l => $"change_{b}_{l}")),
        "harmonic_p90", "harmonic_p50", "harmonic_floor",
    ];

    public void Write(HeardFrames frames, long from, long to, ReadOnlySpan<float> sortedLevels, float floorLimitDb, ref Span<float> row)
    {
        float At(ReadOnlySpan<float> sorted, double share) => sorted[(int)(share * (sorted.Length - 1))];
        ShapePart.Put(ref row, At(sortedLevels, 0.9) - At(sortedLevels, 0.5));
        ShapePart.Put(ref row, At(sortedLevels, 0.5) - At(sortedLevels, 0.1));
        ShapePart.Put(ref row, At(sortedLevels, 0.1) - At(sortedLevels, 0.02));
        for (int band = 1; band <= 3; band++)
        {
            Span<float> levels = _levels.AsSpan(0, (int)(to - from));
            for (int i = 0; i < levels.Length; i++)
            {
                levels[i] = frames.Of(from + i)[band];
            }

            foreach (int lag in s_lags)
            {
                ShapePart.Put(ref row, Change(levels, lag));
            }
        }

        int count = 0;
        double floor = 0;
        int floorCount = 0;
        for (long f = from; f < to; f++)
        {
            ReadOnlySpan<float> values = frames.Of(f);
            _harmonic[count++] = values[4];
            if (values[0] <= floorLimitDb)
            {
                floor += values[4];
                floorCount++;
            }
        }

        Span<float> sortedHarmonic = _harmonic.AsSpan(0, count);
        sortedHarmonic.Sort();
        ShapePart.Put(ref row, At(sortedHarmonic, 0.9));
        ShapePart.Put(ref row, At(sortedHarmonic, 0.5));
        ShapePart.Put(ref row, floor / Math.Max(1, floorCount));
    }

    // Root of half the mean squared difference of levels a lag apart, dB.
    private static double Change(ReadOnlySpan<float> levels, int lag)
    {
        double sum = 0;
        for (int i = lag; i < levels.Length; i++)
        {
            double d = levels[i] - levels[i - lag];
            sum += d * d;
        }

        return Math.Sqrt(sum / 2 / Math.Max(1, levels.Length - lag));
    }
}
