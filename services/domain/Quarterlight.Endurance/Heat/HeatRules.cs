using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>What a valid question about heat is.</summary>
public static class HeatRules
{
    /// <summary>Length of the day.</summary>
    public static ValidRange DurationMin { get; } = new(10, 720, "min");

    /// <summary>Local time less UTC.</summary>
    public static ValidRange UtcOffsetMin { get; } = new(-720, 840, "min");

    /// <summary>Latitude.</summary>
    public static ValidRange LatitudeDeg { get; } = new(-90, 90, "degrees");

    /// <summary>Longitude.</summary>
    public static ValidRange LongitudeDeg { get; } = new(-180, 180, "degrees");

    /// <summary>Air outside.</summary>
    public static ValidRange OutsideC { get; } = new(-30, 55, "°C");

    /// <summary>Relative humidity outside.</summary>
    public static ValidRange HumidityPercent { get; } = new(1, 100, "%");

    /// <summary>Wind.</summary>
    public static ValidRange WindMPerS { get; } = new(0, 30, "m/s");

    /// <summary>Clouds.</summary>
    public static ValidRange CloudFraction { get; } = new(0, 1, "");

    /// <summary>Heading of the car.</summary>
    public static ValidRange HeadingDeg { get; } = new(0, 360, "degrees");

    /// <summary>Time the car stood.</summary>
    public static ValidRange SoakMin { get; } = new(0, 600, "min");

    /// <summary>Lamps and electronics.</summary>
    public static ValidRange EquipmentW { get; } = new(0, 3000, "W");

    /// <summary>Adults, children or animals.</summary>
    public static ValidRange Head { get; } = new(0, 9, "");

    /// <summary>Clothing.</summary>
    public static ValidRange ClothingClo { get; } = new(0, 2, "clo");

    /// <summary>Activity.</summary>
    public static ValidRange ActivityMet { get; } = new(0.8, 4, "met");

    /// <summary>Cooling power.</summary>
    public static ValidRange CoolingW { get; } = new(0, 15_000, "W");

    /// <summary>Set point.</summary>
    public static ValidRange SetPointC { get; } = new(5, 30, "°C");

    /// <summary>Air moved by the fan.</summary>
    public static ValidRange AirflowLPerS { get; } = new(5, 300, "l/s");

    /// <summary>Speed while rolling.</summary>
    public static ValidRange SpeedKmPerHour { get; } = new(0, 130, "km/h");

    /// <summary>Windows down.</summary>
    public static ValidRange OpenWindows { get; } = new(0, 4, "");

    /// <summary>Length of a take.</summary>
    public static ValidRange RollMin { get; } = new(0.5, 240, "min");

    /// <summary>Air in a cabin.</summary>
    public static ValidRange AirVolumeM3 { get; } = new(0.5, 30, "m3");

    /// <summary>Area of one pane.</summary>
    public static ValidRange PaneM2 { get; } = new(0.001, 10, "m2");

    /// <summary>Everything wrong with a question; empty when it can be answered.</summary>
    /// <param name="task">The question.</param>
    /// <param name="dayPrefix">Field path of the day, such as "setup.day".</param>
    /// <param name="setupPrefix">Field path of the set-up, such as "setup".</param>
    public static IReadOnlyList<Violation> Validate(HeatTask task, string dayPrefix, string setupPrefix)
    {
        ArgumentNullException.ThrowIfNull(task);
        var violations = new List<Violation>();
        SolarPosition.Year.Check($"{dayPrefix}.start_time", task.Start.UtcDateTime.Year, violations);
        UtcOffsetMin.Check($"{dayPrefix}.utc_offset_min", task.Start.Offset.TotalMinutes, violations);
        DurationMin.Check($"{dayPrefix}.duration_min", task.DurationMin, violations);
        LatitudeDeg.Check($"{dayPrefix}.latitude_deg", task.LatitudeDeg, violations);
        LongitudeDeg.Check($"{dayPrefix}.longitude_deg", task.LongitudeDeg, violations);
        OutsideC.Check($"{dayPrefix}.air.temperature_c", task.Air.TemperatureC, violations);
        HumidityPercent.Check($"{dayPrefix}.air.relative_humidity_percent", task.Air.RelativeHumidityPercent, violations);
        WindMPerS.Check($"{dayPrefix}.air.wind_speed_m_per_s", task.Air.WindSpeedMPerS, violations);
        CloudFraction.Check($"{dayPrefix}.air.cloud_fraction", task.Air.CloudFraction, violations);
        if (task.HeadingDeg is { } heading)
        {
            HeadingDeg.Check($"{dayPrefix}.heading_deg", heading, violations);
        }

        Known(task.Glass, $"{dayPrefix}.glass", violations);
        Known(task.Shade, $"{dayPrefix}.shade", violations);
        Known(task.Cover, $"{dayPrefix}.cover", violations);
        SoakMin.Check($"{dayPrefix}.soak_min", task.SoakMin, violations);
        EquipmentW.Check($"{dayPrefix}.equipment_w", task.EquipmentW, violations);
        Check(task.Occupants, $"{dayPrefix}.occupants", violations);
        CoolingW.Check($"{dayPrefix}.cooling.power_w", task.Cooling.PowerW, violations);
        SetPointC.Check($"{dayPrefix}.cooling.set_point_c", task.Cooling.SetPointC, violations);
        AirflowLPerS.Check($"{dayPrefix}.cooling.airflow_l_per_s", task.Cooling.AirflowLPerS, violations);
        SpeedKmPerHour.Check($"{setupPrefix}.speed_km_per_hour", task.SpeedKmPerHour, violations);
        OpenWindows.Check($"{setupPrefix}.open_windows", task.OpenWindows, violations);
        CheckCar(task.Car, $"{setupPrefix}.cabin", violations);
        if (task.RollMin is { } roll)
        {
            RollMin.Check("roll_min", roll, violations);
        }

        if (task.RhythmLimit is not (HeatLimitKind.Comfort or HeatLimitKind.Caution))
        {
            violations.Add(new Violation("rhythm_limit", "a rhythm is never planned up to the stop limit", "Choose comfort or caution"));
        }

        return violations;
    }

    private static void Check(Occupants people, string at, List<Violation> violations)
    {
        Head.Check($"{at}.adult_count", people.AdultCount, violations);
        Head.Check($"{at}.child_count", people.ChildCount, violations);
        Head.Check($"{at}.animal_count", people.AnimalCount, violations);
        ClothingClo.Check($"{at}.clothing_clo", people.ClothingClo, violations);
        ActivityMet.Check($"{at}.activity_met", people.ActivityMet, violations);
        if (people is { AdultCount: 0, ChildCount: 0, AnimalCount: 0 })
        {
            violations.Add(new Violation($"{at}.adult_count", "nobody is in the car", "Give at least one adult, child or animal: the limits are theirs"));
        }
    }

    private static void CheckCar(HeatCar car, string at, List<Violation> violations)
    {
        AirVolumeM3.Check(at, car.AirVolumeM3, violations);
        foreach (GlassPane pane in car.Panes)
        {
            PaneM2.Check(at, pane.AreaM2, violations);
            if (!double.IsFinite(pane.BearingDeg) || !double.IsFinite(pane.TiltDeg))
            {
                violations.Add(new Violation(at, $"the pane {pane.Id} has no direction", "Give a car whose measurements make sense"));
            }
        }
    }

    private static void Known<T>(T value, string at, List<Violation> violations)
        where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
        {
            violations.Add(new Violation(at, $"the value {value} is not one of the list", $"Choose one of {string.Join(", ", Enum.GetNames<T>())}"));
        }
    }
}
