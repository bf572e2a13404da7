using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Noise;

/// <summary>Finds the stretches of a route on which the scene works, and how fast to drive each. docs/models/noise-forecast.md.</summary>
public static class RouteSurvey
{
    /// <summary>Slower than this is not driving on a road, km/h (judgement): no stretch is advised slower, unless its limit or traffic is.</summary>
    public const double SlowestKmPerHour = 10;

    /// <summary>Answers a question about a route.</summary>
    /// <param name="task">The question; the speed of its drive conditions is not looked at.</param>
    /// <param name="options">Tuning the plan was made with; null takes the defaults.</param>
    /// <exception cref="InvalidInputException"><see cref="NoiseRules.Validate(RouteTask, string, string)"/> finds something.</exception>
    /// <exception cref="ArgumentException">The plan is not one of its task.</exception>
    public static RouteReport Run(RouteTask task, PlacementOptions? options = null)
    {
        IReadOnlyList<Violation> violations = NoiseRules.Validate(task);
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }

        var board = new NoiseBoard(task.Noise, options ?? PlacementOptions.Default);
        var seen = new Dictionary<(RoadSurface Road, double Speed), SpeedNoise>();
        var stretches = new List<StretchNoise>(task.Stretches.Count);
        double start = 0;
        foreach (RouteStretch stretch in task.Stretches)
        {
            SpeedNoise noise = Drive(stretch);
            stretches.Add(new StretchNoise(stretch, start, noise.SpeedKmPerHour, noise, stretch.LengthM / (noise.SpeedKmPerHour / 3.6)));
            start += stretch.LengthM;
        }

        IReadOnlyList<QuietRun> runs = QuietRuns.Of(stretches);
        return new RouteReport(stretches, runs, NoiseAdvisories.ForRoute(board, stretches, runs));

        // As fast as it works; else as fast as it works with care; else with the traffic, since nothing is gained by holding it up.
        SpeedNoise Drive(RouteStretch stretch)
        {
            RoadSurface road = stretch.Road ?? task.Noise.Drive.Road;
            double top = Math.Min(stretch.SpeedLimitKmPerHour, stretch.TrafficSpeedKmPerHour ?? stretch.SpeedLimitKmPerHour);
            SpeedNoise atTop = At(road, top);
            if (stretch.KeepWithTraffic || atTop.Verdict is null or SceneVerdict.Works)
            {
                return atTop;
            }

            SpeedNoise? withCare = atTop.Verdict == SceneVerdict.WithCare ? atTop : null;
            for (double speed = Math.Ceiling(top) - 1; speed >= SlowestKmPerHour; speed--)
            {
                SpeedNoise noise = At(road, speed);
                if (noise.Verdict == SceneVerdict.Works)
                {
                    return noise;
                }

                withCare ??= noise.Verdict == SceneVerdict.WithCare ? noise : null;
            }

            return withCare ?? atTop;
        }

        SpeedNoise At(RoadSurface road, double speed)
        {
            if (!seen.TryGetValue((road, speed), out SpeedNoise? noise))
            {
                seen[(road, speed)] = noise = board.At(task.Noise.Drive with { Road = road, SpeedKmPerHour = speed });
            }

            return noise;
        }
    }
}
