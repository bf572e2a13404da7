using Quarterlight.Quantities;

namespace Quarterlight.Endurance.RunTime;

/// <summary>What runs out.</summary>
public enum RunTimeKind
{
    /// <summary>Batteries of a device.</summary>
    Battery,

    /// <summary>Cards.</summary>
    Card,

    /// <summary>The size of one file.</summary>
    File,
}

/// <summary>How long one thing lasts.</summary>
public sealed record RunTimeItem
{
    /// <summary>What it is.</summary>
    public required RunTimeKind Kind { get; init; }

    /// <summary>Device id; cards or file for the others.</summary>
    public required string Id { get; init; }

    /// <summary>What the crew calls it.</summary>
    public required string DisplayName { get; init; }

    /// <summary>Hours one set lasts, margin taken off.</summary>
    public required double Hours { get; init; }

    /// <summary>Hours one set would last without the margin.</summary>
    public required double HoursWithoutMargin { get; init; }

    /// <summary>Sets there are for it.</summary>
    public required int SetCount { get; init; }

    /// <summary>Sets the day needs; one more than there are when no number is enough.</summary>
    public required int SetsNeeded { get; init; }

    /// <summary>Share of the rated energy that temperature and age leave, 0 to 1; 1 for cards and files.</summary>
    public required double DeratingFraction { get; init; }

    /// <summary>True when the day is covered.</summary>
    public required bool Enough { get; init; }
}

/// <summary>Change something now.</summary>
/// <param name="AtMin">Minutes after the start of the day.</param>
/// <param name="Words">What to change.</param>
/// <param name="ItemIds">Ids of the items changed.</param>
/// <param name="AfterTake">Label of the take before it; empty before the first or without a call sheet.</param>
public sealed record Swap(double AtMin, string Words, IReadOnlyList<string> ItemIds, string AfterTake);

/// <summary>The answer about batteries and media.</summary>
public sealed record RunTimeReport
{
    /// <summary>Shortest first; at least one.</summary>
    public required IReadOnlyList<RunTimeItem> Items { get; init; }

    /// <summary>What runs out first.</summary>
    public required string FirstId { get; init; }

    /// <summary>Minutes after the start of the day at which it runs out.</summary>
    public required double FirstOutMin { get; init; }

    /// <summary>When to change what, in time order; never during a take.</summary>
    public required IReadOnlyList<Swap> Swaps { get; init; }

    /// <summary>Label of a take during which something would run out whatever is swapped; empty when there is none.</summary>
    public required string BrokenTake { get; init; }

    /// <summary>Data written, megabytes of 10^6 bytes a second, all tracks of one copy; 0 without media.</summary>
    public required double DataMBPerS { get; init; }

    /// <summary>Minutes until one file reaches 4 GiB; 0 without media.</summary>
    public required double FileLimitMin { get; init; }

    /// <summary>Temperature of the batteries the answer rests on, degrees Celsius.</summary>
    public required double BatteryC { get; init; }

    /// <summary>Length of the day, minutes.</summary>
    public required double DurationMin { get; init; }

    /// <summary>The call sheet.</summary>
    public required IReadOnlyList<PlannedTake> Takes { get; init; }

    /// <summary>What to be careful about, most important first.</summary>
    public required IReadOnlyList<Advisory> Advisories { get; init; }
}
