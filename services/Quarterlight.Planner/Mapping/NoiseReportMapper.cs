using Quarterlight.Acoustics;
using Quarterlight.Placement.Noise;

namespace Quarterlight.Planner.Mapping;

/// <summary>Answers about noise, to the contract.</summary>
internal static class NoiseReportMapper
{
    public static V1.NoiseReport ToContract(NoiseReport report)
    {
        var contract = new V1.NoiseReport
        {
            Noise = ToContract(report.Noise),
            Talkers = { report.Talkers.Select(ToContract) },
            Verdict = ToContract(report.Verdict),
            Table = { report.Table.Select(ToContract) },
            Advisories = { report.Advisories.Select(GeometryMapper.ToContract) },
        };
        if (report.FastestWorksKmPerHour is { } works)
        {
            contract.FastestWorksKmPerHour = works;
        }

        if (report.FastestWithCareKmPerHour is { } care)
        {
            contract.FastestWithCareKmPerHour = care;
        }

        return contract;
    }

    /// <summary>A verdict; not stated when nobody talks.</summary>
    public static V1.SceneVerdict ToContract(SceneVerdict? verdict) => verdict is { } v ? v.ToContract<V1.SceneVerdict>() : V1.SceneVerdict.Unspecified;

    private static V1.CabinNoise ToContract(CabinNoise noise)
    {
        var contract = new V1.CabinNoise
        {
            DriveConditions = DriveMapper.ToContract(noise.Drive),
            Levels = OctaveMapper.ToContract(noise.LevelsDb),
            LevelDba = new V1.Estimate { Value = noise.LevelDba, PlusMinus = noise.UncertaintyDb },
            Shares = { noise.Shares.Select(ToContract) },
            DominantWords = { noise.DominantWords },
        };
        if (noise.DailyLimitMin is { } limit)
        {
            contract.DailyLimitMin = limit;
        }

        return contract;
    }

    private static V1.NoiseShare ToContract(NoiseShare share) => new()
    {
        Kind = share.Contribution.PortKind,
        Words = share.Contribution.Words,
        Levels = OctaveMapper.ToContract(share.Contribution.LevelAtDriverEar),
        LevelDba = new V1.Estimate { Value = share.LevelDba, PlusMinus = share.Contribution.UncertaintyDb },
        ShareFraction = share.ShareFraction,
    };

    private static V1.TalkerNoise ToContract(TalkerNoise talker) => new()
    {
        TalkerId = talker.TalkerId,
        DisplayName = talker.DisplayName,
        SpeechLevels = OctaveMapper.ToContract(talker.SpeechLevelsDb),
        NoiseLevels = OctaveMapper.ToContract(talker.NoiseLevelsDb),
        SnrDba = talker.SnrDba,
        Verdict = ToContract(talker.Verdict),
    };

    private static V1.NoiseRow ToContract(NoiseRow row)
    {
        var contract = new V1.NoiseRow { Words = row.Words, Cells = { row.Cells.Select(ToContract) } };
        if (row.FastestWorksKmPerHour is { } works)
        {
            contract.FastestWorksKmPerHour = works;
        }

        return contract;
    }

    private static V1.SpeedNoise ToContract(SpeedNoise cell)
    {
        var contract = new V1.SpeedNoise
        {
            SpeedKmPerHour = cell.SpeedKmPerHour,
            NoiseDba = cell.NoiseDba,
            Verdict = ToContract(cell.Verdict),
            DominantWords = cell.DominantWords,
        };
        if (cell.WorstSnrDba is { } snr)
        {
            contract.WorstSnrDba = snr;
        }

        return contract;
    }
}
