namespace Quarterlight.Endurance.RunTime;

/// <summary>When to swap what: only between takes, as late as possible, in one visit where that costs no set more.</summary>
/// <remarks>
/// Swapping as late as possible needs the fewest sets of each supply. Two swaps in one gap no more than <see cref="VisitMin"/> apart become
/// one visit, unless the earlier swap would cost a set or break a take.
/// </remarks>
internal sealed class SwapSchedule
{
    /// <summary>A set that lasts shorter than this is not scheduled, minutes (judgement: nobody swaps that often).</summary>
    public const double ShortestLifeMin = 5;

    /// <summary>Swaps this near each other become one visit to the car, minutes (judgement).</summary>
    public const double VisitMin = 20;

    private readonly DaySheet _day;
    private readonly IReadOnlyList<Supply> _supplies;
    private readonly List<double>[] _swapMinutes;
    private readonly bool[] _broken;
    private double _brokenAtMin = double.PositiveInfinity;

    private SwapSchedule(IReadOnlyList<Supply> supplies, DaySheet day)
    {
        _day = day;
        _supplies = supplies;
        _swapMinutes = [.. supplies.Select(_ => new List<double>())];
        _broken = new bool[supplies.Count];
    }

    /// <summary>Visits in time order: the minute, and the supplies swapped.</summary>
    public List<(double AtMin, int[] Supplies)> Visits { get; } = [];

    /// <summary>Label of the first take that something breaks; empty when none.</summary>
    public string BrokenTake => double.IsFinite(_brokenAtMin) ? _day.TakeAt(_brokenAtMin) : "";

    /// <summary>When a supply is swapped, in time order.</summary>
    public IReadOnlyList<double> SwapMinutes(int supply) => _swapMinutes[supply];

    /// <summary>True when a supply runs empty in a take whatever is swapped.</summary>
    public bool Breaks(int supply) => _broken[supply];

    /// <summary>Makes the schedule.</summary>
    public static SwapSchedule For(IReadOnlyList<Supply> supplies, DaySheet day)
    {
        var schedule = new SwapSchedule(supplies, day);
        schedule.Run();
        return schedule;
    }

    private void Run()
    {
        var due = new double[_supplies.Count];
        for (int i = 0; i < due.Length; i++)
        {
            due[i] = Next(i, 0);
        }

        while (due.Length > 0 && due.Min() is var at && double.IsFinite(at))
        {
            double gapEnds = _day.Gaps[_day.GapAtOrBefore(at)].UntilMin;
            int[] visit = [.. Enumerable.Range(0, due.Length).Where(i => due[i] <= at || (due[i] <= gapEnds && due[i] - at <= VisitMin && CostsNothing(i, at, due[i])))];
            if (visit.Any(i => _supplies[i].Kind == RunTimeKind.Card))
            {
                // A new card starts a new file.
                visit = [.. Enumerable.Range(0, due.Length).Where(i => visit.Contains(i) || (_supplies[i].Kind == RunTimeKind.File && double.IsFinite(due[i])))];
            }

            foreach (int i in visit)
            {
                _swapMinutes[i].Add(at);
                due[i] = Next(i, at);
            }

            Visits.Add((at, visit));
        }
    }

    private double Next(int supply, double sinceMin)
    {
        double due = DueAt(_supplies[supply], sinceMin, out double brokenAtMin);
        if (double.IsFinite(brokenAtMin))
        {
            _broken[supply] = true;
            _brokenAtMin = Math.Min(_brokenAtMin, brokenAtMin);
        }

        return due;
    }

    private bool CostsNothing(int supply, double earlyMin, double lateMin)
    {
        (int sets, int broken) early = Ahead(_supplies[supply], earlyMin), late = Ahead(_supplies[supply], lateMin);
        return early.sets <= late.sets && early.broken <= late.broken;
    }

    // Swaps and broken takes still to come after a swap, each as late as possible.
    private (int Sets, int Broken) Ahead(Supply supply, double sinceMin)
    {
        int sets = 0, broken = 0;
        for (double at = DueAt(supply, sinceMin, out double brokenAt); ; at = DueAt(supply, at, out brokenAt))
        {
            broken += double.IsFinite(brokenAt) ? 1 : 0;
            if (!double.IsFinite(at))
            {
                return (sets, broken);
            }

            sets++;
        }
    }

    // The latest moment to swap a set put in at sinceMin; infinite when it lasts. When a take outlasts a fresh set, the moment it ran
    // empty is told, and the swap comes after that take.
    private double DueAt(Supply supply, double sinceMin, out double brokenAtMin)
    {
        brokenAtMin = double.PositiveInfinity;
        double empty = supply.EmptyAt(sinceMin, _day);
        if (double.IsInfinity(empty))
        {
            return empty;
        }

        int g = _day.GapAtOrBefore(empty);
        if (g >= 0)
        {
            SwapGap gap = _day.Gaps[g];
            bool last = g == _day.Gaps.Count - 1;
            double lead = last ? 0 : supply.InTakesOnly ? DaySheet.SwapMin : Math.Clamp(supply.LifeMin - gap.BusyMin, 0, DaySheet.SwapMin);
            double due = Math.Min(empty, gap.UntilMin - lead);
            if (due > sinceMin)
            {
                return due;
            }
        }

        brokenAtMin = empty;
        double after = g + 1 < _day.Gaps.Count ? _day.Gaps[g + 1].FromMin : double.PositiveInfinity;
        return after < _day.DurationMin ? after : double.PositiveInfinity;
    }
}
