using Quarterlight.Endurance.RunTime;

namespace Quarterlight.Planner.Mapping;

/// <summary>Batteries, devices and media, and questions about them, from the contract.</summary>
internal static class RunTimeMapper
{
    /// <summary>The question; everything wrong with it is noted.</summary>
    /// <param name="kit">The kit; only what is powered and recorded is looked at.</param>
    /// <param name="kitAt">Its path.</param>
    /// <param name="day">The day; null when it is not known.</param>
    /// <param name="dayAt">Its path.</param>
    /// <param name="request">What else was asked.</param>
    /// <param name="reader">Takes what is wrong.</param>
    public static RunTimeTask ToDomain(V1.Kit kit, string kitAt, V1.ShootDay? day, string dayAt, V1.ForecastRunTimeRequest request, FieldReader reader)
    {
        RunTimeTask task = Parts(kit, kitAt, reader);
        task = task with
        {
            Takes = day is null ? [] : DayMapper.Takes(day),
            MarginFraction = request.HasMarginFraction ? request.MarginFraction : task.MarginFraction,
            BatteryC = request.HasBatteryC ? request.BatteryC : day?.Air?.TemperatureC ?? task.BatteryC,
            TakesOnly = request.TakesOnly,
            DurationMin = request.HasDurationMin ? request.DurationMin : day is { HasDurationMin: true } ? day.DurationMin : task.DurationMin,
        };

        // What the day says wrongly is said of the day, not of what was taken from it.
        reader.AddUnsaid(RunTimeRules.Validate(task, kitAt, dayAt)
            .Where(v => (v.Field != "battery_c" || request.HasBatteryC) && (v.Field != "duration_min" || request.HasDurationMin)));
        return task;
    }

    /// <summary>Checks batteries, devices and media that are kept with a kit.</summary>
    public static void CheckKept(V1.Kit kit, string at, FieldReader reader)
    {
        RunTimeTask task = Parts(kit, at, reader);
        reader.AddUnsaid(RunTimeRules.ValidateGear(task.Batteries, task.Devices, task.Media, at));
    }

    private static RunTimeTask Parts(V1.Kit kit, string at, FieldReader reader) => new()
    {
        Batteries = [.. kit.Batteries.Select((b, i) => ToDomain(b, $"{at}.batteries[{i}]", reader))],
        Devices = [.. kit.PoweredDevices.Select((d, i) => ToDomain(d, $"{at}.powered_devices[{i}]", reader))],
        Media = kit.RecordingMedia is { } media ? ToDomain(media, $"{at}.recording_media", reader) : null,
    };

    private static Battery ToDomain(V1.Battery battery, string at, FieldReader reader)
    {
        reader.Id($"{at}.id", battery.Id);
        reader.DisplayName($"{at}.display_name", battery.DisplayName);
        return new Battery(battery.Id, battery.DisplayName, reader.Enum<BatteryChemistry>($"{at}.chemistry", battery.Chemistry), battery.EnergyWh, battery.AgeYears, battery.Count);
    }

    private static PoweredDevice ToDomain(V1.PoweredDevice device, string at, FieldReader reader)
    {
        reader.Id($"{at}.id", device.Id);
        reader.DisplayName($"{at}.display_name", device.DisplayName);
        return new PoweredDevice(device.Id, device.DisplayName, device.PowerW, device.BatteryId, device.BatteryCount, device.Count);
    }

    private static RecordingMedia ToDomain(V1.RecordingMedia media, string at, FieldReader reader)
    {
        var domain = new RecordingMedia
        {
            TrackCount = media.TrackCount,
            SampleFormat = reader.Enum($"{at}.sample_format", media.SampleFormat, (SampleFormat?)SampleFormat.Integer24),
            CardSizeGB = media.CardSizeGb,
            CardCount = media.CardCount,
            WriteSpeedMBPerS = media.HasWriteSpeedMbPerS ? media.WriteSpeedMbPerS : null,
            LargeFiles = media.LargeFiles,
        };
        return domain with
        {
            SampleRateHz = media.HasSampleRateHz ? media.SampleRateHz : domain.SampleRateHz,
            CopyCount = media.HasCopyCount ? media.CopyCount : domain.CopyCount,
        };
    }
}
