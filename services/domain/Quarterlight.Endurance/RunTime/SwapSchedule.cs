namespace Quarterlight.Endurance.RunTime;

/// <summary>When to swap what: only between takes, as late as possible, in one visit where that costs no set more.</summary>
/// <remarks>
/// Swapping as late as possible needs the fewest sets of each supply. Two swaps in one gap no more than <see cref="VisitMin"/> apart become
/// one visit, unless the earlier swap would cost a set or break a take. A new card starts a new file of itself.
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
    private readonly double[] _brokenAtMin;
    private readonly double _visitMin;

    private SwapSchedule(IReadOnlyList<Supply> supplies, DaySheet day, double visitMin)
    {
        _visitMin = visitMin;
        _day = day;
        _supplies = supplies;
        _swapMinutes = [.. supplies.Select(_ => new List<double>())];
        _brokenAtMin = new double[supplies.Count];
        Array.Fill(_brokenAtMin, double.PositiveInfinity);
    }

    /// <summary>Visits in time order: the minute, and the supplies swapped.</summary>
    public List<(double AtMin, int[] Supplies)> Visits { get; } = [];

    /// <summary>When a supply starts anew after the first, in time order.</summary>
    public IReadOnlyList<double> SwapMinutes(int supply) => _swapMinutes[supply];

    /// <summary>When a supply first runs empty in a take whatever is swapped; infinite when it never does.</summary>
    public double BrokenAtMin(int supply) => _brokenAtMin[supply];

    /// <summary>Makes the schedule.</summary>
    /// <param name="supplies">What is swapped.</param>
    /// <param name="day">The day.</param>
    /// <param name="visitMin">How near swaps become one visit, minutes; 0 swaps each as late as it can be.</param>
    public static SwapSchedule For(IReadOnlyList<Supply> supplies, DaySheet day, double visitMin)
    {
        var schedule = new SwapSchedule(supplies, day, visitMin);
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
            int[] visit = [.. Enumerable.Range(0, due.Length).Where(i => due[i] <= at || (due[i] <= gapEnds && due[i] - at <= _visitMin && CostsNothing(i, at, due[i])))];
            bool newCard = visit.Any(i => _supplies[i].Kind == RunTimeKind.Card);
            for (int i = 0; i < due.Length; i++)
            {
                if (visit.Contains(i) || (newCard && _supplies[i].Kind == RunTimeKind.File))
                {
                    _swapMinutes[i].Add(at);
                    due[i] = Next(i, at);
                }
            }

            Visits.Add((at, newCard ? [.. visit.Where(i => _supplies[i].Kind != RunTimeKind.File)] : visit));
        }
    }

    private double Next(int supply, double sinceMin)
    {
        double due = DueAt(_supplies[supply], sinceMin, out double brokenAtMin);
        _brokenAtMin[supply] = Math.Min(_brokenAtMin[supply], brokenAtMin);
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

            // A set that just lasts the takes to come goes in as late as that needs.
            double slack = supply.LifeMin - gap.BusyMin;
            double lead = last ? 0 : supply.InTakesOnly || slack < 0 ? DaySheet.SwapMin : Math.Min(slack, DaySheet.SwapMin);
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
