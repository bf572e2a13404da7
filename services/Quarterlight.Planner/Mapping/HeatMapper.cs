using Quarterlight.Cabin;
using Quarterlight.Endurance.Heat;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Mapping;

/// <summary>Where the parts of a question about heat stand in the request or in what is kept.</summary>
/// <param name="Cabin">The car.</param>
/// <param name="Day">The day.</param>
/// <param name="Drive">What holds the speed and the open windows.</param>
internal sealed record HeatPaths(string Cabin, string Day, string Drive)
{
    /// <summary>A set-up sent whole.</summary>
    public static HeatPaths Setup { get; } = new("setup.cabin", "setup.day", "setup");

    /// <summary>A kept scene.</summary>
    public static HeatPaths Scene { get; } = new("cabin", "scene.shoot_day", "scene.drive_conditions");
}

/// <summary>Questions about heat, from the contract.</summary>
internal static class HeatMapper
{
    private const int UsualAdults = 2;
    private const int MostAdults = 9;

    /// <summary>What a kept scene says about heat, as a set-up with the scene's people in it.</summary>
    public static V1.HeatSetup FromScene(V1.Scene scene, V1.Cabin cabin)
    {
        V1.DriveConditions drive = scene.DriveConditions ?? new V1.DriveConditions();
        return new V1.HeatSetup
        {
            Cabin = cabin,
            SpeedKmPerHour = drive.SpeedKmPerHour,
            OpenWindows = drive.OpenWindows.Sum(w => w.OpenFraction),
            Day = DayMapper.Filled(scene.ShootDay, Math.Min(MostAdults, scene.Talkers.Count + scene.SilentSeatIds.Count)),
        };
    }

    /// <summary>A set-up with what it leaves open filled in; notes a violation and answers null when a part is missing.</summary>
    public static V1.HeatSetup? Filled(V1.HeatSetup setup, HeatPaths paths, FieldReader reader)
    {
        if (setup.Cabin is null)
        {
            reader.Add(paths.Cabin, "the car is missing", "Send one");
        }

        if (setup.Day is null)
        {
            reader.Add(paths.Day, "the day is missing", "Send at least its start and the air outside");
        }

        if (setup.Cabin is null || setup.Day is null)
        {
            return null;
        }

        V1.HeatSetup filled = setup.Clone();
        filled.Day = DayMapper.Filled(setup.Day, UsualAdults);
        return filled;
    }

    /// <summary>The question; everything wrong with it is noted.</summary>
    /// <param name="setup">Filled in.</param>
    /// <param name="paths">Where its parts stand.</param>
    /// <param name="request">The rhythm asked for.</param>
    /// <param name="reader">Takes what is wrong.</param>
    public static HeatTask ToDomain(V1.HeatSetup setup, HeatPaths paths, V1.ForecastHeatRequest request, FieldReader reader)
    {
        HeatTask task = DayMapper.ToDomain(setup.Day, paths.Day, reader) with
        {
            SpeedKmPerHour = setup.SpeedKmPerHour,
            OpenWindows = setup.OpenWindows,
            RhythmLimit = reader.Enum("rhythm_limit", request.RhythmLimit, (HeatLimitKind?)HeatLimitKind.Comfort),
            RollMin = request.HasRollMin ? request.RollMin : null,
        };
        DayMapper.CheckCallSheet(setup.Day, paths.Day, reader);
        int before = reader.Violations.Count;
        CabinSpec spec = CabinMapper.ToDomain(setup.Cabin, paths.Cabin, reader);
        bool carIsGood = reader.Violations.Count == before;
        if (carIsGood)
        {
            task = task with { Car = CarOf(CabinBuilder.Build(spec)) };
        }

        string roomsCabin = $"{paths.Drive}.cabin";
        reader.AddUnsaid(HeatRules.Validate(task, paths.Day, paths.Drive).Select(v => v.Field == roomsCabin ? v with { Field = paths.Cabin } : v));
        return task;
    }

    /// <summary>The car as the heat room sees it.</summary>
    public static HeatCar CarOf(CabinGeometry cabin) => new(cabin.AirVolumeM3, [.. cabin.Glazing.Select(PaneOf)]);

    // The cabin's axes are ISO 8855's, x forward, y left, z up; a bearing turns the other way round, as a compass does.
    private static GlassPane PaneOf(GlazingPane pane)
    {
        Vector3D normal = pane.OutwardNormal;
        double bearing = Angles.RadToDeg(Math.Atan2(-normal.Y, normal.X));
        double tilt = Angles.RadToDeg(Math.Atan2(Math.Sqrt((normal.X * normal.X) + (normal.Y * normal.Y)), normal.Z));
        return new GlassPane(pane.Id, pane.AreaM2, bearing < 0 ? bearing + 360 : bearing, tilt);
    }
}
