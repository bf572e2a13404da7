using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tagging;

/// <summary>
/// The low end and what repeats: band levels 5 to 160 Hz with their gusts, lines that stay (engine orders, blade pass), and the same lines in
/// the envelope of the treble, where firing shows even when road noise hides it.
/// </summary>
internal sealed class LowPart(double binHz)
{
    private static readonly (double From, double To)[] s_bands = [(5, 20), (20, 40), (40, 80), (80, 160), (160, 320)];
    private readonly FiringLines _lines = new(binHz);
    private readonly FiringLines _pulses = new(binHz);
    private const int Longest = 32;
    private readonly double[] _levels = new double[Longest];
    private readonly double[] _sorted = new double[Longest];
    private readonly double[] _bands = new double[s_bands.Length * Longest];
    private readonly double[] _power = new double[(int)(Decimator.PassHz / binHz) + 2];

    public static IEnumerable<string> Names =>
    [
        .. s_bands.SelectMany(b => new[] { $"low_mean_{b.From}", $"low_floor_{b.From}", $"low_gust_{b.From}" }),
        "line_max_low", "line_max_mid", "line_mean_low", "line_mean_mid", "comb", "comb_slow",
        "pulse_max", "pulse_mean", "pulse_comb", "pulse_depth",
    ];

    public void Write(SlowRing low, SlowRing envelope, long from, long to, double meanReferenceDb, double floorReferenceDb, ref Span<float> row)
    {
        int count = (int)(to - from);
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<float> power = low.Of(from + i);
            for (int k = 0; k < _power.Length; k++)
            {
                _power[k] = power[k];
            }

            for (int b = 0; b < s_bands.Length; b++)
            {
                _bands[(b * Longest) + i] = BinSums.Between(_power, binHz, s_bands[b].From, s_bands[b].To);
            }
        }

        for (int b = 0; b < s_bands.Length; b++)
        {
            PutBand(_bands.AsSpan(b * Longest, count), meanReferenceDb, floorReferenceDb, ref row);
        }

        _lines.Take(0, low.Median(from, to));
        ShapePart.Put(ref row, Highest(_lines.Heights, 15, 120));
        ShapePart.Put(ref row, Highest(_lines.Heights, 120, 700));
        ShapePart.Put(ref row, Mean(_lines.Heights, 15, 120));
        ShapePart.Put(ref row, Mean(_lines.Heights, 120, 700));
        ShapePart.Put(ref row, BestComb(_lines, 22, 180));
        ShapePart.Put(ref row, BestComb(_lines, 8, 22));
        ReadOnlySpan<double> pulses = envelope.Median(from, to);
        _pulses.Take(0, pulses);
        ShapePart.Put(ref row, Highest(_pulses.Heights, 8, 120));
        ShapePart.Put(ref row, Mean(_pulses.Heights, 8, 120));
        ShapePart.Put(ref row, BestComb(_pulses, 8, 120));
        ShapePart.Put(ref row, HeardFrames.Db(BinSums.Between(pulses, binHz, 8, 120)) - HeardFrames.Db(pulses[0] + pulses[1]));
    }

    private double Highest(ReadOnlySpan<double> heights, double fromHz, double toHz)
    {
        double highest = 0;
        for (int k = (int)(fromHz / binHz); k < (int)(toHz / binHz); k++)
        {
            highest = Math.Max(highest, heights[k]);
        }

        return highest;
    }

    private double Mean(ReadOnlySpan<double> heights, double fromHz, double toHz)
    {
        double sum = 0;
        int from = (int)(fromHz / binHz), to = (int)(toHz / binHz);
        for (int k = from; k < to; k++)
        {
            sum += heights[k];
        }

        return sum / (to - from);
    }

    private static double BestComb(FiringLines lines, double fromHz, double toHz)
    {
        double best = 0;
        for (double hz = fromHz; hz < toHz; hz *= 1.01)
        {
            best = Math.Max(best, lines.Score(hz));
        }

        return best;
    }

    private void PutBand(ReadOnlySpan<double> powers, double meanReferenceDb, double floorReferenceDb, ref Span<float> row)
    {
        double sum = 0, change = 0;
        for (int i = 0; i < powers.Length; i++)
        {
            sum += powers[i];
            _levels[i] = HeardFrames.Db(powers[i]);
            double d = i >= 2 ? _levels[i] - _levels[i - 2] : 0;
            change += d * d;
        }

        Span<double> sorted = _sorted.AsSpan(0, powers.Length);
        _levels.AsSpan(0, powers.Length).CopyTo(sorted);
        sorted.Sort();
        ShapePart.Put(ref row, HeardFrames.Db(sum / powers.Length) - meanReferenceDb);
        ShapePart.Put(ref row, sorted[powers.Length / 5] - floorReferenceDb);
        ShapePart.Put(ref row, Math.Sqrt(change / 2 / Math.Max(1, powers.Length - 2)));
    }
}
