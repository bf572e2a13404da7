using Quarterlight.Quantities;

namespace Quarterlight.Endurance.RunTime;

/// <summary>What to be careful about, in plain sentences, most important first.</summary>
internal static class RunTimeAdvisories
{
    public static IReadOnlyList<Advisory> For(RunTimeTask task, IReadOnlyList<RunTimeNeed> needs, IReadOnlyList<int> sets, string brokenTake, int visits, bool handsIn)
    {
        var all = new List<Advisory>();
        Batteries(task, all);
        if (handsIn)
        {
            all.Add(new Advisory("swap-parked", "Swap only with the car parked, never while it moves; nobody leans in from outside.", AdvisorySeverity.Safety));
        }

        Shortages(task, needs, sets, all);
        if (brokenTake.Length > 0)
        {
            RunTimeNeed breaks = needs.MinBy(n => n.BrokenAtMin)!;
            string remedy = breaks.Supply.Kind switch
            {
                RunTimeKind.File => "check that the recorder goes on in a new file without a gap, or split the take",
                RunTimeKind.Card => "split the take, leave a gap to swap in before it, or take a larger card",
                _ => "split the take, leave a gap to swap in before it, or fit a larger battery",
            };
            all.Add(new Advisory("take-broken", $"During take \"{brokenTake}\" {Named(breaks)} runs out whatever is swapped before: {remedy}.", AdvisorySeverity.Caution));
        }

        if (task.Media is { } media)
        {
            Media(task, media, all);
        }

        if (visits > RunTimeForecast.MostSwapsListed)
        {
            all.Add(new Advisory("swaps-cut", FormattableString.Invariant($"Only the first {RunTimeForecast.MostSwapsListed} of {visits} swaps are listed."), AdvisorySeverity.Note));
        }

        if (task.Devices.Count > 0)
        {
            all.Add(new Advisory(
                "derating-from-memory",
                "What cold and age take from a battery is a rule from memory: run your own set down once on a spare day, and trust that.",
                AdvisorySeverity.Note));
        }

        return [.. all.OrderByDescending(a => a.Severity)];
    }

    private static void Batteries(RunTimeTask task, List<Advisory> all)
    {
        IEnumerable<Battery> used = task.Batteries.Where(b => task.Devices.Any(d => d.BatteryId == b.Id));
        bool lithium = used.Any(b => b.Chemistry is BatteryChemistry.LithiumIon or BatteryChemistry.LithiumIronPhosphate or BatteryChemistry.LithiumPrimary);
        if (used.Any() && task.BatteryC > BatteryDerating.Discharge.Max)
        {
            all.Add(new Advisory(
                "battery-too-hot",
                FormattableString.Invariant($"At {task.BatteryC:0} °C a battery must not be used: cells can leak, vent or burn above {BatteryDerating.Discharge.Max:0} °C. Get them out of the sun and into the air before anything else."),
                AdvisorySeverity.Safety));
        }
        else if (used.Any() && task.BatteryC > BatteryDerating.HotC)
        {
            all.Add(new Advisory(
                "battery-hot",
                FormattableString.Invariant($"At {task.BatteryC:0} °C batteries age fast and must not be charged: keep them out of the sun and give them air."),
                AdvisorySeverity.Caution));
        }

        foreach (Battery battery in used.Where(b => task.BatteryC < BatteryDerating.DischargeOf(b.Chemistry).Min))
        {
            all.Add(new Advisory(
                "battery-too-cold",
                FormattableString.Invariant($"{battery.DisplayName} is not made for {task.BatteryC:0} °C ({BatteryDerating.DischargeOf(battery.Chemistry).Min:0} °C at least): keep it warm, near a body or in the cabin, and ask again with that temperature."),
                AdvisorySeverity.Caution));
        }

        if (lithium)
        {
            all.Add(new Advisory(
                "hot-car",
                "Never charge lithium packs in a parked car in the sun, and never leave them there: a closed cabin passes 60 °C on its dash.",
                task.BatteryC > BatteryDerating.HotC ? AdvisorySeverity.Safety : AdvisorySeverity.Note));
        }
    }

    private static void Shortages(RunTimeTask task, IReadOnlyList<RunTimeNeed> needs, IReadOnlyList<int> sets, List<Advisory> all)
    {
        foreach (Battery battery in task.Batteries)
        {
            RunTimeNeed[] users = [.. needs.Where(n => n.Supply.BatteryId == battery.Id && !n.Hopeless)];
            long missing = users.Sum(n => (long)n.SetsNeeded * n.Supply.UnitsPerSet) - battery.Count;
            if (users.Length > 0 && missing > 0)
            {
                string whom = string.Join(", ", users.Select(Named));
                all.Add(new Advisory("battery-short", $"Bring {missing} more of {battery.DisplayName}, charged: {battery.Count} are not enough for the day of {whom}.", AdvisorySeverity.Caution));
            }
        }

        for (int i = 0; i < needs.Count; i++)
        {
            RunTimeNeed need = needs[i];
            if (need.Supply.Kind == RunTimeKind.Card && need.SetsNeeded > sets[i])
            {
                int missing = (need.SetsNeeded * need.Supply.UnitsPerSet) - task.Media!.CardCount;
                all.Add(new Advisory("card-short", $"Bring {missing} more {(missing == 1 ? "card" : "cards")} of that size, or larger ones: {task.Media.CardCount} are not enough for the day.", AdvisorySeverity.Caution));
            }

            if (!need.Workable && !need.Hopeless && need.Supply.LifeMin < SwapSchedule.ShortestLifeMin)
            {
                all.Add(new Advisory("too-short", FormattableString.Invariant($"{Named(need)} lasts only {need.Supply.LifeMin:0.0} minutes: no swapping keeps up with that, and none is listed. Take something larger."), AdvisorySeverity.Caution));
            }
        }
    }

    private static void Media(RunTimeTask task, RecordingMedia media, List<Advisory> all)
    {
        double rate = StorageArithmetic.BytesPerSecond(media) / 1e6;
        if (media.WriteSpeedMBPerS is { } speed && speed < rate)
        {
            all.Add(new Advisory(
                "card-too-slow",
                FormattableString.Invariant($"A card that writes {speed:0.###} MB/s cannot keep up with {rate:0.###} MB/s: use faster cards, fewer tracks or a lower rate."),
                AdvisorySeverity.Caution));
        }

        if (task.TakesOnly && task.Takes.Count == 0)
        {
            all.Add(new Advisory("no-call-sheet", "There is no call sheet, so cards are counted as if it recorded all day.", AdvisorySeverity.Note));
        }

        if (media.CopyCount == 1)
        {
            all.Add(new Advisory("one-copy", "Only one card is written: a second copy at the same time costs nothing but a card.", AdvisorySeverity.Note));
        }

        all.Add(new Advisory("back-up-cards", "Copy and check a card in two places before it is formatted and used again (common practice).", AdvisorySeverity.Note));
    }

    private static string Named(RunTimeNeed need) => need.Supply.Kind switch
    {
        RunTimeKind.Card => "the card",
        RunTimeKind.File => "one file",
        _ => need.Supply.DisplayName,
    };
}
