using Quarterlight.Endurance.RunTime;

namespace Quarterlight.Planner.Mapping;

/// <summary>Answers about batteries and media, to the contract.</summary>
internal static class RunTimeReportMapper
{
    public static V1.RunTimeReport ToContract(RunTimeReport report) => new()
    {
        Items = { report.Items.Select(ToContract) },
        FirstId = report.FirstId,
        FirstOutMin = report.FirstOutMin,
        Swaps = { report.Swaps.Select(s => new V1.Swap { AtMin = s.AtMin, Words = s.Words, ItemIds = { s.ItemIds }, AfterTake = s.AfterTake }) },
        BrokenTake = report.BrokenTake,
        DataMbPerS = report.DataMBPerS,
        FileLimitMin = report.FileLimitMin,
        BatteryC = report.BatteryC,
        DurationMin = report.DurationMin,
        Advisories = { report.Advisories.Select(GeometryMapper.ToContract) },
    };

    private static V1.RunTimeItem ToContract(RunTimeItem item) => new()
    {
        Kind = item.Kind.ToContract<V1.RunTimeKind>(),
        Id = item.Id,
        DisplayName = item.DisplayName,
        Hours = item.Hours,
        HoursWithoutMargin = item.HoursWithoutMargin,
        SetCount = item.SetCount,
        SetsNeeded = item.SetsNeeded,
        DeratingFraction = item.DeratingFraction,
        Enough = item.Enough,
    };
}
