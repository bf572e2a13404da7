using Quarterlight.Endurance;
using Quarterlight.Endurance.RunTime;

namespace Quarterlight.Drawing;

/// <summary>One set in use: from when, to when it serves with its margin kept, and to when it would run on the margin.</summary>
/// <param name="FromMin">Minutes after the start of the day.</param>
/// <param name="UsableMin">End of what it gives with the margin kept, or of its use.</param>
/// <param name="MarginMin">End of the margin, or of its use.</param>
internal readonly record struct SetSpan(double FromMin, double UsableMin, double MarginMin);

/// <summary>One row of the picture.</summary>
/// <param name="Item">What lasts.</param>
/// <param name="Name">Its name, safe to draw.</param>
/// <param name="Sets">Sets there are, in the order used; none when there are none.</param>
/// <param name="IsFirst">True for what runs out first.</param>
internal sealed record RunTimeRow(RunTimeItem Item, string Name, IReadOnlyList<SetSpan> Sets, bool IsFirst)
{
    /// <summary>When its last set has run out, minutes after the start of the day.</summary>
    public double OutMin => Sets.Count > 0 ? Sets[^1].MarginMin : 0;
}

/// <summary>What of a report about batteries and media the picture shows, without what cannot be drawn.</summary>
internal sealed class RunTimeView
{
    // What lies beyond the end of the day is shown for this share of it.
    private const double AfterTheEnd = 0.07;
    private const int LongestName = 80;

    public RunTimeView(RunTimeReport report, DayTime day)
    {
        Report = report;
        Day = day;
        EndMin = double.IsFinite(report.DurationMin) ? Math.Max(1, report.DurationMin) : 1;
        AxisEndMin = EndMin * (1 + AfterTheEnd);
        Swaps = [.. report.Swaps.Where(s => double.IsFinite(s.AtMin) && s.AtMin >= 0).OrderBy(s => s.AtMin)];
        Takes = [.. report.Takes.Where(t => double.IsFinite(t.StartMin) && double.IsFinite(t.DurationMin) && t.StartMin >= 0 && t.StartMin < AxisEndMin).OrderBy(t => t.StartMin)];
        Rows = [.. report.Items.Select(i => new RunTimeRow(i, NameOf(i), Sets(i), i.Id == report.FirstId))];
    }

    public RunTimeReport Report { get; }

    public DayTime Day { get; }

    /// <summary>End of the day, minutes.</summary>
    public double EndMin { get; }

    /// <summary>End of the picture, minutes.</summary>
    public double AxisEndMin { get; }

    /// <summary>Changes in time order.</summary>
    public IReadOnlyList<Swap> Swaps { get; }

    /// <summary>The call sheet.</summary>
    public IReadOnlyList<PlannedTake> Takes { get; }

    public IReadOnlyList<RunTimeRow> Rows { get; }

    /// <summary>What runs out first; null when the report names none of its items.</summary>
    public RunTimeRow? First => Rows.FirstOrDefault(r => r.IsFirst);

    /// <summary>When that runs out; null when not within the day.</summary>
    public double? FirstOutMin => double.IsFinite(Report.FirstOutMin) && Report.FirstOutMin >= 0 && Report.FirstOutMin <= EndMin ? Report.FirstOutMin : null;

    /// <summary>Label of the take that something runs out in; empty without one.</summary>
    public string BrokenTake => UserText.Cut(UserText.Clean(Report.BrokenTake), LongestName);

    public IReadOnlyList<RunTimeRow> Short => [.. Rows.Where(r => !r.Item.Enough)];

    public static double HoursOf(double hours) => double.IsFinite(hours) ? Math.Clamp(hours, 0, 1e6) : 0;

    private static string NameOf(RunTimeItem item)
    {
        string name = UserText.Cut(UserText.Clean(item.DisplayName), LongestName);
        return name.Length > 0 ? name : item.Id;
    }

    private List<SetSpan> Sets(RunTimeItem item)
    {
        double[] starts = [0, .. Swaps.Where(s => s.ItemIds.Contains(item.Id)).Select(s => s.AtMin)];
        // The plan of changes may ask for more sets than there are; files never run short.
        int stock = item.Kind == RunTimeKind.File ? starts.Length : Math.Clamp(item.SetCount, 0, starts.Length);
        List<SetSpan> sets = [];
        for (int i = 0; i < stock; i++)
        {
            double end = i + 1 < stock ? starts[i + 1] : AxisEndMin;
            double usable = starts[i] + (60 * HoursOf(item.Hours)), margin = starts[i] + (60 * HoursOf(item.HoursWithoutMargin));
            // What is used in takes only lasts longer by the clock than its hours say; it is known to serve until its change is due, or to the end.
            usable = Math.Max(usable, i + 1 < starts.Length ? starts[i + 1] : item.Enough ? EndMin : 0);
            usable = Math.Min(usable, end);
            sets.Add(new(starts[i], usable, Math.Clamp(margin, usable, end)));
        }

        return sets;
    }
}
