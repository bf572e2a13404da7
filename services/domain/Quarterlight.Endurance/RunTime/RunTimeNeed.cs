namespace Quarterlight.Endurance.RunTime;

/// <summary>What a day needs of one supply.</summary>
internal sealed record RunTimeNeed
{
    // No day needs more than this; it keeps a count of tiny sets an honest integer.
    private const double MostSets = 1e6;

    public required Supply Supply { get; init; }

    /// <summary>Sets the day needs, 1 or more.</summary>
    public required int SetsNeeded { get; init; }

    /// <summary>When the first set is empty, minutes after the start of the day; beyond the day when it lasts.</summary>
    public required double FirstOutMin { get; init; }

    /// <summary>Swap minutes of the schedule.</summary>
    public required IReadOnlyList<double> SwapMinutes { get; init; }

    /// <summary>False when a set is too short to work with, gives nothing, or runs empty in a take whatever is swapped.</summary>
    public required bool Workable { get; init; }

    /// <summary>When it first runs empty in a take whatever is swapped; infinite when it never does.</summary>
    public required double BrokenAtMin { get; init; }

    /// <summary>True when no number of sets is enough: it gives nothing at all.</summary>
    public bool Hopeless => Supply.LifeMin <= 0;

    /// <summary>Minute until which so many sets cover the supply.</summary>
    public double CoveredMin(int sets) =>
        sets == 0 ? 0
        : sets <= SwapMinutes.Count ? SwapMinutes[sets - 1]
        : SwapMinutes.Count == 0 ? sets * Supply.LifeMin
        : SwapMinutes[^1] + ((sets - SwapMinutes.Count) * Supply.LifeMin);

    public static RunTimeNeed Of(Supply supply, int scheduled, SwapSchedule schedule, DaySheet day)
    {
        if (supply.Kind == RunTimeKind.File && supply.InTakesOnly)
        {
            // Each take is a file of its own.
            PlannedTake? tooLong = day.Takes.FirstOrDefault(t => t.DurationMin > supply.LifeMin);
            double fullAt = tooLong is null ? double.PositiveInfinity : tooLong.StartMin + supply.LifeMin;
            return new RunTimeNeed
            {
                Supply = supply,
                SetsNeeded = Math.Max(1, day.Takes.Count),
                FirstOutMin = fullAt,
                SwapMinutes = [],
                Workable = tooLong is null,
                BrokenAtMin = fullAt,
            };
        }

        double used = supply.InTakesOnly ? day.RecordedMin : day.DurationMin;
        double firstOut = supply.InTakesOnly ? day.WhenRecorded(supply.LifeMin) : supply.LifeMin;
        if (double.IsInfinity(firstOut))
        {
            firstOut = day.DurationMin * supply.LifeMin / used; // Beyond the day, at the day's pace.
        }

        double brokenAt = scheduled >= 0 ? schedule.BrokenAtMin(scheduled) : double.PositiveInfinity;
        return new RunTimeNeed
        {
            Supply = supply,
            SetsNeeded = scheduled >= 0 ? schedule.SwapMinutes(scheduled).Count + 1 : (int)Math.Min(MostSets, Math.Max(1, Math.Ceiling(used / Math.Max(supply.LifeMin, 1e-9)))),
            FirstOutMin = firstOut,
            SwapMinutes = scheduled >= 0 ? schedule.SwapMinutes(scheduled) : [],
            Workable = scheduled >= 0 ? double.IsInfinity(brokenAt) : supply.LifeMin >= used,
            BrokenAtMin = brokenAt,
        };
    }
}
