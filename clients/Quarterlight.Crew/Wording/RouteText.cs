using Quarterlight.V1;
using static Quarterlight.Crew.Wording.ForecastWordings;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A route in words: where to roll first, then every stretch.</summary>
internal static class RouteText
{
    private const int MostStretches = 8, MostCautions = 2;

    /// <summary>Where to roll, in one line.</summary>
    public static string Headline(RouteReport report, UnitPreference units)
    {
        QuietRun? clean = report.QuietRuns.FirstOrDefault(r => r.Verdict == SceneVerdict.Works), care = report.QuietRuns.FirstOrDefault(r => r.Verdict == SceneVerdict.WithCare);
        if (clean is null)
        {
            return care is null ? "Nowhere on this route does the scene work, not even with care." : $"Nowhere is it clean; with care {Run(care, units)}.";
        }

        return $"Roll {Run(clean, units)}{(care is not null && care.DurationS > clean.DurationS ? $"; with care {Run(care, units)}" : "")}.";
    }

    /// <summary>The standard answer: a line a stretch, then cautions.</summary>
    public static List<CrewLine> Lines(RouteReport report, UnitPreference units, bool detailed)
    {
        int most = detailed ? int.MaxValue : MostStretches;
        List<CrewLine> lines = [.. report.Stretches.Take(most).Select(s => new CrewLine(CrewLineKind.Figures, Stretch(s, units)))];
        if (report.Stretches.Count > most)
        {
            lines.Add(new(CrewLineKind.Plain, Say($"And {report.Stretches.Count - most} more: ask for details.")));
        }

        lines.AddRange(RadioWordings.Cautions(report.Advisories, units, detailed ? int.MaxValue : MostCautions));
        return lines;
    }

    private static string Run(QuietRun run, UnitPreference units)
    {
        string where = run.FirstLabel == run.LastLabel ? $"on {Name(run.FirstLabel)}" : $"from {Name(run.FirstLabel)} to {Name(run.LastLabel)}";
        return $"{where}: {Seconds(run.DurationS)}, {UnitText.Distance(run.LengthM, units)}";
    }

    private static string Stretch(StretchNoise s, UnitPreference units)
    {
        string snr = s.HasWorstSnrDba ? Say($", speech {s.WorstSnrDba:0} dB over it") : "";
        string verdict = s.Verdict switch { SceneVerdict.Works => "yes", SceneVerdict.WithCare => "with care", SceneVerdict.Unusable => "no", _ => "nobody talks" };
        return Say($"{Capital(Name(s.Label))}: {verdict}, {UnitText.Speed(s.SpeedKmPerHour, units)} for {Seconds(s.DurationS)}, {s.NoiseDba:0} dB(A){snr}; loudest {Name(s.DominantWords)}.");
    }
}
