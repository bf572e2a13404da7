using Quarterlight.Endurance.Heat;

namespace Quarterlight.Drawing;

/// <summary>By which figure a heat picture shows how people feel.</summary>
internal enum StrainKind
{
    /// <summary>Predicted mean vote.</summary>
    Pmv,

    /// <summary>Heat index.</summary>
    HeatIndex,

    /// <summary>Wet-bulb globe temperature.</summary>
    Wbgt,
}

/// <summary>What of a heat report the picture shows, without what cannot be drawn.</summary>
internal sealed class HeatView
{
    /// <summary>Predicted mean vote up to which people stay comfortable, either way: ISO 7730 category C.</summary>
    public const double ComfortPmv = 0.7;

    /// <summary>Carbon dioxide at which the picture draws its line, ppm.</summary>
    public const double StaleAirPpm = 2500;

    public HeatView(HeatReport report, DayTime day, TemperatureUnit unit)
    {
        Report = report;
        Day = day;
        Unit = unit;
        Samples = [.. report.Samples.Where(s => double.IsFinite(s.Minute) && s.Minute >= 0).OrderBy(s => s.Minute)];
        Blocks = [.. report.Rhythm.Blocks.Where(b => double.IsFinite(b.StartMin) && double.IsFinite(b.EndMin) && b.StartMin >= 0 && b.EndMin > b.StartMin).OrderBy(b => b.StartMin)];
        EndMin = Math.Max(10, Math.Max(Samples.Count > 0 ? Samples[^1].Minute : 0, Blocks.Count > 0 ? Blocks.Max(b => b.EndMin) : 0));
        Strain = KindOf();
        ComfortSpans = [.. Comfortable()];
    }

    public HeatReport Report { get; }

    public DayTime Day { get; }

    public TemperatureUnit Unit { get; }

    /// <summary>Samples in time order.</summary>
    public IReadOnlyList<HeatSample> Samples { get; }

    /// <summary>Blocks in time order, none without length; empty when there is no rhythm.</summary>
    public IReadOnlyList<HeatBlock> Blocks { get; }

    /// <summary>End of the day, minutes, at least 10.</summary>
    public double EndMin { get; }

    /// <summary>What the panel of strain shows: the vote for a rhythm that keeps comfort, unless it mostly does not hold.</summary>
    public StrainKind Strain { get; }

    /// <summary>Stretches of minutes in which the vote is within <see cref="ComfortPmv"/>.</summary>
    public IReadOnlyList<(double FromMin, double ToMin)> ComfortSpans { get; }

    /// <summary>True when there is a rhythm.</summary>
    public bool Possible => Report.Rhythm.Possible;

    /// <summary>When and how the limit kept would be met by rolling on from the first take; null when it is not met in the picture.</summary>
    public (double Minute, HeatLimitTime Limit)? RollingOn
    {
        get
        {
            HeatLimitTime? limit = Report.Limits.FirstOrDefault(l => l.Kind == Report.Rhythm.Limit);
            double? from = Blocks.FirstOrDefault(b => b.Kind == HeatBlockKind.Roll)?.StartMin;
            return limit?.Minutes is { } minutes && from is { } start && double.IsFinite(minutes) && start + minutes <= EndMin ? (start + minutes, limit) : null;
        }
    }

    /// <summary>Figure of strain of a sample, temperatures in the unit; null where it does not hold.</summary>
    public double? StrainOf(HeatSample sample) => Finite(Strain switch
    {
        StrainKind.Pmv => sample.Pmv,
        StrainKind.HeatIndex => sample.HeatIndexC is { } c ? TemperatureWords.Value(c, Unit) : null,
        _ => TemperatureWords.Value(sample.WbgtC, Unit),
    });

    /// <summary>Highest of a figure over the samples; null when none is finite.</summary>
    public (double Value, double Minute)? Highest(Func<HeatSample, double?> figure)
    {
        (double Value, double Minute)? best = null;
        foreach (HeatSample sample in Samples)
        {
            if (Finite(figure(sample)) is { } value && (best is null || value > best.Value.Value))
            {
                best = (value, sample.Minute);
            }
        }

        return best;
    }

    /// <summary>Lowest of a figure over the samples; null when none is finite.</summary>
    public double? Lowest(Func<HeatSample, double?> figure) => Highest(s => -figure(s))?.Value is { } negative ? -negative : null;

    public static double? Finite(double? value) => value is { } v && double.IsFinite(v) ? v : null;

    private StrainKind KindOf()
    {
        bool Mostly(Func<HeatSample, double?> figure) => Samples.Count > 0 && 2 * Samples.Count(s => Finite(figure(s)) is not null) >= Samples.Count;
        return Report.Rhythm.Limit == HeatLimitKind.Comfort && Mostly(s => s.Pmv) ? StrainKind.Pmv : Mostly(s => s.HeatIndexC) ? StrainKind.HeatIndex : StrainKind.Wbgt;
    }

    /// <summary>Each sample stands for the time to the next, the last for as long as the one before it.</summary>
    private IEnumerable<(double FromMin, double ToMin)> Comfortable()
    {
        (double From, double To)? span = null;
        for (int i = 0; i < Samples.Count; i++)
        {
            double from = Samples[i].Minute, to = Math.Min(i + 1 < Samples.Count ? Samples[i + 1].Minute : EndMin, EndMin);
            bool holds = Samples[i].Pmv is { } pmv && Math.Abs(pmv) <= ComfortPmv;
            if (holds)
            {
                span = (span?.From ?? from, to);
            }
            else if (span is { } done)
            {
                yield return done;
                span = null;
            }
        }

        if (span is { } last)
        {
            yield return last;
        }
    }
}
