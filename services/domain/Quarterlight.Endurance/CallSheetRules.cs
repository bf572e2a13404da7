using System.Globalization;
using Quarterlight.Quantities;

namespace Quarterlight.Endurance;

/// <summary>What a valid call sheet is: the takes of a day, in time order and not overlapping.</summary>
public static class CallSheetRules
{
    /// <summary>Takes on a call sheet.</summary>
    public static ValidRange TakeCount { get; } = new(0, 200, "");

    /// <summary>Letters in a label.</summary>
    public static ValidRange LabelLength { get; } = new(1, 40, "");

    /// <summary>Start of a take after the start of the day.</summary>
    public static ValidRange Start { get; } = new(0, 1440, "minutes");

    /// <summary>Length of a take.</summary>
    public static ValidRange Duration { get; } = new(0.1, 240, "minutes");

    // Starts and lengths come from clocks: a ten-thousandth of a second of overlap is rounding, not a mistake.
    private const double RoundingMin = 1e-6;

    /// <summary>Adds everything wrong with a call sheet.</summary>
    /// <param name="takes">The takes.</param>
    /// <param name="dayMin">Length of the day in minutes, which the takes must lie in; null or not a number checks nothing against it.</param>
    /// <param name="prefix">Field path of the day, such as "day".</param>
    /// <param name="violations">Where violations are added.</param>
    public static void Check(IReadOnlyList<PlannedTake> takes, double? dayMin, string prefix, ICollection<Violation> violations)
    {
        ArgumentNullException.ThrowIfNull(takes);
        ArgumentNullException.ThrowIfNull(violations);
        if (!TakeCount.Check($"{prefix}.takes", takes.Count, violations))
        {
            return;
        }

        double free = 0;
        string before = "";
        for (int i = 0; i < takes.Count; i++)
        {
            PlannedTake take = takes[i];
            string at = $"{prefix}.takes[{i}]";
            if (!LabelLength.Contains(take.Label.Length) || string.IsNullOrWhiteSpace(take.Label))
            {
                violations.Add(new Violation($"{at}.label", string.IsNullOrWhiteSpace(take.Label) ? "the label is empty" : $"the label has {take.Label.Length} letters", "Give it 1 to 40 letters, such as \"14 take 2\""));
            }

            bool timed = Start.Check($"{at}.start_min", take.StartMin, violations);
            timed &= Duration.Check($"{at}.duration_min", take.DurationMin, violations);
            if (!timed)
            {
                continue;
            }

            if (take.StartMin < free - RoundingMin)
            {
                violations.Add(new Violation($"{at}.start_min", $"take \"{take.Label}\" starts at minute {Shown(take.StartMin)}, while \"{before}\" runs until {Shown(free)}", "List the takes in time order, each after the end of the one before"));
            }

            if (dayMin is { } day && take.EndMin > day + RoundingMin)
            {
                violations.Add(new Violation($"{at}.start_min", $"take \"{take.Label}\" ends at minute {Shown(take.EndMin)}, after the end of the day at {Shown(day)}", "Move it into the day, or make the day longer"));
            }

            if (take.EndMin > free)
            {
                (free, before) = (take.EndMin, take.Label);
            }
        }
    }

    private static string Shown(double minutes) => minutes.ToString("0.##", CultureInfo.InvariantCulture);
}
