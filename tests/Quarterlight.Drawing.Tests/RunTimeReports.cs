using Quarterlight.Endurance;
using Quarterlight.Endurance.RunTime;
using Quarterlight.Quantities;

namespace Quarterlight.Drawing.Tests;

/// <summary>Invented reports about batteries and media.</summary>
internal static class RunTimeReports
{
    public static readonly DateTimeOffset Start = new(2031, 7, 3, 7, 30, 0, TimeSpan.FromHours(2));

    /// <summary>Eight hours with six takes; the transmitters are changed once, the recorder twice.</summary>
    public static RunTimeReport Day => new()
    {
        Items =
        [
            Item(RunTimeKind.File, "file", "File", 0.62, 0.62, 13, 13),
            Item(RunTimeKind.Battery, "recorder", "Recorder", 3.2, 4, 3, 3),
            Item(RunTimeKind.Battery, "transmitters", "Body transmitters", 5.1, 6.4, 4, 2),
            Item(RunTimeKind.Battery, "receiver", "Receiver in the follow car", 9.5, 11.9, 1, 1),
            Item(RunTimeKind.Card, "cards", "Cards", 14.2, 14.2, 2, 1),
        ],
        FirstId = "file",
        FirstOutMin = 37,
        Swaps =
        [
            new(170, "Recorder: fresh batteries", ["recorder"], "12B take 3"),
            new(290, "Transmitters: fresh batteries", ["transmitters"], "14 take 1"),
            new(350, "Recorder: fresh batteries", ["recorder"], "14 take 2"),
        ],
        BrokenTake = "",
        DataMBPerS = 1.152,
        FileLimitMin = 62,
        BatteryC = 35,
        DurationMin = 480,
        Takes = [new("12A", 40, 25), new("12B", 100, 62), new("13", 200, 30), new("14 take 1", 265, 18), new("14 take 2", 310, 35), new("15", 400, 60)],
        Advisories = [new("warm", "Warm batteries age faster.", AdvisorySeverity.Note)],
    };

    public static RunTimeReport NotEnough => Day with
    {
        Items =
        [
            Item(RunTimeKind.Battery, "recorder", "Recorder", 2, 2.5, 2, 4),
            Item(RunTimeKind.Battery, "transmitters", "Body transmitters", 5.1, 6.4, 4, 2),
            Item(RunTimeKind.Card, "cards", "Cards", 5, 5.2, 1, 2),
            Item(RunTimeKind.Battery, "lamp", "Lamp", 1, 1.25, 0, 8),
        ],
        FirstId = "lamp",
        FirstOutMin = 0,
        BrokenTake = "12B",
        Swaps = [new(95, "Recorder: fresh batteries", ["recorder"], "12A"), new(190, "Recorder: fresh batteries", ["recorder"], "12B"), new(290, "Transmitters and recorder: fresh batteries; new card", ["transmitters", "recorder", "cards"], "14 take 1")],
    };

    /// <summary>A day of twelve hours, twelve items, each with a name of 80 letters, and two hundred takes.</summary>
    public static RunTimeReport Crowded => Day with
    {
        DurationMin = 720,
        Items = [.. Enumerable.Range(1, 12).Select(i => Item(RunTimeKind.Battery, $"d{i}", $"{i} {new string('W', 77)}", 0.9 + (0.7 * i), 1.2 + (0.8 * i), i, 2 + (i % 3)))],
        FirstId = "d1",
        FirstOutMin = 54,
        Swaps = [.. Enumerable.Range(1, 12).Select(i => new Swap(50 * i, string.Join(' ', Enumerable.Repeat("fresh batteries for everything", 9)), [$"d{i}", "d12"], new string('T', 40)))],
        Takes = [.. Enumerable.Range(0, 200).Select(i => new PlannedTake($"{i}", 3.5 * i, 2))],
    };

    public static RunTimeReport ManyChanges => Day with { Swaps = [.. Enumerable.Range(1, 60).Select(i => new Swap(7.5 * i, "Recorder: fresh batteries", ["recorder"], ""))], Items = [Item(RunTimeKind.Battery, "recorder", "Recorder", 0.15, 0.2, 70, 61)], FirstId = "recorder", FirstOutMin = 9 };

    public static RunTimeReport NothingToChange => Day with { Swaps = [], Takes = [], Items = [Item(RunTimeKind.Battery, "recorder", "Recorder", 12, 15, 1, 1)], FirstId = "recorder", FirstOutMin = 720, DataMBPerS = 0, FileLimitMin = 0, Advisories = [] };

    public static RunTimeReport Hostile => Day with
    {
        Items = [.. Day.Items.Select(i => i with { DisplayName = HeatReports.Hostile + new string('x', 70) })],
        Swaps = [.. Day.Swaps.Select(s => s with { Words = HeatReports.Hostile, AfterTake = HeatReports.Hostile })],
        Takes = [.. Day.Takes.Select(t => t with { Label = HeatReports.Hostile })],
        BrokenTake = HeatReports.Hostile,
    };

    public static RunTimeReport NotNumbers => Day with
    {
        Items = [.. Day.Items.Select(i => i with { Hours = double.NaN, HoursWithoutMargin = double.PositiveInfinity })],
        FirstOutMin = double.NaN,
        DataMBPerS = double.NaN,
        FileLimitMin = double.PositiveInfinity,
        BatteryC = double.NaN,
        Swaps = [new(double.NaN, "Nothing", ["recorder"], ""), .. Day.Swaps],
        Takes = [new("no", double.NaN, 5), .. Day.Takes],
    };

    public static RunTimeReport ShortDay => Day with { DurationMin = 1, Takes = [new("1", 0.2, 0.5)], Swaps = [new(0.8, "Recorder: fresh batteries", ["recorder"], "1")], FirstOutMin = 0.9 };

    public static IReadOnlyList<RunTimeReport> All => [Day, NotEnough, Crowded, ManyChanges, NothingToChange, Hostile, NotNumbers, ShortDay];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, 8)];

    private static RunTimeItem Item(RunTimeKind kind, string id, string name, double hours, double without, int sets, int needed) => new()
    {
        Kind = kind,
        Id = id,
        DisplayName = name,
        Hours = hours,
        HoursWithoutMargin = without,
        SetCount = sets,
        SetsNeeded = needed,
        DeratingFraction = 0.9,
        Enough = sets >= needed,
    };
}
