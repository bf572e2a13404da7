using Quarterlight.Endurance.Heat;

namespace Quarterlight.Drawing;

/// <summary>Says in words what a heat picture shows.</summary>
internal static class HeatText
{
    private const int RemarkMax = 200;

    /// <summary>The picture in complete sentences, at most <see cref="PlanText.MaxLength"/> characters.</summary>
    public static string Of(HeatView view)
    {
        HeatReport report = view.Report;
        return SentenceFit.Join(
        [
            (20, SentenceFit.Stopped(HeatWords.Headline(view))),
            (19, report.Strictest ? "Children, animals or people shut in: only the strictest limit counts." : ""),
            .. HeatWords.Limits(report).Select(l => (18, SentenceFit.Stopped(l))),
            (14, SentenceFit.Stopped(HeatWords.First(view))),
            (10, Temperatures(view)),
            (9, Strain(view)),
            (8, view.Highest(s => s.Co2Ppm) is { } ppm ? $"Carbon dioxide is at most {FigureWords.Number(ppm.Value)} ppm, {view.Day.When(ppm.Minute)}{(ppm.Value > HeatView.StaleAirPpm ? $", over {FigureWords.Number(HeatView.StaleAirPpm)} ppm" : "")}." : ""),
            (7, Comfort(view)),
            (5, report.Advisories is [{ } first, ..] ? SentenceFit.Stopped(SentenceFit.Cut(UserText.Clean(first.Message), RemarkMax)) : ""),
            (2, $"The picture shows blocks of rolling and cooling, temperatures, {Kind(view)} and carbon dioxide from {view.Day.Tick(0)} to {view.Day.Tick(view.EndMin)}."),
        ]);
    }

    private static string Kind(HeatView view) => view.Strain switch { StrainKind.Pmv => "predicted mean vote", StrainKind.HeatIndex => "heat index", _ => "WBGT" };

    private static string Temperatures(HeatView view)
    {
        if (view.Lowest(s => s.AirC) is not { } low || view.Highest(s => s.AirC) is not { } high)
        {
            return "";
        }

        string operative = view.Highest(s => s.OperativeC) is { } felt ? $"; operative temperature is at most {TemperatureWords.Of(felt.Value, view.Unit)}" : "";
        string interior = view.Highest(s => s.InteriorC) is { } trim ? $", trim and seats at most {TemperatureWords.Of(trim.Value, view.Unit)}" : "";
        return $"The air runs from {TemperatureWords.Of(low, view.Unit)} to {TemperatureWords.Of(high.Value, view.Unit)}{operative}{interior}.";
    }

    private static string Strain(HeatView view)
    {
        if (view.Highest(view.StrainOf) is not { } high || view.Lowest(view.StrainOf) is not { } low)
        {
            return "";
        }

        return view.Strain == StrainKind.Pmv
            ? $"Predicted mean vote runs from {FigureWords.Number(low, "0.0")} to {FigureWords.Number(high.Value, "0.0")}."
            : $"{HeatWords.Of(view.Strain)} is at most {FigureWords.Number(high.Value)} {TemperatureWords.Sign(view.Unit)}, {view.Day.When(high.Minute)}.";
    }

    private static string Comfort(HeatView view)
    {
        if (view.Samples.Count == 0)
        {
            return "";
        }

        if (view.Samples.All(s => HeatView.Finite(s.Pmv) is null))
        {
            return "The predicted mean vote does not hold at any time.";
        }

        double minutes = view.ComfortSpans.Sum(s => s.ToMin - s.FromMin);
        return view.ComfortSpans.Count == 0 ? "At no time is the vote within 0.7." : $"The vote is within 0.7 for {DayTime.Length(minutes)} of {DayTime.Length(view.EndMin)}.";
    }
}
