namespace Quarterlight.Endurance.RunTime;

/// <summary>A stretch of the day in which something may be swapped.</summary>
/// <param name="FromMin">First moment.</param>
/// <param name="UntilMin">When the next take rolls; the end of the day after the last.</param>
/// <param name="BusyMin">How long takes run after it without a gap long enough; 0 after the last.</param>
internal readonly record struct SwapGap(double FromMin, double UntilMin, double BusyMin);

/// <summary>The day as the swap schedule sees it: when one may swap, and how much has been recorded by when.</summary>
internal sealed class DaySheet
{
    /// <summary>What a swap takes, and so the shortest gap it fits in, minutes (judgement).</summary>
    public const double SwapMin = 2;

    private readonly double[] _recordedBefore;
    private readonly SwapGap[] _gaps;

    public DaySheet(double durationMin, IReadOnlyList<PlannedTake> takes)
    {
        DurationMin = durationMin;
        Takes = takes;
        _recordedBefore = new double[takes.Count + 1];
        for (int i = 0; i < takes.Count; i++)
        {
            _recordedBefore[i + 1] = _recordedBefore[i] + takes[i].DurationMin;
        }

        _gaps = FindGaps();
    }

    public double DurationMin { get; }

    public IReadOnlyList<PlannedTake> Takes { get; }

    public IReadOnlyList<SwapGap> Gaps => _gaps;

    /// <summary>Minutes in takes, all day.</summary>
    public double RecordedMin => _recordedBefore[^1];

    /// <summary>Minutes in takes before a moment.</summary>
    public double RecordedBefore(double minute)
    {
        int i = FirstTakeEndingAfter(minute);
        return i == Takes.Count ? RecordedMin : _recordedBefore[i] + Math.Max(0, minute - Takes[i].StartMin);
    }

    /// <summary>The last moment by which no more than so much is recorded: inside a take, or when the next one rolls; infinite when it never is more.</summary>
    public double WhenRecorded(double recordedMin)
    {
        int low = 0, high = Takes.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_recordedBefore[middle + 1] > recordedMin)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low == Takes.Count ? double.PositiveInfinity : Takes[low].StartMin + (recordedMin - _recordedBefore[low]);
    }

    /// <summary>Index of the last gap that starts no later than a moment; -1 before the first.</summary>
    public int GapAtOrBefore(double minute)
    {
        int low = 0, high = _gaps.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_gaps[middle].FromMin <= minute)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low - 1;
    }

    /// <summary>Label of the take at or after a moment; empty when there is none.</summary>
    public string TakeAt(double minute)
    {
        int i = FirstTakeEndingAfter(minute);
        return i == Takes.Count ? "" : Takes[i].Label;
    }

    /// <summary>Label of the last take that is over at a moment; empty when there is none.</summary>
    public string TakeBefore(double minute)
    {
        int i = FirstTakeEndingAfter(minute);
        return i == 0 ? "" : Takes[i - 1].Label;
    }

    private int FirstTakeEndingAfter(double minute)
    {
        int low = 0, high = Takes.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (Takes[middle].EndMin > minute)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low;
    }

    private SwapGap[] FindGaps()
    {
        var spans = new List<(double From, double Until)>();
        double free = 0;
        foreach (PlannedTake take in Takes)
        {
            if (take.StartMin - free >= SwapMin)
            {
                spans.Add((free, take.StartMin));
            }

            free = Math.Max(free, take.EndMin);
        }

        spans.Add((free, Math.Max(free, DurationMin)));
        return [.. spans.Select((s, i) => new SwapGap(s.From, s.Until, i + 1 < spans.Count ? spans[i + 1].From - s.Until : 0))];
    }
}
