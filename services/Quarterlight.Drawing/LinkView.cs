using Quarterlight.Radio.Link;

namespace Quarterlight.Drawing;

/// <summary>What part of a link report the picture shows, and the figures read off its curve.</summary>
internal sealed class LinkView
{
    private const double RoomForWordsDb = 8;
    private const double LeastLevelSpanDb = 40;

    // Two decades: beyond that the bands of interest get too narrow to tell apart on a phone.
    private const double WidestRatio = 100;

    public LinkView(LinkReport report, DistanceUnit unit, double? targetSnrDb)
    {
        Report = report;
        Unit = unit;
        Curve = [.. report.Curve.Where(p => double.IsFinite(p.LevelDbm) && p.DistanceM > 0).OrderBy(p => p.DistanceM)];
        HasSnr = Curve.Any(p => p.SnrDb is { } snr && double.IsFinite(snr));
        TargetIsStated = targetSnrDb is not null;
        TargetSnrDb = HasSnr ? targetSnrDb ?? SnrAtLevel(report.NeededLevelDbm) : null;
        LawfulShiftDb = report.LawfulLevelDbm - report.LevelDbm;
        Bands = [.. report.Ranges.Append(report.AskedRange).DistinctBy(r => Math.Round(r.AvailabilityFraction, 4)).OrderByDescending(r => r.AvailabilityFraction)];
        (LowM, HighM) = DistanceView();
        (BottomDbm, TopDbm) = LevelView();
        double highest = Curve.Where(p => p.DistanceM >= LowM && p.DistanceM <= HighM).Select(p => p.SnrDb ?? 0).Append(report.SnrDb ?? 0).Append(TargetSnrDb ?? 0).Where(double.IsFinite).Max();
        TopSnrDb = Math.Max(30, 10 * Math.Ceiling((highest + 2) / 10));
    }

    public LinkReport Report { get; }

    public DistanceUnit Unit { get; }

    /// <summary>The curve without points that cannot be drawn, nearest first.</summary>
    public IReadOnlyList<LinkPoint> Curve { get; }

    /// <summary>True for an analogue link, which has an audio signal over noise.</summary>
    public bool HasSnr { get; }

    /// <summary>The audio signal over noise asked for; else what the curve has at the level needed; null when it has none.</summary>
    public double? TargetSnrDb { get; }

    /// <summary>True when the caller stated the target.</summary>
    public bool TargetIsStated { get; }

    /// <summary>How far the lawful level lies above the level, in dB, mostly negative; null without one.</summary>
    public double? LawfulShiftDb { get; }

    /// <summary>The ranges, surest first, the one asked for among them.</summary>
    public IReadOnlyList<LinkRange> Bands { get; }

    public double LowM { get; }

    public double HighM { get; }

    public double BottomDbm { get; }

    public double TopDbm { get; }

    public double TopSnrDb { get; }

    /// <summary>True when the gap lies where the path model does not hold.</summary>
    public bool GapIsOutsideTheModel => Report.GapM > Report.Path.FarthestM || Report.GapM < Report.Path.NearestM;

    public string Distance(double distanceM) => FigureWords.Distance(distanceM, Unit);

    /// <summary>What a range says, such as 99 % to 45 m.</summary>
    public string RangeWords(LinkRange range) => range switch
    {
        { RangeM: <= 0 } => $"{FigureWords.Share(range.AvailabilityFraction)} nowhere",
        { BeyondModel: true } => $"{FigureWords.Share(range.AvailabilityFraction)} beyond {Distance(range.RangeM)}",
        _ => $"{FigureWords.Share(range.AvailabilityFraction)} to {Distance(range.RangeM)}",
    };

    private double? SnrAtLevel(double levelDbm)
    {
        for (int i = 1; i < Curve.Count; i++)
        {
            (LinkPoint near, LinkPoint far) = (Curve[i - 1], Curve[i]);
            if (near.LevelDbm >= levelDbm && far.LevelDbm <= levelDbm && near.SnrDb is { } a && far.SnrDb is { } b)
            {
                double t = near.LevelDbm > far.LevelDbm ? (near.LevelDbm - levelDbm) / (near.LevelDbm - far.LevelDbm) : 0;
                double snr = a + (t * (b - a));
                return double.IsFinite(snr) ? snr : null;
            }
        }

        return null;
    }

    /// <summary>From half the nearest to beyond the farthest distance of interest, at least a decade.</summary>
    private (double LowM, double HighM) DistanceView()
    {
        double[] asked = [Report.GapM, .. Bands.Select(b => b.RangeM), Report.LawfulRange?.RangeM ?? 0];
        double[] positive = [.. asked.Where(d => d > 0 && double.IsFinite(d)), .. asked.All(d => d <= 0) ? [10.0] : Array.Empty<double>()];
        double low = positive.Min() / 2, high = positive.Max() * 1.3;
        // Nothing is known nearer than the curve starts, but the gap must stay in the picture.
        double start = Curve.Count > 0 ? Curve[0].DistanceM : low;
        low = Math.Min(Math.Max(Math.Max(low, start), high / WidestRatio), Report.GapM > 0 ? Report.GapM / 1.4 : double.MaxValue);
        if (high / low < 10)
        {
            low = Math.Min(low, Math.Max(start, high / 10));
            high = Math.Max(high, low * 10);
        }

        return (low, high);
    }

    private (double BottomDbm, double TopDbm) LevelView()
    {
        IEnumerable<double> seen = Curve.Where(p => p.DistanceM >= LowM && p.DistanceM <= HighM).Select(p => p.LevelDbm);
        double[] levels = [.. seen, Report.LevelDbm, Report.NeededLevelDbm + RoomForWordsDb, Report.NoiseDbm + RoomForWordsDb];
        double top = levels.Max();
        double bottom = Math.Min(Report.NeededLevelDbm, Report.NoiseDbm) - 10;
        bottom = Math.Min(bottom, Report.LevelDbm - 5);
        if (LawfulShiftDb is { } shift)
        {
            // Enough of the lawful curve to be seen, however far below it runs.
            double highest = levels.SkipLast(2).Max() + shift;
            top = Math.Max(top, Math.Min(highest, top + 30));
            bottom = Math.Min(bottom, highest - 25);
        }

        top = 10 * Math.Ceiling((top + 2) / 10);
        return (10 * Math.Floor(Math.Min(bottom, top - LeastLevelSpanDb) / 10), top);
    }
}
