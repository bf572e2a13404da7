using Quarterlight.Endurance.Heat;

namespace Quarterlight.Drawing;

/// <summary>Words for a heat picture.</summary>
internal static class HeatWords
{
    private const int ReasonMax = 80;

    public static string Of(HeatLimitKind kind) => kind switch
    {
        HeatLimitKind.Comfort => "comfort",
        HeatLimitKind.Caution => "caution",
        _ => "stop",
    };

    public static string Of(StrainKind kind) => kind switch
    {
        StrainKind.Pmv => "Predicted mean vote (PMV)",
        StrainKind.HeatIndex => "Heat index",
        _ => "Wet-bulb globe temperature (WBGT)",
    };

    /// <summary>The answer in one line.</summary>
    public static string Headline(HeatView view)
    {
        ShootingRhythm rhythm = view.Report.Rhythm;
        if (!rhythm.Possible)
        {
            return $"No rhythm keeps the {Of(rhythm.Limit)} limit: even short takes go over it";
        }

        string takes = rhythm.TakeCount == 1 ? "1 take" : $"{FigureWords.Number(rhythm.TakeCount)} takes";
        string share = double.IsFinite(rhythm.RollingFraction) ? $", rolling {FigureWords.Number(100 * rhythm.RollingFraction)} % of the day" : "";
        // Nothing to cool between takes when one take fills the day.
        string cool = rhythm.CoolMin > 0 ? $", cool {Cooling(rhythm.CoolMin)}" : "";
        return $"Roll {DayTime.Length(rhythm.RollMin)}{cool}: {takes}{share}";
    }

    // What must be cooled is rounded up, what may be rolled down.
    private static string Cooling(double minutes) => DayTime.Length(Math.Ceiling(minutes - 1e-6));

    /// <summary>Cooling before the first take.</summary>
    public static string First(HeatView view)
    {
        string soaked = double.IsFinite(view.Report.SoakedAirC) ? $", from {TemperatureWords.Of(view.Report.SoakedAirC, view.Unit)}" : "";
        if (HeatView.Finite(view.Report.PrecoolMin) is { } minutes)
        {
            return minutes > 0 ? $"Cool {Cooling(minutes)} before the first take{soaked}" : "No cooling needed before the first take";
        }

        return HeatView.Finite(view.Report.LowestAirC) is { } lowest ? $"Cooling gets the air no lower than {TemperatureWords.Of(lowest, view.Unit)}{soaked}" : "Cooling does not reach its set point";
    }

    /// <summary>When each limit is met; the strictest stands alone.</summary>
    public static IEnumerable<string> Limits(HeatReport report) =>
        report is { Strictest: true, Limits: [{ } only, ..] } ? [Limit(only, "the limit")] : report.Limits.Select(l => Limit(l, Of(l.Kind)));

    // Such as Comfort: 9 min, 7 min at worst; too warm.
    private static string Limit(HeatLimitTime limit, string kind)
    {
        string reason = UserText.Cut(UserText.Clean(limit.Reason), ReasonMax);
        string because = reason.Length > 0 ? $"; {reason}" : "";
        return $"{char.ToUpperInvariant(kind[0])}{kind[1..]}: {Minutes(limit)}{because}";
    }

    /// <summary>The same without kind and reason.</summary>
    public static string Minutes(HeatLimitTime limit) => HeatView.Finite(limit.Minutes) switch
    {
        { } minutes when minutes <= 0 => "over it from the start",
        { } minutes => $"{DayTime.Length(minutes)} of rolling{(HeatView.Finite(limit.MinutesAtWorst) is { } worst && worst < minutes ? $", {DayTime.Length(worst)} at worst" : "")}",
        _ => HeatView.Finite(limit.MinutesAtWorst) is { } worst ? $"not met, {DayTime.Length(worst)} at worst" : "not met in the day",
    };
}
