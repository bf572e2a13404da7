using Quarterlight.Quantities;

namespace Quarterlight.Endurance.RunTime;

/// <summary>What a valid question about batteries and media is.</summary>
public static class RunTimeRules
{
    /// <summary>Kinds of battery.</summary>
    public static ValidRange BatteryKinds { get; } = new(0, 20, "");

    /// <summary>Kinds of device.</summary>
    public static ValidRange DeviceKinds { get; } = new(0, 20, "");

    /// <summary>Energy of a battery when new.</summary>
    public static ValidRange Energy { get; } = new(0.5, 5000, "Wh");

    /// <summary>Charged batteries of a kind.</summary>
    public static ValidRange BatteryCount { get; } = new(1, 200, "");

    /// <summary>Draw of a device.</summary>
    public static ValidRange Power { get; } = new(0.01, 500, "W");

    /// <summary>Batteries a device holds.</summary>
    public static ValidRange BatteriesHeld { get; } = new(1, 24, "");

    /// <summary>Devices of a kind.</summary>
    public static ValidRange DeviceCount { get; } = new(1, 40, "");

    /// <summary>Tracks.</summary>
    public static ValidRange TrackCount { get; } = new(1, 64, "");

    /// <summary>Sample rate.</summary>
    public static ValidRange SampleRate { get; } = new(8000, 384000, "Hz");

    /// <summary>Size of a card.</summary>
    public static ValidRange CardSize { get; } = new(0.5, 16000, "GB");

    /// <summary>Cards.</summary>
    public static ValidRange CardCount { get; } = new(1, 100, "");

    /// <summary>Cards written at once.</summary>
    public static ValidRange CopyCount { get; } = new(1, 4, "");

    /// <summary>Steady writing of a card.</summary>
    public static ValidRange WriteSpeed { get; } = new(0.1, 10000, "MB/s");

    /// <summary>Share kept back.</summary>
    public static ValidRange Margin { get; } = new(0, 0.6, "");

    /// <summary>Length of the day.</summary>
    public static ValidRange Duration { get; } = new(1, 1440, "minutes");

    /// <summary>Everything wrong with a question; empty when it can be answered.</summary>
    /// <param name="task">The question.</param>
    /// <param name="kitPrefix">Field path of the kit, such as "kit".</param>
    /// <param name="dayPrefix">Field path of the day, such as "day".</param>
    public static IReadOnlyList<Violation> Validate(RunTimeTask task, string kitPrefix = "kit", string dayPrefix = "day")
    {
        ArgumentNullException.ThrowIfNull(task);
        List<Violation> violations = [.. ValidateGear(task.Batteries, task.Devices, task.Media, kitPrefix)];
        if (task.Devices.Count == 0 && task.Media is null)
        {
            violations.Add(new Violation($"{kitPrefix}.powered_devices", "there is nothing to forecast: no device that runs from batteries, and nothing that is recorded", "List powered_devices with their batteries, or recording_media, or both"));
        }

        Margin.Check("margin_fraction", task.MarginFraction, violations);
        BatteryDerating.Temperature.Check("battery_c", task.BatteryC, violations);
        bool dayKnown = Duration.Check("duration_min", task.DurationMin, violations);
        CallSheetRules.Check(task.Takes, dayKnown ? task.DurationMin : null, dayPrefix, violations);
        return violations;
    }

    /// <summary>Everything wrong with the batteries, devices and media of a kit, whatever is asked; empty when they are valid. All may be missing.</summary>
    /// <param name="batteries">Batteries.</param>
    /// <param name="devices">What runs from them.</param>
    /// <param name="media">What is recorded; null when not known.</param>
    /// <param name="prefix">Field path of the kit, such as "kit".</param>
    public static IReadOnlyList<Violation> ValidateGear(IReadOnlyList<Battery> batteries, IReadOnlyList<PoweredDevice> devices, RecordingMedia? media, string prefix)
    {
        ArgumentNullException.ThrowIfNull(batteries);
        ArgumentNullException.ThrowIfNull(devices);
        var violations = new List<Violation>();
        var ids = new HashSet<string>();
        BatteryKinds.Check($"{prefix}.batteries", batteries.Count, violations);
        for (int i = 0; i < batteries.Count; i++)
        {
            Battery battery = batteries[i];
            string at = $"{prefix}.batteries[{i}]";
            Distinct(ids, battery.Id, "battery", at, violations);
            Energy.Check($"{at}.energy_wh", battery.EnergyWh, violations);
            BatteryDerating.Age.Check($"{at}.age_years", battery.AgeYears, violations);
            BatteryCount.Check($"{at}.count", battery.Count, violations);
        }

        CheckDevices(devices, ids, prefix, violations);
        if (media is not null)
        {
            CheckMedia(media, $"{prefix}.recording_media", violations);
        }

        return violations;
    }

    private static void CheckDevices(IReadOnlyList<PoweredDevice> devices, HashSet<string> batteryIds, string prefix, List<Violation> violations)
    {
        string known = batteryIds.Count == 0 ? "List its battery under batteries first" : $"Use one of: {string.Join(", ", batteryIds)}";
        var ids = new HashSet<string>();
        DeviceKinds.Check($"{prefix}.powered_devices", devices.Count, violations);
        for (int i = 0; i < devices.Count; i++)
        {
            PoweredDevice device = devices[i];
            string at = $"{prefix}.powered_devices[{i}]";
            Distinct(ids, device.Id, "device", at, violations);
            if (device.Id is RunTimeForecast.CardsId or RunTimeForecast.FileId)
            {
                violations.Add(new Violation($"{at}.id", $"\"{device.Id}\" is what the answer calls the {(device.Id == RunTimeForecast.CardsId ? "cards" : "file")}", "Give the device another id"));
            }

            Power.Check($"{at}.power_w", device.PowerW, violations);
            BatteriesHeld.Check($"{at}.battery_count", device.BatteryCount, violations);
            DeviceCount.Check($"{at}.count", device.Count, violations);
            if (!batteryIds.Contains(device.BatteryId))
            {
                violations.Add(new Violation($"{at}.battery_id", device.BatteryId.Length == 0 ? "no battery is named" : $"the kit has no battery \"{device.BatteryId}\"", known));
            }
        }
    }

    private static void CheckMedia(RecordingMedia media, string at, List<Violation> violations)
    {
        TrackCount.Check($"{at}.track_count", media.TrackCount, violations);
        SampleRate.Check($"{at}.sample_rate_hz", media.SampleRateHz, violations);
        CardSize.Check($"{at}.card_size_gb", media.CardSizeGB, violations);
        bool counted = CardCount.Check($"{at}.card_count", media.CardCount, violations);
        counted &= CopyCount.Check($"{at}.copy_count", media.CopyCount, violations);
        if (counted && media.CopyCount > media.CardCount)
        {
            violations.Add(new Violation($"{at}.copy_count", $"{media.CopyCount} cards are to be written at once, but there are {media.CardCount}", "Write fewer copies or bring more cards"));
        }

        if (media.WriteSpeedMBPerS is { } speed)
        {
            WriteSpeed.Check($"{at}.write_speed_mb_per_s", speed, violations);
        }
    }

    private static void Distinct(HashSet<string> ids, string id, string what, string at, List<Violation> violations)
    {
        if (!ids.Add(id))
        {
            violations.Add(new Violation($"{at}.id", $"{what} \"{id}\" is there twice", $"Give each {what} an id of its own"));
        }
    }
}
