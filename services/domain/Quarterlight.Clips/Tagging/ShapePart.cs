using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tagging;

/// <summary>
/// Levels and shapes of a stretch of frames: the mean spectrum, and the spectrum of its quietest 15 %, where noise shows between words.
/// </summary>
internal sealed class ShapePart
{
    private const double FloorShare = 0.15;
    private const int Cosines = 5;
    private static readonly (double From, double To)[] s_flat = [(100, 600), (600, 2000), (2000, 6500)];
    private readonly MelBands _mel;
    private readonly double[] _mean = new double[HeardFrames.Bins];
    private readonly double[] _floor = new double[HeardFrames.Bins];
    private readonly double[] _meanDb = new double[MelBands.Count];
    private readonly double[] _floorDb = new double[MelBands.Count];
    private readonly LineHeights _lines = new(HeardFrames.Bins);
    private readonly double _binHz;
    private readonly int _goodBands;
    private readonly double _topHz;

    public ShapePart(double binHz, double topHz)
    {
        (_binHz, _topHz) = (binHz, topHz);
        _mel = new MelBands(HeardFrames.Bins, binHz);
        _goodBands = Enumerable.Range(0, MelBands.Count).Count(b => MelBands.EdgeHz(b + 2) <= topHz);
    }

    public static IEnumerable<string> Names =>
    [
        "level_mean_dba", "level_floor_dba",
        .. Enumerable.Range(0, MelBands.Count).Select(b => $"floor_mel{b}"),
        .. Enumerable.Range(0, MelBands.Count).Select(b => $"mean_mel{b}"),
        .. Enumerable.Range(1, Cosines).Select(c => $"floor_cos{c}"),
        .. Enumerable.Range(1, Cosines).Select(c => $"mean_cos{c}"),
        "rise_low", "rise_mid", "rise_high", "rise_all",
        "floor_flat_low", "floor_flat_mid", "floor_flat_high", "floor_line_max", "floor_line_mean", "floor_ripple",
    ];

    /// <summary>Level the shapes are counted from, dB: mean of the floor's bands.</summary>
    public double FloorReferenceDb { get; private set; }

    public double MeanReferenceDb { get; private set; }

    /// <summary>Highest A-weighted level of a frame that counts as floor, dB.</summary>
    public float FloorLimitDb { get; private set; }

    public void Write(HeardFrames frames, long from, long to, ReadOnlySpan<float> sortedLevels, ref Span<float> row)
    {
        FloorLimitDb = sortedLevels[(int)(FloorShare * (sortedLevels.Length - 1))];
        Average(frames, from, to, float.MaxValue, _mean);
        Average(frames, from, to, FloorLimitDb, _floor);
        MeanReferenceDb = Bands(_mean, _meanDb);
        FloorReferenceDb = Bands(_floor, _floorDb);
        Put(ref row, MeanReferenceDb);
        Put(ref row, FloorLimitDb);
        foreach (double db in _floorDb)
        {
            Put(ref row, db - FloorReferenceDb);
        }

        foreach (double db in _meanDb)
        {
            Put(ref row, db - MeanReferenceDb);
        }

        PutCosines(ref row, _floorDb);
        PutCosines(ref row, _meanDb);
        Put(ref row, Rise(0, 3));
        Put(ref row, Rise(3, 9));
        Put(ref row, Rise(9, MelBands.Count));
        Put(ref row, MeanReferenceDb - FloorReferenceDb);
        PutLines(ref row);
    }

    public static void Put(ref Span<float> row, double value)
    {
        row[0] = double.IsFinite(value) ? (float)value : 0;
        row = row[1..];
    }

    private static void Average(HeardFrames frames, long from, long to, float limitDb, double[] mean)
    {
        Array.Clear(mean);
        int count = 0;
        for (long f = from; f < to; f++)
        {
            if (frames.Of(f)[0] <= limitDb)
            {
                ReadOnlySpan<float> power = frames.Power(f);
                for (int k = 0; k < mean.Length; k++)
                {
                    mean[k] += power[k];
                }

                count++;
            }
        }

        for (int k = 0; k < mean.Length; k++)
        {
            mean[k] /= Math.Max(1, count);
        }
    }

    // Band levels in dB. Bands the clip's rate does not reach go on as the last four fall (0 to 3 dB a band), so that a low rate does not
    // look like a sound without treble.
    private double Bands(double[] power, double[] db)
    {
        _mel.Sum(power, db);
        for (int b = 0; b < db.Length; b++)
        {
            db[b] = HeardFrames.Db(db[b]);
        }

        int last = _goodBands - 1;
        double slope = Math.Clamp((db[last] - db[Math.Max(0, last - 3)]) / 3, -3, 0);
        for (int b = last + 1; b < db.Length; b++)
        {
            db[b] = db[b - 1] + slope;
        }

        return db.Average();
    }

    // Shape as a sum of cosines over the bands, the discrete cosine transform II divided by its length.
    private static void PutCosines(ref Span<float> row, double[] db)
    {
        for (int c = 1; c <= Cosines; c++)
        {
            double sum = 0;
            for (int b = 0; b < db.Length; b++)
            {
                sum += db[b] * Math.Cos(Math.PI * c * (b + 0.5) / db.Length);
            }

            Put(ref row, sum / db.Length);
        }
    }

    private double Rise(int from, int to)
    {
        double sum = 0;
        for (int b = from; b < to; b++)
        {
            sum += _meanDb[b] - _floorDb[b];
        }

        return sum / (to - from);
    }

    private void PutLines(ref Span<float> row)
    {
        double flat = 0;
        foreach ((double fromHz, double toHz) in s_flat)
        {
            // A range the rate does not reach shows what the range below shows.
            flat = toHz * 0.7 > _topHz ? flat : Flatness((int)(fromHz / _binHz), (int)(Math.Min(toHz, _topHz) / _binHz));
            Put(ref row, flat);
        }

        _lines.Take(_floor);
        int last = (int)(Math.Min(6500, _topHz) / _binHz), first = (int)(250 / _binHz);
        double highest = 0, sum = 0, ripple = 0;
        for (int k = first; k < last; k++)
        {
            highest = Math.Max(highest, _lines.Heights[k]);
            sum += _lines.Heights[k];
            ripple += Math.Abs(HeardFrames.Db(_floor[k]) - HeardFrames.Db(_floor[k - 1]));
        }

        Put(ref row, highest);
        Put(ref row, sum / (last - first));
        Put(ref row, ripple / (last - first));
    }

    private double Flatness(int from, int to)
    {
        double logs = 0, sum = 0;
        for (int k = from; k < to; k++)
        {
            logs += HeardFrames.Db(_floor[k]);
            sum += _floor[k];
        }

        return (logs / (to - from)) - HeardFrames.Db(sum / (to - from));
    }
}
