using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>What valid drive conditions are.</summary>
public static class DriveConditionsRules
{
    /// <summary>Road speed.</summary>
    public static ValidRange Speed { get; } = new(0, 130, "km/h");

    /// <summary>Blower steps.</summary>
    public static ValidRange FanSteps { get; } = new(0, 4, "");

    /// <summary>Engine speed.</summary>
    public static ValidRange EngineSpeed { get; } = new(500, 8000, "rpm");

    /// <summary>How far a window is down.</summary>
    public static ValidRange OpenFraction { get; } = new(0, 1, "");

    /// <summary>Cylinders of an engine.</summary>
    public static ValidRange Cylinders { get; } = new(2, 12, "");

    /// <summary>Shift of one octave by a noise correction.</summary>
    public static ValidRange NoiseShift { get; } = new(-40, 40, "dB");

    /// <summary>Characters of a noise correction's source.</summary>
    public static ValidRange SourceLength { get; } = new(0, 200, "characters");

    /// <summary>Side windows that wind down, where a car has them all.</summary>
    public static IReadOnlyList<string> PaneIds { get; } = ["front-left", "front-right", "rear-left", "rear-right"];

    /// <summary>Everything wrong with the conditions; empty when they are valid.</summary>
    public static IReadOnlyList<Violation> Validate(DriveConditions drive, string prefix = "drive_conditions")
    {
        ArgumentNullException.ThrowIfNull(drive);
        var violations = new List<Violation>();
        Speed.Check($"{prefix}.speed_km_per_hour", drive.SpeedKmPerHour, violations);
        FanSteps.Check($"{prefix}.fan_step", drive.FanStep, violations);
        if (drive.EngineRpm is { } rpm)
        {
            EngineSpeed.Check($"{prefix}.engine_speed_rpm", rpm, violations);
            if (drive.Engine == EngineState.Off)
            {
                violations.Add(new Violation($"{prefix}.engine_speed_rpm", "an engine that is off has no speed", "Leave it out, or say that the engine is running"));
            }
        }

        var seen = new HashSet<string>();
        for (int i = 0; i < drive.OpenWindows.Count; i++)
        {
            WindowOpening window = drive.OpenWindows[i];
            string at = $"{prefix}.open_windows[{i}]";
            if (!PaneIds.Contains(window.PaneId))
            {
                violations.Add(new Violation($"{at}.pane_id", $"no window is called \"{window.PaneId}\"", $"Use one of: {string.Join(", ", PaneIds)}"));
            }
            else if (!seen.Add(window.PaneId))
            {
                violations.Add(new Violation($"{at}.pane_id", $"window \"{window.PaneId}\" is listed twice", "List each window once"));
            }

            OpenFraction.Check($"{at}.open_fraction", window.OpenFraction, violations);
        }

        if (drive.NoiseCorrection is { } correction)
        {
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                NoiseShift.Check($"{prefix}.noise_correction.shifts.levels_db[{b}]", correction.ShiftsDb[b], violations);
            }

            SourceLength.Check($"{prefix}.noise_correction.source", correction.Source.Length, violations);
        }

        return violations;
    }
}
