using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.ForecastWordings;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A forecast of run time and what it was asked for.</summary>
/// <param name="Report">The report.</param>
/// <param name="Said">What was said.</param>
/// <param name="Start">When the day starts, local; null when not known.</param>
/// <param name="Units">Units to say it in.</param>
internal sealed record RunTimeShown(RunTimeReport Report, RunTimeSaid Said, DateTimeOffset? Start, UnitPreference Units)
{
    private const double MinutesPerHour = 60;

    /// <summary>Cards written at once with the same.</summary>
    public int Copies { get; init; } = 1;

    /// <summary>What the question is about: the thing named, else cards or batteries, else everything.</summary>
    public IReadOnlyList<RunTimeItem> Items()
    {
        RunTimeItem[] lasting = [.. Report.Items.Where(i => i.Kind != RunTimeKind.File)];
        RunTimeItem[] named = Said.Thing is { } thing ? [.. lasting.Where(i => i.DisplayName.Contains(thing, StringComparison.OrdinalIgnoreCase) || i.Id.Contains(thing, StringComparison.OrdinalIgnoreCase))] : [];
        RunTimeItem[] kind = Said.Aspect switch
        {
            RunTimeAspect.Cards => [.. lasting.Where(i => i.Kind == RunTimeKind.Card)],
            RunTimeAspect.Batteries or RunTimeAspect.Swaps => [.. lasting.Where(i => i.Kind == RunTimeKind.Battery)],
            _ => lasting,
        };
        return named.Length > 0 ? named : kind.Length > 0 ? kind : lasting;
    }

    /// <summary>Name of an item, safe to repeat.</summary>
    public static string Named(RunTimeItem item) => item.Kind switch
    {
        RunTimeKind.Card => "card",
        RunTimeKind.File => "one file",
        _ => Name(item.DisplayName, item.Id),
    };

    /// <summary>"at 11:20", or "after 2.1 h" when the start is not known.</summary>
    public string Out(double hours) => Start is null ? $"after {Hours(hours)}" : $"{At(Start, hours * MinutesPerHour)} (after {Hours(hours)})";
}

/// <summary>Run time in words: yes or no, or what runs out first; then each thing, then the swaps.</summary>
internal static class RunTimeText
{
    private const int MostItems = 6, MostSwaps = 4, MostCautions = 2;

    /// <summary>What was asked, in one line.</summary>
    public static string Headline(RunTimeShown shown)
    {
        RunTimeReport report = shown.Report;
        IReadOnlyList<RunTimeItem> items = shown.Items();
        if (items.Count == 0)
        {
            return "Nothing that runs out came with this answer.";
        }

        if (shown.Said.Aspect == RunTimeAspect.Swaps)
        {
            return Swaps(shown);
        }

        RunTimeItem first = items.MinBy(i => i.Hours)!;
        if (first.Hours <= 0)
        {
            return $"{Capital(RunTimeShown.Named(first))} does not run at {UnitText.Temperature(report.BatteryC, shown.Units)}: keep its batteries warm or take others.";
        }

        if (shown.Said.Aspect == RunTimeAspect.Cards && first.Kind == RunTimeKind.Card)
        {
            return Cards(shown, first);
        }

        return shown.Said.Aspect == RunTimeAspect.Lasts ? Lasts(shown, items)
            : $"{(items.Count > 1 ? "First to run out: " : "")}{Capital(RunTimeShown.Named(first))} {(items.Count > 1 ? "" : "runs out ")}{shown.Out(first.Hours)} on one set{(first.Enough ? $"; {Sets(first)} are enough for {Span(report.DurationMin)}" : $"; {Short(first)}")}.";
    }

    /// <summary>The standard answer, about eight lines.</summary>
    public static List<CrewLine> Lines(RunTimeShown shown, bool detailed)
    {
        RunTimeReport report = shown.Report;
        List<CrewLine> lines = [];
        if (report.BrokenTake.Length > 0 && report.Advisories.All(a => !a.Message.Contains(report.BrokenTake, StringComparison.Ordinal)))
        {
            lines.Add(new(CrewLineKind.Caution, $"Caution: something runs out during take {Name(report.BrokenTake)} whatever is swapped."));
        }

        IEnumerable<RunTimeItem> items = shown.Items();
        lines.AddRange(items.Take(detailed ? int.MaxValue : MostItems).Select(i => new CrewLine(CrewLineKind.Figures, Item(i))));
        if ((shown.Said.Aspect != RunTimeAspect.Swaps || report.Swaps.Count > 1) && (report.Swaps.Count > 0 || items.All(i => i.Enough)))
        {
            lines.Add(new(CrewLineKind.Plain, SwapList(shown, detailed ? int.MaxValue : MostSwaps)));
        }

        if (report.DataMbPerS > 0 && shown.Said.Aspect is not (RunTimeAspect.Batteries or RunTimeAspect.Swaps))
        {
            lines.Add(new(CrewLineKind.Figures, Say($"All tracks write {report.DataMbPerS:0.##} MB/s; a file reaches 4 GiB after {Span(Math.Floor(report.FileLimitMin))}.")));
        }

        lines.AddRange(RadioWordings.Cautions(report.Advisories, shown.Units, detailed ? int.MaxValue : MostCautions));
        return lines;
    }

    private static string Lasts(RunTimeShown shown, IReadOnlyList<RunTimeItem> items)
    {
        string span = Span(shown.Report.DurationMin), what = items.Count == 1 ? $"the {RadioWordings.Lower(RunTimeShown.Named(items[0]))}" : "everything";
        RunTimeItem? missing = items.Where(i => !i.Enough).MinBy(i => i.Hours);
        if (missing is not null)
        {
            return $"No: {RadioWordings.Lower(RunTimeShown.Named(missing))} does not last {span}: one set lasts {Hours(missing.Hours)}; {Short(missing)}.";
        }

        bool unswapped = items.All(i => i.SetsNeeded <= 1);
        Swap? first = shown.Report.Swaps.FirstOrDefault(s => s.ItemIds.Any(id => items.Any(i => i.Id == id)));
        return unswapped || first is null ? $"Yes: {what} lasts {span} on one set."
            : $"Yes, with swaps: {what} lasts {span}; first swap {At(shown.Start, first.AtMin)}{After(first)}.";
    }

    // A set is one card for each copy.
    private static string Cards(RunTimeShown shown, RunTimeItem card)
    {
        int needed = card.SetsNeeded * shown.Copies, there = card.SetCount * shown.Copies;
        string copies = shown.Copies > 1 ? Say($", {shown.Copies} written at once") : "";
        string have = there >= needed ? Say($"; you have {there}") : Say($", and you have {there}: bring {needed - there} more");
        return $"{(needed == 1 ? "One card does" : Say($"{needed} cards are needed"))} for {Span(shown.Report.DurationMin)}{have}. One lasts {Hours(card.Hours)}{copies}.";
    }

    private static string Swaps(RunTimeShown shown)
    {
        IReadOnlyList<RunTimeItem> items = shown.Items();
        Swap[] swaps = [.. shown.Report.Swaps.Where(s => s.ItemIds.Any(id => items.Any(i => i.Id == id)))];
        return swaps.Length == 0 ? $"No {(items.All(i => i.Kind == RunTimeKind.Battery) ? "battery " : "")}swap is needed in {Span(shown.Report.DurationMin)}."
            : $"{(swaps.Length == 1 ? "One swap" : Say($"First of {swaps.Length} swaps"))} {At(shown.Start, swaps[0].AtMin)}{After(swaps[0])}: {Words(swaps[0], shown.Units)}.";
    }

    private static string SwapList(RunTimeShown shown, int most)
    {
        RunTimeReport report = shown.Report;
        if (report.Swaps.Count == 0)
        {
            return $"No swap is needed in {Span(report.DurationMin)}.";
        }

        string more = report.Swaps.Count > most ? Say($"; and {report.Swaps.Count - most} more, ask for details") : "";
        return $"Swaps: {string.Join("; ", report.Swaps.Take(most).Select(s => $"{At(shown.Start, s.AtMin)}{After(s)}, {Words(s, shown.Units)}"))}{more}.";
    }

    private static string Item(RunTimeItem item)
    {
        if (item.Hours <= 0)
        {
            return $"{Capital(RunTimeShown.Named(item))}: does not run.";
        }

        string loss = item.Kind == RunTimeKind.Battery && item.DeratingFraction is > 0 and < 0.95 ? Say($", temperature and age leave {item.DeratingFraction * 100:0} %") : "";
        return Say($"{Capital(RunTimeShown.Named(item))}: {Hours(item.Hours)} a {(item.Kind == RunTimeKind.Card ? "set of cards" : "set")} ({Hours(item.HoursWithoutMargin)} to the very end), {item.SetsNeeded} needed, {item.SetCount} there{loss}{(item.Enough ? "" : ": not enough")}.");
    }

    private static string Words(Swap swap, UnitPreference units) => RadioWordings.Lower(RadioWordings.Sentence(swap.Words, units));

    private static string After(Swap swap) => swap.AfterTake.Length > 0 ? $" after {Name(swap.AfterTake)}" : "";

    private static string Sets(RunTimeItem item) => item.SetCount == 1 ? "the one there is" : Say($"the {item.SetCount} sets");

    private static string Short(RunTimeItem item) => Say($"{item.SetsNeeded} needed, {item.SetCount} there");
}
