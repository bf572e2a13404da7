using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>How the car is driven, in words.</summary>
internal static class DriveText
{
    /// <summary>How the car is driven, in one phrase.</summary>
    public static string Whole(DriveConditions? drive, UnitPreference units)
    {
        drive ??= new DriveConditions();
        var parts = new List<string> { drive.SpeedKmPerHour > 0 ? UnitText.Speed(drive.SpeedKmPerHour, units) : "standing still" };
        parts.Add(drive.EngineState == EngineState.Off ? "engine off" : "engine running");
        if (drive.SpeedKmPerHour > 0)
        {
            parts.Add(Road(drive));
        }

        parts.Add(Windows(drive));
        if (drive.FanStep > 0)
        {
            parts.Add(Fan(drive));
        }

        if (drive.Rain is Rain.Light or Rain.Heavy)
        {
            parts.Add(Rains(drive));
        }

        return string.Join(", ", parts);
    }

    /// <summary>Only what differs, in one phrase; "nothing changed" when nothing does.</summary>
    public static string Change(DriveConditions? before, DriveConditions after, UnitPreference units)
    {
        before ??= new DriveConditions();
        var parts = new List<string>();
        Add(before.SpeedKmPerHour != after.SpeedKmPerHour, after.SpeedKmPerHour > 0 ? UnitText.Speed(after.SpeedKmPerHour, units) : "standing still");
        Add((before.EngineState == EngineState.Off) != (after.EngineState == EngineState.Off), after.EngineState == EngineState.Off ? "engine off" : "engine running");
        Add(after.HasEngineSpeedRpm && before.EngineSpeedRpm != after.EngineSpeedRpm, Say($"engine at {after.EngineSpeedRpm:0} rpm"));
        Add(before.RoadSurface != after.RoadSurface, Road(after));
        Add(!before.OpenWindows.OrderBy(w => w.PaneId, StringComparer.Ordinal).SequenceEqual(after.OpenWindows.OrderBy(w => w.PaneId, StringComparer.Ordinal)), Windows(after));
        Add(before.FanStep != after.FanStep, Fan(after));
        Add(before.Rain != after.Rain && (before.Rain > Rain.None || after.Rain > Rain.None), Rains(after));
        Add(after.NoiseCorrection is not null && !Equals(before.NoiseCorrection, after.NoiseCorrection), "with the noise of a clip");
        return parts.Count == 0 ? "nothing changed" : Join(parts);

        void Add(bool changed, string words)
        {
            if (changed)
            {
                parts.Add(words);
            }
        }
    }

    private static string Windows(DriveConditions drive)
    {
        if (drive.OpenWindows.Count == 0)
        {
            return "windows shut";
        }

        double first = drive.OpenWindows[0].OpenFraction;
        string how = first < 1 ? Say($"{first * 100:0} % down") : "down";
        if (drive.OpenWindows.All(w => w.OpenFraction == first) && drive.OpenWindows.Count is 2 or 4)
        {
            string[] rows = [.. drive.OpenWindows.Select(w => w.PaneId.Split('-')[0]).Distinct()];
            if (rows.Length == 1 || drive.OpenWindows.Count == 4)
            {
                return rows.Length == 1 ? $"both {Name(rows[0])} windows {how}" : $"all windows {how}";
            }
        }

        return Join([.. drive.OpenWindows.Select(w => w.OpenFraction < 1 ? Say($"{Seat(w.PaneId)} window {w.OpenFraction * 100:0} % down") : $"{Seat(w.PaneId)} window down")]);
    }

    private static string Fan(DriveConditions drive) => drive.FanStep == 0 ? "fan off" : Say($"fan at step {drive.FanStep}");

    private static string Rains(DriveConditions drive) => drive.Rain switch
    {
        Rain.Light => "light rain",
        Rain.Heavy => "heavy rain",
        _ => "no rain",
    };

    private static string Road(DriveConditions drive) => drive.RoadSurface switch
    {
        RoadSurface.CoarseAsphalt => "coarse asphalt",
        RoadSurface.Concrete => "concrete",
        RoadSurface.Cobbles => "cobbles",
        RoadSurface.Gravel => "gravel",
        _ => "smooth asphalt",
    };
}
