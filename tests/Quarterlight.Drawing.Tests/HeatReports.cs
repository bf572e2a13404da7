using Quarterlight.Endurance.Heat;

namespace Quarterlight.Drawing.Tests;

/// <summary>Invented heat reports: air climbs by a fixed number of degrees a minute while rolling and falls while cooling, so that every figure is known in advance.</summary>
internal static class HeatReports
{
    public const string Hostile = "too warm\u202Eevil\u0007 {0} <script> \n\t of a\u0301ll ";

    public static readonly DateTimeOffset Start = new(2031, 7, 3, 9, 40, 0, TimeSpan.FromHours(-7));

    /// <summary>Cool 12 min from 48 degrees, then roll 9 and cool 6, for four hours.</summary>
    public static HeatReport Summer => Of(240, 12, 9, 6);

    /// <summary>Twelve hours of the same.</summary>
    public static HeatReport LongDay => Of(720, 12, 9, 6);

    /// <summary>Takes of half a minute for twelve hours.</summary>
    public static HeatReport ShortTakes => Of(720, 20, 0.5, 1);

    /// <summary>One take fills the day.</summary>
    public static HeatReport OneTake => Of(60, 0, 60, 0) with
    {
        PrecoolMin = 0,
        Limits = [new(HeatLimitKind.Comfort, null, null, ""), new(HeatLimitKind.Caution, null, 41, "the air"), new(HeatLimitKind.Stop, null, null, "")],
    };

    public static HeatReport Impossible
    {
        get
        {
            HeatReport report = Summer;
            return report with
            {
                Rhythm = new(false, HeatLimitKind.Comfort, 0, 0, 0, 0, []),
                Limits = [new(HeatLimitKind.Comfort, 0, 0, "the operative temperature"), new(HeatLimitKind.Caution, 0.4, 0.2, "the heat index"), new(HeatLimitKind.Stop, 11, 7, "the heat index")],
                PrecoolMin = null,
                LowestAirC = 31.4,
                Samples = [.. report.Samples.Select(s => s with { AirC = 31.4 + (s.Minute / 100), OperativeC = 36, InteriorC = 44, Pmv = null, HeatIndexC = 38 })],
            };
        }
    }

    /// <summary>Children aboard, caution kept, no vote holds, and every text is hostile.</summary>
    public static HeatReport Strict
    {
        get
        {
            HeatReport report = Summer;
            return report with
            {
                Strictest = true,
                Rhythm = report.Rhythm with { Limit = HeatLimitKind.Caution },
                Limits = [.. report.Limits.Select(l => l with { Reason = string.Concat(Enumerable.Repeat(Hostile, 20)) })],
                Samples = [.. report.Samples.Select(s => s with { Pmv = null })],
                Advisories = [new("safety", string.Concat(Enumerable.Repeat(Hostile, 40)), Quantities.AdvisorySeverity.Safety)],
            };
        }
    }

    public static HeatReport SingleSample => Summer with { Samples = [Summer.Samples[30]] };

    public static HeatReport NoSamples => Summer with { Samples = [] };

    /// <summary>What is not a number wherever there is a figure.</summary>
    public static HeatReport NotNumbers
    {
        get
        {
            HeatReport report = Summer;
            return report with
            {
                SoakedAirC = double.NaN,
                PrecoolMin = double.NaN,
                Limits = [new(HeatLimitKind.Comfort, double.NaN, double.PositiveInfinity, ""), new(HeatLimitKind.Caution, double.PositiveInfinity, double.NaN, ""), new(HeatLimitKind.Stop, null, null, "")],
                Rhythm = report.Rhythm with { RollingFraction = double.NaN, Blocks = [.. report.Rhythm.Blocks, new(HeatBlockKind.Roll, double.NaN, 5, 20), new(HeatBlockKind.Cool, 20, double.PositiveInfinity, 20)] },
                Samples = [.. report.Samples.Select((s, i) => i % 3 == 0 ? s with { AirC = double.NaN, OperativeC = double.NegativeInfinity, InteriorC = double.PositiveInfinity, Pmv = double.NaN, Co2Ppm = double.NaN, WbgtC = double.NaN, HeatIndexC = double.NaN } : s)],
            };
        }
    }

    public static IReadOnlyList<HeatReport> All => [Summer, LongDay, ShortTakes, OneTake, Impossible, Strict, SingleSample, NoSamples, NotNumbers];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, 9)];

    private static HeatReport Of(double durationMin, double precoolMin, double rollMin, double coolMin)
    {
        List<HeatBlock> blocks = [];
        if (precoolMin > 0)
        {
            blocks.Add(new(HeatBlockKind.Precool, 0, precoolMin, 18));
        }

        int takes = 0;
        for (double at = precoolMin; at < durationMin; at += rollMin + coolMin)
        {
            double end = Math.Min(durationMin, at + rollMin), cooled = Math.Min(durationMin, at + rollMin + coolMin);
            blocks.Add(new(HeatBlockKind.Roll, at, end, 26));
            if (cooled > end)
            {
                blocks.Add(new(HeatBlockKind.Cool, end, cooled, 18));
            }

            takes++;
        }

        return new()
        {
            Limits = [new(HeatLimitKind.Comfort, 9.4, 7.1, "the predicted mean vote"), new(HeatLimitKind.Caution, 24, 18, "the heat index"), new(HeatLimitKind.Stop, null, 71, "stale air")],
            SoakedAirC = 48,
            PrecoolMin = precoolMin,
            Rhythm = new(true, HeatLimitKind.Comfort, rollMin, coolMin, takes, rollMin / (rollMin + coolMin), blocks),
            Samples = [.. Enumerable.Range(0, (int)durationMin + 1).Select(m => Sample(m, precoolMin, rollMin, coolMin))],
            Options = [new("full-shade", "Stand in the shade", 21, 6, 0.8)],
            SunAtStart = new(40, 110, 900),
            SunAtEnd = new(60, 200, 1000),
            Strictest = false,
            Advisories = [new("heat", "People differ; watch them.", Quantities.AdvisorySeverity.Caution)],
        };
    }

    // 48 to 18 degrees in the first minutes; then 18 up to 26 over a take and down again; the vote is nought at 22 and 0.2 a degree.
    private static HeatSample Sample(double minute, double precoolMin, double rollMin, double coolMin)
    {
        double air, share = 0;
        if (minute < precoolMin)
        {
            air = 48 - (30 * minute / precoolMin);
        }
        else
        {
            double into = (minute - precoolMin) % (rollMin + coolMin);
            share = into <= rollMin ? into / rollMin : 1 - ((into - rollMin) / coolMin);
            air = 18 + (8 * share);
        }

        double interior = minute < precoolMin ? 56 - (18 * minute / precoolMin) : 38 - Math.Min(6, minute / 60), operative = (air + interior) / 2;
        return new()
        {
            Minute = minute,
            AirC = air,
            InteriorC = interior,
            OperativeC = operative,
            RelativeHumidityPercent = 40,
            Pmv = operative > 32 ? null : (operative - 26) * 0.25,
            WbgtC = air - 3,
            HeatIndexC = air + 2,
            Co2Ppm = 500 + (2400 * share),
        };
    }
}
