using Quarterlight.Quantities;

namespace Quarterlight.Endurance.RunTime;

/// <summary>How long batteries and media last for an unattended recorder and transmitters, and when to swap what.</summary>
public static class RunTimeForecast
{
    /// <summary>Id of the cards in the answer.</summary>
    public const string CardsId = "cards";

    /// <summary>Id of the file in the answer.</summary>
    public const string FileId = "file";

    /// <summary>Visits that are listed at most.</summary>
    public const int MostSwapsListed = 200;

    /// <summary>Answers a question about batteries and media.</summary>
    /// <exception cref="InvalidInputException"><see cref="RunTimeRules.Validate"/> finds something.</exception>
    public static RunTimeReport Run(RunTimeTask task)
    {
        IReadOnlyList<Violation> violations = RunTimeRules.Validate(task);
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }

        var day = new DaySheet(task.DurationMin, task.Takes);
        List<Supply> supplies = Supplies.Of(task);
        List<Supply> scheduled = [.. supplies.Where(s => s.LifeMin >= SwapSchedule.ShortestLifeMin && !(s.Kind == RunTimeKind.File && s.InTakesOnly))];
        SwapSchedule schedule = SwapSchedule.For(scheduled, day, 0);
        RunTimeNeed[] needs = [.. supplies.Select(s => RunTimeNeed.Of(s, scheduled.IndexOf(s), schedule, day))];
        int[] sets = Sets(task, needs);

        // One visit for several swaps throws away what is left in a set: only when there are enough.
        if (needs.Zip(sets, (n, s) => s >= n.SetsNeeded).All(enough => enough))
        {
            schedule = SwapSchedule.For(scheduled, day, SwapSchedule.VisitMin);
            needs = [.. supplies.Select(s => RunTimeNeed.Of(s, scheduled.IndexOf(s), schedule, day))];
        }

        List<RunTimeItem> items = [.. needs.Zip(sets, Item).OrderBy(i => i.Hours)];
        (RunTimeNeed need, double outMin) = needs.Zip(sets, (n, s) => (n, s == 0 ? 0 : n.FirstOutMin)).MinBy(p => p.Item2);
        double brokenAt = needs.Min(n => n.BrokenAtMin);
        string broken = double.IsFinite(brokenAt) ? day.TakeAt(brokenAt) : "";
        return new RunTimeReport
        {
            Items = items,
            FirstId = need.Supply.Id,
            FirstOutMin = outMin,
            Swaps = [.. schedule.Visits.Take(MostSwapsListed).Select(v => Swap(v.AtMin, [.. v.Supplies.Select(i => scheduled[i])], day))],
            BrokenTake = broken,
            DataMBPerS = task.Media is null ? 0 : StorageArithmetic.BytesPerSecond(task.Media) / 1e6,
            FileLimitMin = task.Media is null ? 0 : StorageArithmetic.FileLimitMinutes(task.Media),
            BatteryC = task.BatteryC,
            DurationMin = task.DurationMin,
            Takes = task.Takes,
            Advisories = RunTimeAdvisories.For(task, needs, sets, broken, schedule.Visits.Count, schedule.Visits.Any(v => v.Supplies.Any(i => scheduled[i].Kind != RunTimeKind.File))),
        };
    }

    private static int[] Sets(RunTimeTask task, RunTimeNeed[] needs)
    {
        int[] sets = new int[needs.Length];
        foreach (Battery battery in task.Batteries)
        {
            int[] users = [.. Enumerable.Range(0, needs.Length).Where(i => needs[i].Supply.BatteryId == battery.Id)];
            int[] shared = StockShare.Of(battery.Count, [.. users.Select(i => needs[i].Supply.UnitsPerSet)], (u, count) => needs[users[u]].CoveredMin(count));
            for (int u = 0; u < users.Length; u++)
            {
                sets[users[u]] = shared[u];
            }
        }

        for (int i = 0; i < needs.Length; i++)
        {
            sets[i] = needs[i].Supply.Kind switch
            {
                RunTimeKind.Card => task.Media!.CardCount / task.Media.CopyCount,
                RunTimeKind.File => needs[i].SetsNeeded, // A new file costs nothing.
                _ => sets[i],
            };
        }

        return sets;
    }

    private static RunTimeItem Item(RunTimeNeed need, int sets) => new()
    {
        Kind = need.Supply.Kind,
        Id = need.Supply.Id,
        DisplayName = need.Supply.DisplayName,
        Hours = need.Supply.LifeMin / 60,
        HoursWithoutMargin = need.Supply.LifeWithoutMarginMin / 60,
        SetCount = sets,
        SetsNeeded = need.Hopeless ? sets + 1 : need.SetsNeeded,
        DeratingFraction = need.Supply.Share,
        Enough = need.Workable && sets >= need.SetsNeeded,
    };

    private static Swap Swap(double atMin, Supply[] supplies, DaySheet day)
    {
        string words = string.Join(", ", supplies.OrderBy(s => s.Kind).Select(s => s.SwapWords));
        return new Swap(atMin, char.ToUpperInvariant(words[0]) + words[1..], [.. supplies.Select(s => s.Id)], day.TakeBefore(atMin));
    }
}
