using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>What can be wrong with batteries, devices, media, inputs and transmitters of a kit made by <see cref="DaySamples"/>.</summary>
public static class PowerTable
{
    public static IReadOnlyList<Ranged<Kit>> Ranged { get; } =
    [
        new("kit.batteries[0].energy_wh", 0.5, 5000, (k, v) => k.Batteries[0].EnergyWh = v),
        new("kit.batteries[0].age_years", 0, 15, (k, v) => k.Batteries[0].AgeYears = v),
        new("kit.batteries[0].count", 1, 200, (k, v) => k.Batteries[0].Count = (int)v, Whole: true),
        new("kit.powered_devices[0].power_w", 0.01, 500, (k, v) => k.PoweredDevices[0].PowerW = v),
        new("kit.powered_devices[0].battery_count", 1, 24, (k, v) => k.PoweredDevices[0].BatteryCount = (int)v, Whole: true),
        new("kit.powered_devices[1].count", 1, 40, (k, v) => k.PoweredDevices[1].Count = (int)v, Whole: true),
        new("kit.recording_media.track_count", 1, 64, (k, v) => k.RecordingMedia.TrackCount = (int)v, Whole: true),
        new("kit.recording_media.sample_rate_hz", 8000, 384000, (k, v) => k.RecordingMedia.SampleRateHz = (int)v, Whole: true),
        new("kit.recording_media.card_size_gb", 0.5, 16000, (k, v) => k.RecordingMedia.CardSizeGb = v),
        new("kit.recording_media.card_count", 1, 100, (k, v) => k.RecordingMedia.CardCount = (int)v, Whole: true),
        new("kit.recording_media.copy_count", 1, 4, (k, v) => (k.RecordingMedia.CardCount, k.RecordingMedia.CopyCount) = (4, (int)v), Whole: true),
        new("kit.recording_media.write_speed_mb_per_s", 0.1, 10000, (k, v) => k.RecordingMedia.WriteSpeedMbPerS = v),
    ];

    public static IReadOnlyDictionary<string, (Action<Kit> Spoil, string Field)> Wrong { get; } = new Dictionary<string, (Action<Kit>, string)>
    {
        ["battery without an id"] = (k => k.Batteries[1].Id = k.PoweredDevices[1].BatteryId = "", "kit.batteries[1].id"),
        ["battery twice"] = (k => k.Batteries.Add(k.Batteries[0].Clone()), "kit.batteries[2].id"),
        ["battery without a name"] = (k => k.Batteries[0].DisplayName = "", "kit.batteries[0].display_name"),
        ["battery of nothing"] = (k => k.Batteries[0].Chemistry = BatteryChemistry.Unspecified, "kit.batteries[0].chemistry"),
        ["battery of the unknown"] = (k => k.Batteries[0].Chemistry = (BatteryChemistry)99, "kit.batteries[0].chemistry"),
        ["too many kinds of battery"] = (k => k.Batteries.Add(Enumerable.Range(0, 19).Select(i => Renamed(k.Batteries[0], $"b{i}"))), "kit.batteries"),
        ["device without an id"] = (k => k.PoweredDevices[0].Id = "A b", "kit.powered_devices[0].id"),
        ["device twice"] = (k => k.PoweredDevices[1].Id = "recorder", "kit.powered_devices[1].id"),
        ["device without a name"] = (k => k.PoweredDevices[1].DisplayName = "", "kit.powered_devices[1].display_name"),
        ["device without a battery"] = (k => k.PoweredDevices[0].BatteryId = "", "kit.powered_devices[0].battery_id"),
        ["device on an unknown battery"] = (k => k.PoweredDevices[0].BatteryId = "mains", "kit.powered_devices[0].battery_id"),
        ["too many kinds of device"] = (k => k.PoweredDevices.Add(Enumerable.Range(0, 19).Select(i => Renamed(k.PoweredDevices[1], $"d{i}"))), "kit.powered_devices"),
        ["device called as the cards"] = (k => k.PoweredDevices[0].Id = "cards", "kit.powered_devices[0].id"),
        ["samples kept in an unknown way"] = (k => k.RecordingMedia.SampleFormat = (SampleFormat)8, "kit.recording_media.sample_format"),
    };

    private static Battery Renamed(Battery battery, string id)
    {
        Battery copy = battery.Clone();
        copy.Id = id;
        return copy;
    }

    private static PoweredDevice Renamed(PoweredDevice device, string id)
    {
        PoweredDevice copy = device.Clone();
        copy.Id = id;
        return copy;
    }
}

/// <summary>The same for inputs of the recorder and transmitters.</summary>
public static class LevelTable
{
    public static IReadOnlyList<Ranged<Kit>> Ranged { get; } =
    [
        new("kit.recorder_gain.full_scale_dbu", -20, 40, (k, v) => k.RecorderGain.FullScaleDbu = v),
        new("kit.recorder_gain.gain_min_db", -30, 60, (k, v) => k.RecorderGain.GainMinDb = v),
        new("kit.recorder_gain.gain_max_db", 0, 100, (k, v) => (k.RecorderGain.GainMinDb, k.RecorderGain.GainMaxDb) = (-1, v)),
        new("kit.recorder_gain.gain_step_db", 0.1, 12, (k, v) => k.RecorderGain.GainStepDb = v),
        new("kit.recorder_gain.max_input_dbu", -20, 40, (k, v) => k.RecorderGain.MaxInputDbu = v),
        new("kit.recorder_gain.input_noise_dbu", -140, -80, (k, v) => k.RecorderGain.InputNoiseDbu = v),
        new("kit.recorder_gain.dynamic_range_db", 80, 160, (k, v) => k.RecorderGain.DynamicRangeDb = v),
        new("kit.recorder_gain.pad_db", 0, 40, (k, v) => k.RecorderGain.PadDb = v),
        new("kit.transmitter_audio[0].full_modulation_dbu", -60, 30, (k, v) => k.TransmitterAudio[0].FullModulationDbu = v),
        new("kit.transmitter_audio[0].gain_min_db", -60, 60, (k, v) => (k.TransmitterAudio[0].GainMinDb, k.TransmitterAudio[0].GainMaxDb) = (v, 80)),
        new("kit.transmitter_audio[0].gain_max_db", -40, 80, (k, v) => (k.TransmitterAudio[0].GainMinDb, k.TransmitterAudio[0].GainMaxDb) = (-60, v)),
        new("kit.transmitter_audio[0].gain_step_db", 0.1, 12, (k, v) => k.TransmitterAudio[0].GainStepDb = v),
        new("kit.transmitter_audio[0].dynamic_range_db", 30, 140, (k, v) => k.TransmitterAudio[0].DynamicRangeDb = v),
        new("kit.transmitter_audio[0].receiver_output_dbu", -60, 30, (k, v) => k.TransmitterAudio[0].ReceiverOutputDbu = v),
    ];

    public static IReadOnlyDictionary<string, (Action<Kit> Spoil, string Field)> Wrong { get; } = new Dictionary<string, (Action<Kit>, string)>
    {
        ["most gain not above the least"] = (k => k.RecorderGain.GainMinDb = k.RecorderGain.GainMaxDb = 10, "kit.recorder_gain.gain_max_db"),
        ["unknown limiter"] = (k => k.RecorderGain.Limiter = (LimiterKind)9, "kit.recorder_gain.limiter"),
        ["nothing known of the inputs"] = (k => k.RecorderGain = new RecorderGain { FullScaleDbu = 20, GainMaxDb = 60, DynamicRangeDb = 120 }, "kit.recorder_gain.input_noise_dbu"),
        ["transmitter without an id"] = (k => k.TransmitterAudio[0].Id = "", "kit.transmitter_audio[0].id"),
        ["transmitter twice"] = (k => k.TransmitterAudio[1].Id = "pack", "kit.transmitter_audio[1].id"),
        ["transmitter without a name"] = (k => k.TransmitterAudio[0].DisplayName = "", "kit.transmitter_audio[0].display_name"),
        ["transmitter fed by nothing"] = (k => k.TransmitterAudio[0].Feed = TransmitterFeed.Unspecified, "kit.transmitter_audio[0].feed"),
        ["unknown feed"] = (k => k.TransmitterAudio[0].Feed = (TransmitterFeed)9, "kit.transmitter_audio[0].feed"),
        ["transmitter without modulation"] = (k => k.TransmitterAudio[1].Modulation = TransmitterModulation.Unspecified, "kit.transmitter_audio[1].modulation"),
        ["unknown modulation"] = (k => k.TransmitterAudio[1].Modulation = (TransmitterModulation)9, "kit.transmitter_audio[1].modulation"),
        ["most gain below the least of a transmitter"] = (k => (k.TransmitterAudio[0].GainMinDb, k.TransmitterAudio[0].GainMaxDb) = (10, 5), "kit.transmitter_audio[0].gain_max_db"),
        ["too many kinds of transmitter"] = (k => k.TransmitterAudio.Add(Enumerable.Range(0, 19).Select(i => Renamed(k.TransmitterAudio[0], $"t{i}"))), "kit.transmitter_audio"),
    };

    private static TransmitterAudio Renamed(TransmitterAudio transmitter, string id)
    {
        TransmitterAudio copy = transmitter.Clone();
        copy.Id = id;
        return copy;
    }
}
