using Quarterlight.Endurance.Heat;

namespace Quarterlight.Planner.Mapping;

/// <summary>Answers about heat, to the contract.</summary>
internal static class HeatReportMapper
{
    public static V1.HeatReport ToContract(HeatReport report)
    {
        var contract = new V1.HeatReport
        {
            SoakedAirC = report.SoakedAirC,
            Rhythm = ToContract(report.Rhythm),
            SunAtStart = ToContract(report.SunAtStart),
            SunAtEnd = ToContract(report.SunAtEnd),
            Strictest = report.Strictest,
        };
        if (report.PrecoolMin is { } precool)
        {
            contract.PrecoolMin = precool;
        }

        if (report.LowestAirC is { } lowest)
        {
            contract.LowestAirC = lowest;
        }

        contract.Limits.AddRange(report.Limits.Select(ToContract));
        contract.Samples.AddRange(report.Samples.Select(ToContract));
        contract.Options.AddRange(report.Options.Select(ToContract));
        contract.Advisories.AddRange(report.Advisories.Select(GeometryMapper.ToContract));
        return contract;
    }

    private static V1.HeatLimitTime ToContract(HeatLimitTime limit)
    {
        var contract = new V1.HeatLimitTime { Kind = limit.Kind.ToContract<V1.HeatLimitKind>(), Reason = limit.Reason };
        if (limit.Minutes is { } minutes)
        {
            contract.Minutes = minutes;
        }

        if (limit.MinutesAtWorst is { } worst)
        {
            contract.MinutesAtWorst = worst;
        }

        return contract;
    }

    private static V1.ShootingRhythm ToContract(ShootingRhythm rhythm) => new()
    {
        Possible = rhythm.Possible,
        Limit = rhythm.Limit.ToContract<V1.HeatLimitKind>(),
        RollMin = rhythm.RollMin,
        CoolMin = rhythm.CoolMin,
        TakeCount = rhythm.TakeCount,
        RollingFraction = rhythm.RollingFraction,
        Blocks =
        {
            rhythm.Blocks.Select(b => new V1.HeatBlock { Kind = b.Kind.ToContract<V1.HeatBlockKind>(), StartMin = b.StartMin, EndMin = b.EndMin, EndAirC = b.EndAirC }),
        },
    };

    private static V1.HeatSample ToContract(HeatSample sample)
    {
        var contract = new V1.HeatSample
        {
            Minute = sample.Minute,
            AirC = sample.AirC,
            InteriorC = sample.InteriorC,
            OperativeC = sample.OperativeC,
            RelativeHumidityPercent = sample.RelativeHumidityPercent,
            WbgtC = sample.WbgtC,
            Co2Ppm = sample.Co2Ppm,
        };
        if (sample.Pmv is { } pmv)
        {
            contract.Pmv = pmv;
        }

        if (sample.PpdPercent is { } ppd)
        {
            contract.PpdPercent = ppd;
        }

        if (sample.HeatIndexC is { } index)
        {
            contract.HeatIndexC = index;
        }

        return contract;
    }

    private static V1.HeatOption ToContract(HeatOption option)
    {
        var contract = new V1.HeatOption { Code = option.Code, Words = option.Words, RollingFraction = option.RollingFraction };
        if (option.Minutes is { } minutes)
        {
            contract.Minutes = minutes;
        }

        if (option.PrecoolMin is { } precool)
        {
            contract.PrecoolMin = precool;
        }

        return contract;
    }

    private static V1.SunPosition ToContract(SunState sun) => new() { ElevationDeg = sun.ElevationDeg, AzimuthDeg = sun.AzimuthDeg, GainW = sun.GainW };
}
