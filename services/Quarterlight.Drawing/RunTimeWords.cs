using Quarterlight.Endurance.RunTime;

namespace Quarterlight.Drawing;

/// <summary>Words for a picture of batteries and media.</summary>
internal static class RunTimeWords
{
    /// <summary>The answer in one line.</summary>
    public static string Headline(RunTimeView view)
    {
        int shortOf = view.Short.Count;
        if (shortOf > 0)
        {
            return shortOf == 1 ? $"Not enough for the day: {view.Short[0].Name}" : $"Not enough for the day: {shortOf} of {view.Rows.Count} run short";
        }

        return view.Swaps.Count switch { 0 => "Everything lasts the day, with nothing to change", 1 => "Everything lasts the day, with one change", _ => $"Everything lasts the day, with {view.Swaps.Count} changes" };
    }

    /// <summary>What runs out first and when.</summary>
    public static string First(RunTimeView view) => view.First is not { } first ? ""
        : view.FirstOutMin is { } minute ? $"First to run out, {view.Day.When(minute)}: {first.Name}" : $"First to run out, after the end of the day: {first.Name}";

    /// <summary>The take that something runs out in.</summary>
    public static string Broken(RunTimeView view) => view.BrokenTake.Length > 0 ? $"Whatever is changed, something runs out during take {view.BrokenTake}" : "";

    /// <summary>Figures the answer rests on.</summary>
    public static string Basis(RunTimeView view)
    {
        RunTimeReport report = view.Report;
        string batteries = view.Rows.Any(r => r.Item.Kind == RunTimeKind.Battery) && double.IsFinite(report.BatteryC) ? $"Batteries at {TemperatureWords.Of(report.BatteryC, TemperatureUnit.Celsius)}" : "";
        string media = report.DataMBPerS > 0 && double.IsFinite(report.DataMBPerS) ? $"{FigureWords.Number(report.DataMBPerS, "0.##")} MB/s written" : "";
        string file = report.FileLimitMin > 0 && double.IsFinite(report.FileLimitMin) ? $"4 GiB after {DayTime.Length(report.FileLimitMin)}" : "";
        return string.Join(" · ", new[] { batteries, media, file }.Where(w => w.Length > 0));
    }

    /// <summary>How long an item lasts and how many sets there are, such as 3.2 h a set, 2 sets, 3 needed.</summary>
    public static string Lasting(RunTimeItem item)
    {
        string each = item.Kind switch { RunTimeKind.File => "file", RunTimeKind.Card => "card set", _ => "set" };
        string sets = item.Kind == RunTimeKind.File ? "" : $", {Count(item.SetCount)}{(item.SetsNeeded != item.SetCount ? $", {FigureWords.Number(item.SetsNeeded)} needed" : "")}";
        return $"{DayTime.Length(60 * RunTimeView.HoursOf(item.Hours))} a {each}{sets}";

        static string Count(int sets) => sets == 1 ? "1 set" : $"{FigureWords.Number(sets)} sets";
    }

    /// <summary>A change in one line.</summary>
    public static string Change(RunTimeView view, Swap swap)
    {
        string take = UserText.Clean(swap.AfterTake), words = UserText.Clean(swap.Words);
        string when = view.Day.When(swap.AtMin);
        return $"{char.ToUpperInvariant(when[0])}{when[1..]}{(take.Length > 0 ? $", after {take}" : "")}: {words}";
    }
}
