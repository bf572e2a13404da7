using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.ForecastWordings;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>The decision about heat, one sentence for each thing that is asked.</summary>
internal static class HeatDecision
{
    /// <summary>What the one limit is called where children, animals or shut-in people make it the only one.</summary>
    public const string OnlyLimit = " to the strictest limit, the only one here";

    /// <summary>What is answered first: what was asked, else what a length or a limit points at.</summary>
    public static HeatAspect Aspect(HeatShown shown) => shown.Said switch
    {
        { Aspect: HeatAspect.Enough, RollMin: null } => HeatAspect.Roll,
        { Aspect: not HeatAspect.Any } said => said.Aspect,
        { RollMin: not null } or { Limit: not null } => HeatAspect.Rhythm,
        _ => HeatAspect.Roll,
    };

    /// <summary>A warning ahead of everything where someone could come to harm; empty where nobody is.</summary>
    public static string Warning(HeatShown shown)
    {
        Occupants people = shown.People;
        string? who = (people.ChildCount > 0, people.AnimalCount > 0) switch
        {
            (true, true) => "a child or an animal",
            (true, false) => "a child",
            (false, true) => "an animal",
            _ => null,
        };
        return people.NobodyCanOpenADoor ? "Someone stays at the door who can open it at once. " : who is null ? "" : $"Never leave {who} alone in the shut car. ";
    }

    /// <summary>The decision.</summary>
    public static string Of(HeatShown shown) => Aspect(shown) switch
    {
        not (HeatAspect.CoolFirst or HeatAspect.HowHot or HeatAspect.Enough) when shown.Cold => Cold(shown),
        HeatAspect.CoolFirst => CoolFirst(shown),
        HeatAspect.HowHot => HowHot(shown),
        HeatAspect.Between => Between(shown),
        HeatAspect.Rhythm => Rhythm(shown),
        HeatAspect.Gains => Gains(shown),
        HeatAspect.Enough => Enough(shown),
        _ => Roll(shown),
    };

    // Against the cold no cooling and no shade helps.
    private static string Cold(HeatShown shown)
    {
        string when = shown.Comfort.Minutes < 1 ? "from the start" : $"after about {Minutes(shown.Comfort.Minutes)}";
        string reason = shown.Sentence(shown.Caution.Reason);
        string hot = shown.Caution.HasMinutes ? $"; caution all the same after about {Minutes(shown.Caution.Minutes)}{(reason.Length > 0 ? $" ({RadioWordings.Lower(reason)})" : "")}" : "";
        return $"Too cold, not too hot, {when}: warm the car and dress for it{hot}.";
    }

    private static string Roll(HeatShown shown)
    {
        if (!shown.Comfort.HasMinutes && !shown.Caution.HasMinutes)
        {
            return $"Roll as long as you like: they stay comfortable all {Span(shown.DayMin)} with the fan off.";
        }

        string help = shown.Comfort is { HasMinutes: true, Minutes: < 1 } ? Help(shown) : "";
        return $"{Capital(Steps(shown, worst: false))}{(help.Length > 0 ? $". {help}" : ".")}";
    }

    /// <summary>"about 11 min until they are uncomfortable, 24 to caution, 41 to stop"; one limit where only the strictest counts.</summary>
    public static string Steps(HeatShown shown, bool worst)
    {
        (HeatLimitTime Limit, string First, string Next)[] all = shown.Report.Strictest ? [(shown.Comfort, OnlyLimit.TrimStart(), "")]
            : [(shown.Comfort, "until they are uncomfortable", ""), (shown.Caution, "to caution", "to caution"), (shown.Stop, "to stop", "to stop")];
        var parts = new List<string>();
        foreach ((HeatLimitTime limit, string first, string next) in all)
        {
            bool known = worst ? limit.HasMinutesAtWorst : limit.HasMinutes;
            double minutes = worst ? limit.MinutesAtWorst : limit.Minutes;
            if (known)
            {
                parts.Add(minutes < 1 ? $"under 1 min {first}" : parts.Count == 0 || parts.All(p => p.StartsWith("under", StringComparison.Ordinal)) ? $"about {Minutes(minutes)} {first}" : Say($"{Math.Floor(minutes + 1e-9):0} {next}"));
            }
            else if (parts.Count == 0 || limit.Kind == HeatLimitKind.Stop || limit.Kind == HeatLimitKind.Caution)
            {
                parts.Add(limit.Kind == HeatLimitKind.Comfort ? $"comfortable all {Span(shown.DayMin)}" : $"no {Limit(limit.Kind)} within {Span(shown.DayMin)}");
                break;
            }
        }

        return string.Join(", ", parts);
    }

    /// <summary>How to alternate.</summary>
    public static string Rhythm(HeatShown shown)
    {
        ShootingRhythm rhythm = shown.Rhythm;
        string keeps = rhythm.Limit == HeatLimitKind.Caution ? " Short of caution, not of discomfort." : "";
        string help = Help(shown);
        return rhythm.Possible && rhythm.RollMin >= 1
            ? Alternating(rhythm, shown.DayMin) + keeps
            : (shown.Said.RollMin is { } roll ? $"Takes of {Minutes(roll)} do not stay within {Limit(rhythm.Limit)}: shorten them." : $"No rhythm with takes of a minute or more stays within {Limit(rhythm.Limit)}.") + (help.Length > 0 ? " " + help : "");
    }

    /// <summary>"Roll 9 min, cool 6 min: 16 takes in 4 h, 60 % of it rolling."</summary>
    public static string Alternating(ShootingRhythm rhythm, double dayMin) => rhythm.CoolMin <= 0
        ? $"Roll {Minutes(rhythm.RollMin)} at a time with no pause to cool: {Takes(rhythm)} in {Span(dayMin)}."
        : Say($"Roll {Minutes(rhythm.RollMin)}, cool {Minutes(rhythm.CoolMin, roundDown: false)}: {Takes(rhythm)} in {Span(dayMin)}, {rhythm.RollingFraction * 100:0} % of it rolling.");

    private static string Takes(ShootingRhythm rhythm) => rhythm.TakeCount == 1 ? "one take" : Say($"{rhythm.TakeCount} takes");

    // The best way out, where there is one.
    private static string Help(HeatShown shown) => shown.Report.Options.Count > 0 && shown.Report.Options[0] is { } best && (!best.HasMinutes || best.Minutes >= 1)
        ? $"{Capital(shown.Sentence(best.Words))} {(best.HasMinutes ? $"it would be {Minutes(best.Minutes)}" : "there would be no limit")}." : "";

    /// <summary>How long to cool before the first take.</summary>
    public static string CoolFirst(HeatShown shown)
    {
        HeatReport report = shown.Report;
        if (!report.HasPrecoolMin)
        {
            string lowest = report.HasLowestAirC ? $": {shown.Temperature(report.LowestAirC)} is the lowest" : "";
            return $"Cooling does not reach {shown.Temperature(shown.SetPointC)}{lowest}. It stands at {shown.Temperature(report.SoakedAirC)} to start with; get it out of the sun.";
        }

        return report.PrecoolMin < 0.5 ? $"No cooling needed: it stands at {shown.Temperature(report.SoakedAirC)}."
            : $"Cool {Minutes(report.PrecoolMin, roundDown: false)}, from {shown.Temperature(report.SoakedAirC)} to {shown.Temperature(shown.SetPointC)}.";
    }

    private static string Between(HeatShown shown)
    {
        ShootingRhythm rhythm = shown.Rhythm;
        return !rhythm.Possible || rhythm.RollMin < 1 ? Rhythm(shown) : rhythm.CoolMin <= 0 ? $"No cooling needed between takes of {Minutes(rhythm.RollMin)}."
            : $"Cool {Minutes(rhythm.CoolMin, roundDown: false)} between takes of {Minutes(rhythm.RollMin)}: {Takes(rhythm)} in {Span(shown.DayMin)}.";
    }

    private static string HowHot(HeatShown shown)
    {
        HeatBlock? roll = shown.Rhythm.Blocks.Where(b => b.Kind == HeatBlockKind.Roll).MaxBy(b => b.EndAirC);
        string take = roll is null ? "" : $"; a take of {Minutes(roll.EndMin - roll.StartMin)} ends at {shown.Temperature(roll.EndAirC)}";
        return $"Standing shut it gets to {shown.Temperature(shown.Report.SoakedAirC)}{take}.";
    }

    private static string Gains(HeatShown shown)
    {
        HeatOption? asked = shown.Tried ?? (shown.Said.Earlier ? shown.Report.Options.FirstOrDefault(o => o.Code.StartsWith("earlier", StringComparison.Ordinal)) : null);
        HeatOption? option = asked ?? shown.Report.Options.FirstOrDefault();
        HeatLimitTime now = shown.Rhythm.Limit == HeatLimitKind.Caution ? shown.Caution : shown.Comfort;
        if (option is null || !now.HasMinutes)
        {
            return !now.HasMinutes ? $"Nothing is to be bought: they stay comfortable all {Span(shown.DayMin)} as it is." : "Nothing that was tried helps.";
        }

        string longer = option.HasMinutes ? Minutes(option.Minutes) : $"all {Span(shown.DayMin)}";
        string cool = option.HasPrecoolMin ? $", {Minutes(option.PrecoolMin, roundDown: false)} of cooling first" : "";
        return Say($"{Capital(shown.Sentence(option.Words))}: roll {longer} instead of {Minutes(now.Minutes)}{cool}, {option.RollingFraction * 100:0} % of the day rolling instead of {shown.Rhythm.RollingFraction * 100:0} %.");
    }

    // Held against the upper end of what is likely, as people are in it.
    private static string Enough(HeatShown shown)
    {
        double roll = shown.Said.RollMin ?? 0;
        string take = Minutes(roll);
        bool Past(HeatLimitTime limit) => limit.HasMinutesAtWorst ? roll > limit.MinutesAtWorst : limit.HasMinutes && roll > limit.Minutes;
        string steps = Steps(shown, worst: true);
        return Past(shown.Stop) ? $"No, never: {take} is past the point to stop. At worst {steps}."
            : Past(shown.Caution) ? $"No: {take} is past caution. At worst {steps}."
            : Past(shown.Comfort) ? $"{(shown.Report.Strictest ? "No" : "Only with care")}: {take} is past comfort. At worst {steps}."
            : $"Yes: {take} with the fan off stays comfortable{(shown.Comfort.HasMinutes ? $", up to {Minutes(shown.Comfort.HasMinutesAtWorst ? shown.Comfort.MinutesAtWorst : shown.Comfort.Minutes)} at worst" : "")}.";
    }
}
