using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.ForecastWordings;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>Heat in words: the decision first, then how long to what, how to alternate, what would help.</summary>
internal static class HeatText
{
    private const int MostOptions = 3, MostCautions = 2, MostBlocks = 12;

    // The planner's remark that the air is cool before the car is: it belongs to "how long do we cool first?".
    private const string TrimStillHot = "trim-still-hot";

    /// <summary>What was asked, in one line; a warning first where someone could come to harm.</summary>
    public static string Headline(HeatShown shown) => HeatDecision.Warning(shown) + HeatDecision.Of(shown);

    /// <summary>The standard answer, about eight lines.</summary>
    public static List<CrewLine> Lines(HeatShown shown, bool detailed)
    {
        HeatAspect aspect = HeatDecision.Aspect(shown);
        List<CrewLine> lines = [];
        if (aspect == HeatAspect.CoolFirst && shown.Report.Advisories.FirstOrDefault(a => a.Code == TrimStillHot) is { } trim)
        {
            lines.Add(new(CrewLineKind.Figures, $"{shown.Sentence(trim.Message)}."));
        }

        if (Limits(shown, aspect == HeatAspect.Roll && !shown.Cold) is { Length: > 0 } limits)
        {
            lines.Add(new(CrewLineKind.Figures, limits));
        }

        if (aspect is not (HeatAspect.Rhythm or HeatAspect.Between) && !shown.Cold)
        {
            lines.Add(new(CrewLineKind.Plain, "Rhythm: " + RadioWordings.Lower(HeatDecision.Rhythm(shown))));
        }

        if (shown.Cautious is { Possible: true } cautious)
        {
            lines.Add(new(CrewLineKind.Plain, "Short of caution instead of comfort: " + RadioWordings.Lower(HeatDecision.Alternating(cautious, shown.DayMin))));
        }

        if (aspect != HeatAspect.CoolFirst)
        {
            lines.Add(new(CrewLineKind.Plain, "Before the first take: " + RadioWordings.Lower(HeatDecision.CoolFirst(shown))));
        }

        if ((aspect == HeatAspect.HowHot || detailed) && EndOfTake(shown) is { } end)
        {
            lines.Add(new(CrewLineKind.Figures, end));
        }

        if (Options(shown, detailed) is { Length: > 0 } options)
        {
            lines.Add(new(CrewLineKind.Plain, options));
        }

        if (detailed)
        {
            lines.Add(new(CrewLineKind.Figures, Sun(shown)));
            lines.AddRange(Blocks(shown));
        }

        lines.AddRange(RadioWordings.Cautions(shown.Report.Advisories.Where(a => aspect != HeatAspect.CoolFirst || a.Code != TrimStillHot).Select(a => new Advisory(a) { Message = shown.Sentence(a.Message) }), shown.Units, detailed ? int.MaxValue : MostCautions));
        return lines;
    }

    // The worst end of a take, when it says more than the limits do.
    private static string? EndOfTake(HeatShown shown)
    {
        HeatBlock? roll = shown.Rhythm.Blocks.Where(b => b.Kind == HeatBlockKind.Roll).MaxBy(b => b.EndAirC);
        HeatSample? sample = roll is null ? null : shown.Report.Samples.LastOrDefault(s => s.Minute <= roll.EndMin + 0.5);
        if (roll is null || sample is null)
        {
            return null;
        }

        string people = sample.HasPpdPercent ? Say($", {sample.PpdPercent:0} in 100 would complain") : "";
        return Say($"End of a take at worst: {shown.Temperature(roll.EndAirC)}, trim {shown.Temperature(sample.InteriorC)}, {sample.RelativeHumidityPercent:0} % humidity, CO2 {sample.Co2Ppm:0} ppm{people}.");
    }

    // What the headline says already is not said again.
    private static string Limits(HeatShown shown, bool said)
    {
        IEnumerable<HeatLimitTime> limits = shown.Report.Strictest ? shown.Report.Limits.Take(1) : shown.Report.Limits;
        string[] reasons = [.. limits.Where(l => l.HasMinutes && l.Reason.Length > 0).Select(l => $"{(shown.Report.Strictest ? "met" : Limit(l.Kind))} by {RadioWordings.Lower(shown.Sentence(l.Reason))}")];
        string why = string.Join("; ", reasons);
        string now = HeatDecision.Steps(shown, worst: false).Replace(HeatDecision.OnlyLimit, "", StringComparison.Ordinal), worst = HeatDecision.Steps(shown, worst: true).Replace(HeatDecision.OnlyLimit, "", StringComparison.Ordinal);
        string atWorst = worst == now ? "" : $"at worst {worst.Replace("about ", "", StringComparison.Ordinal)}";
        if (said)
        {
            return atWorst.Length > 0 ? Capital(why.Length > 0 ? $"{atWorst} ({why})." : $"{atWorst}.") : why.Length > 0 ? Capital($"{why}.") : "";
        }

        string car = shown.Report is { HasPrecoolMin: true, PrecoolMin: < 0.5 } ? "Fan off" : "Fan off in a cooled car";
        return $"{car}: {now}{(atWorst.Length > 0 ? $"; {atWorst}" : "")}{(why.Length > 0 ? $" ({why})" : "")}.";
    }

    private static string Options(HeatShown shown, bool detailed)
    {
        HeatOption[] best = [.. shown.Report.Options.Take(detailed ? int.MaxValue : MostOptions)];
        return best.Length == 0 ? "" : $"What would help: {string.Join("; ", best.Select(o => $"{RadioWordings.Lower(shown.Sentence(o.Words))} {(o.HasMinutes ? Minutes(o.Minutes) : "no limit")}"))}.";
    }

    private static string Sun(HeatShown shown) => shown.Report.SunAtStart is not { } start || shown.Report.SunAtEnd is not { } end ? "No sun was computed."
        : Say($"Sun at the start {start.ElevationDeg:0}° high and {start.GainW:0} W into the cabin, at the end {end.ElevationDeg:0}° and {end.GainW:0} W.");

    private static IEnumerable<CrewLine> Blocks(HeatShown shown)
    {
        DateTimeOffset? from = Start(shown.Setup.Day);
        foreach (HeatBlock block in shown.Rhythm.Blocks.Take(MostBlocks))
        {
            string what = block.Kind == HeatBlockKind.Roll ? "roll" : "cool";
            yield return new(CrewLineKind.Figures, Say($"{Capital(At(from, block.StartMin))} {what} {Minutes(block.EndMin - block.StartMin)}, ends at {shown.Temperature(block.EndAirC)}."));
        }
    }
}
