using Quarterlight.Acoustics;
using Quarterlight.Placement.Noise;

namespace Quarterlight.Planner.Mapping;

/// <summary>Routes, both ways.</summary>
internal static class RouteMapper
{
    /// <summary>A route; everything wrong with it is noted.</summary>
    public static IReadOnlyList<RouteStretch> ToDomain(IReadOnlyList<V1.RouteStretch> route, string at, FieldReader reader)
    {
        var stretches = new List<RouteStretch>(route.Count);
        for (int i = 0; i < route.Count; i++)
        {
            V1.RouteStretch s = route[i];
            reader.NoControls($"{at}[{i}].label", s.Label);
            stretches.Add(new RouteStretch(
                s.Label,
                s.LengthM,
                s.SpeedLimitKmPerHour,
                reader.EnumIfStated<RoadSurface>($"{at}[{i}].road_surface", s.RoadSurface),
                s.HasTrafficSpeedKmPerHour ? s.TrafficSpeedKmPerHour : null,
                s.KeepWithTraffic));
        }

        if (stretches.Count > 0)
        {
            reader.AddUnsaid(NoiseRules.ValidateStretches(stretches, at));
        }

        return stretches;
    }

    public static V1.RouteReport ToContract(RouteReport report) => new()
    {
        Stretches = { report.Stretches.Select(ToContract) },
        QuietRuns = { report.QuietRuns.Select(ToContract) },
        Advisories = { report.Advisories.Select(GeometryMapper.ToContract) },
    };

    private static V1.StretchNoise ToContract(StretchNoise stretch)
    {
        var contract = new V1.StretchNoise
        {
            Label = stretch.Stretch.Label,
            StartM = stretch.StartM,
            LengthM = stretch.Stretch.LengthM,
            SpeedKmPerHour = stretch.SpeedKmPerHour,
            NoiseDba = stretch.Noise.NoiseDba,
            Verdict = NoiseReportMapper.ToContract(stretch.Noise.Verdict),
            DurationS = stretch.DurationS,
            DominantWords = stretch.Noise.DominantWords,
        };
        if (stretch.Noise.WorstSnrDba is { } snr)
        {
            contract.WorstSnrDba = snr;
        }

        return contract;
    }

    private static V1.QuietRun ToContract(QuietRun run) => new()
    {
        FirstLabel = run.FirstLabel,
        LastLabel = run.LastLabel,
        StartM = run.StartM,
        LengthM = run.LengthM,
        DurationS = run.DurationS,
        Verdict = NoiseReportMapper.ToContract(run.Verdict),
    };
}
