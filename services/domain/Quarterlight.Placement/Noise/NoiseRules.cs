using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Noise;

/// <summary>What a valid question about noise is.</summary>
public static class NoiseRules
{
    /// <summary>Highest speed looked at, km/h: that of <see cref="DriveConditionsRules.Speed"/>.</summary>
    public const int TopSpeedKmPerHour = 130;

    /// <summary>Speeds of a table.</summary>
    public static ValidRange TableSpeedCount { get; } = new(1, 12, "");

    /// <summary>Stretches of a route.</summary>
    public static ValidRange StretchCount { get; } = new(1, 200, "");

    /// <summary>Characters of a stretch's label.</summary>
    public static ValidRange LabelLength { get; } = new(1, 60, "characters");

    /// <summary>Length of a stretch.</summary>
    public static ValidRange StretchLength { get; } = new(10, 100_000, "m");

    /// <summary>Speed limit, and speed of traffic.</summary>
    public static ValidRange RoadSpeed { get; } = new(5, TopSpeedKmPerHour, "km/h");

    /// <summary>Everything wrong with a question; empty when it is valid. What is planned has rules of its own: <see cref="PlacementRules"/>.</summary>
    /// <param name="task">The question.</param>
    /// <param name="drivePrefix">Field path of the drive conditions.</param>
    public static IReadOnlyList<Violation> Validate(NoiseTask task, string drivePrefix = "drive_conditions")
    {
        ArgumentNullException.ThrowIfNull(task);
        return [.. DriveConditionsRules.Validate(task.Drive, drivePrefix), .. ValidateTableSpeeds(task.TableSpeedsKmPerHour)];
    }

    /// <summary>Everything wrong with a question about a route; empty when it is valid.</summary>
    /// <param name="task">The question.</param>
    /// <param name="prefix">Field path of the stretches.</param>
    /// <param name="drivePrefix">Field path of the drive conditions.</param>
    public static IReadOnlyList<Violation> Validate(RouteTask task, string prefix = "stretches", string drivePrefix = "drive_conditions")
    {
        ArgumentNullException.ThrowIfNull(task);
        return [.. Validate(task.Noise, drivePrefix), .. ValidateStretches(task.Stretches, prefix)];
    }

    /// <summary>Everything wrong with the speeds of a table.</summary>
    /// <param name="speedsKmPerHour">Speeds, km/h.</param>
    /// <param name="field">Field path of the speeds.</param>
    public static IReadOnlyList<Violation> ValidateTableSpeeds(IReadOnlyList<double> speedsKmPerHour, string field = "table_speeds_km_per_hour")
    {
        ArgumentNullException.ThrowIfNull(speedsKmPerHour);
        var violations = new List<Violation>();
        TableSpeedCount.Check(field, speedsKmPerHour.Count, violations);
        for (int i = 0; i < speedsKmPerHour.Count; i++)
        {
            bool inRange = DriveConditionsRules.Speed.Check($"{field}[{i}]", speedsKmPerHour[i], violations);
            if (inRange && i > 0 && speedsKmPerHour[i] <= speedsKmPerHour[i - 1])
            {
                violations.Add(new Violation(
                    $"{field}[{i}]",
                    FormattableString.Invariant($"{speedsKmPerHour[i]:0.###} km/h comes after {speedsKmPerHour[i - 1]:0.###}"),
                    "List the speeds rising, each once"));
            }
        }

        return violations;
    }

    /// <summary>Everything wrong with a route.</summary>
    /// <param name="stretches">Stretches in order.</param>
    /// <param name="prefix">Field path of the stretches.</param>
    public static IReadOnlyList<Violation> ValidateStretches(IReadOnlyList<RouteStretch> stretches, string prefix = "stretches")
    {
        ArgumentNullException.ThrowIfNull(stretches);
        var violations = new List<Violation>();
        if (stretches.Count == 0)
        {
            violations.Add(new Violation(prefix, "the route has no stretches", "List at least one"));
        }
        else
        {
            StretchCount.Check(prefix, stretches.Count, violations);
        }

        for (int i = 0; i < stretches.Count; i++)
        {
            RouteStretch stretch = stretches[i];
            string at = $"{prefix}[{i}]";
            LabelLength.Check($"{at}.label", stretch.Label.Trim().Length, violations);
            StretchLength.Check($"{at}.length_m", stretch.LengthM, violations);
            RoadSpeed.Check($"{at}.speed_limit_km_per_hour", stretch.SpeedLimitKmPerHour, violations);
            if (stretch.TrafficSpeedKmPerHour is { } traffic)
            {
                RoadSpeed.Check($"{at}.traffic_speed_km_per_hour", traffic, violations);
            }
        }

        return violations;
    }
}
