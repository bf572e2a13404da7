using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>How hot the cabin gets with the fan off, how long a take may run, and how long to cool before the next.</summary>
/// <remarks>
/// The car stands shut and empty from the soak on, is cooled until the air has the set point and the trim is cooled through (at most an hour), then rolls:
/// cover off, cooling and fan off, people in. When no rhythm keeps the limit, the samples show that cooling and then one roll to the end of the day.
/// </remarks>
public static class HeatForecast
{
    /// <summary>Forecasts a day.</summary>
    /// <exception cref="InvalidInputException">The question is not valid; every fault is named.</exception>
    public static HeatReport Run(HeatTask task)
    {
        IReadOnlyList<Violation> violations = HeatRules.Validate(task, "setup.day", "setup");
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }

        var table = new SunTable(task, task.HeadingDeg, -task.SoakMin - HeatOptions.EarliestMin, task.DurationMin);
        HeatAnswer answer = HeatAnswer.Of(task, table);
        return Report(task, answer, HeatOptions.Of(task, table));
    }

    /// <summary>The forecast and rhythm without options, for measuring.</summary>
    internal static HeatReport RunWithoutOptions(HeatTask task) =>
        Report(task, HeatAnswer.Of(task, new SunTable(task, task.HeadingDeg, -task.SoakMin, task.DurationMin)), []);

    private static HeatReport Report(HeatTask task, HeatAnswer answer, IReadOnlyList<HeatOption> options)
    {
        HeatCase of = answer.Case;
        Precooling cooling = answer.Precooling;
        LimitHit[] worst = answer.AtWorst();
        var times = new HeatLimitTime[worst.Length];
        for (int i = 0; i < times.Length; i++)
        {
            LimitHit hit = answer.Hits[i];
            times[i] = new HeatLimitTime((HeatLimitKind)i, hit.Seconds / 60.0, worst[i].Seconds / 60.0, HeatWords.Reason(hit.Cause, (HeatLimitKind)i, answer.Limits));
        }

        Rhythm rhythm = answer.Rhythm;
        bool possible = rhythm.RollS > 0;
        HeatTimeline line = HeatTimeline.Of(of, answer.Limits, cooling.Soaked, possible ? rhythm : new Rhythm(cooling.StartS, 0, 0));
        int takes = 0;
        foreach (HeatBlock block in line.Blocks)
        {
            takes += block.Kind == HeatBlockKind.Roll && block.EndMin - block.StartMin > (rhythm.RollS / 60.0) - 1e-6 ? 1 : 0;
        }

        var report = new HeatReport
        {
            Limits = times,
            SoakedAirC = cooling.Soaked.AirC,
            PrecoolMin = answer.PrecoolMin,
            LowestAirC = cooling.AirS is null ? cooling.LowestAirC : null,
            Rhythm = possible
                ? new ShootingRhythm(true, task.RhythmLimit, rhythm.RollS / 60.0, rhythm.CoolS / 60.0, takes, answer.RollingShare, line.Blocks)
                : new ShootingRhythm(false, task.RhythmLimit, 0, 0, 0, 0, []),
            Samples = line.Samples,
            Options = options,
            SunAtStart = Sun(task, of, 0),
            SunAtEnd = Sun(task, of, of.DayS),
            Strictest = answer.Limits.Strictest,
            Advisories = [],
        };
        return report with { Advisories = HeatWords.Advisories(task, report, answer) };
    }

    private static SunState Sun(HeatTask task, HeatCase of, int second)
    {
        (double elevation, double azimuth) = SolarPosition.Of(task.Start.AddSeconds(second), task.LatitudeDeg, task.LongitudeDeg);
        return new SunState(elevation, azimuth, of.RollSunW(second));
    }
}
