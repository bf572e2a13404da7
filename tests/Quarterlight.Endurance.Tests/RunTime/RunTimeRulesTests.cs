using Quarterlight.Endurance.RunTime;
using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Tests.RunTime;

public class RunTimeRulesTests
{
    private static readonly RunTimeTask s_task = RunTimeSamples.Task with { Takes = [RunTimeSamples.Take("1", 10, 20), RunTimeSamples.Take("2", 40, 20), RunTimeSamples.Take("3", 80, 20)] };

    public static TheoryData<string, double, Func<double, RunTimeTask>> Ends
    {
        get
        {
            var data = new TheoryData<string, double, Func<double, RunTimeTask>>();
            void Range(string path, ValidRange range, Func<double, RunTimeTask> make, double step)
            {
                data.Add(path, range.Min - step, make);
                data.Add(path, range.Max + step, make);
                data.Add("", range.Min, make);
                data.Add("", range.Max, make);
            }

            Range("kit.batteries[0].energy_wh", RunTimeRules.Energy, v => Battery(b => b with { EnergyWh = v }), 0.01);
            Range("kit.batteries[0].age_years", BatteryDerating.Age, v => Battery(b => b with { AgeYears = v }), 0.01);
            Range("kit.batteries[0].count", RunTimeRules.BatteryCount, v => Battery(b => b with { Count = (int)v }), 1);
            Range("kit.powered_devices[0].power_w", RunTimeRules.Power, v => Device(d => d with { PowerW = v }), 0.001);
            Range("kit.powered_devices[0].battery_count", RunTimeRules.BatteriesHeld, v => Device(d => d with { BatteryCount = (int)v }), 1);
            Range("kit.powered_devices[0].count", RunTimeRules.DeviceCount, v => Device(d => d with { Count = (int)v }), 1);
            Range("kit.recording_media.track_count", RunTimeRules.TrackCount, v => Media(m => m with { TrackCount = (int)v }), 1);
            Range("kit.recording_media.sample_rate_hz", RunTimeRules.SampleRate, v => Media(m => m with { SampleRateHz = (int)v }), 1);
            Range("kit.recording_media.card_size_gb", RunTimeRules.CardSize, v => Media(m => m with { CardSizeGB = v }), 0.01);
            Range("kit.recording_media.card_count", RunTimeRules.CardCount, v => Media(m => m with { CardCount = (int)v, CopyCount = 1 }), 1);
            Range("kit.recording_media.copy_count", RunTimeRules.CopyCount, v => Media(m => m with { CopyCount = (int)v, CardCount = 10 }), 1);
            Range("kit.recording_media.write_speed_mb_per_s", RunTimeRules.WriteSpeed, v => Media(m => m with { WriteSpeedMBPerS = v }), 0.01);
            Range("margin_fraction", RunTimeRules.Margin, v => s_task with { MarginFraction = v }, 0.01);
            Range("battery_c", BatteryDerating.Temperature, v => s_task with { BatteryC = v }, 0.01);
            Range("duration_min", RunTimeRules.Duration, v => s_task with { DurationMin = v, Takes = [] }, 0.01);
            data.Add("day.takes[0].start_min", -0.01, v => Take(t => t with { StartMin = v }));
            data.Add("day.takes[0].start_min", 1440.01, v => Take(t => t with { StartMin = v }));
            data.Add("day.takes[0].duration_min", 0.09, v => Take(t => t with { DurationMin = v }));
            data.Add("day.takes[0].duration_min", 240.01, v => Take(t => t with { DurationMin = v }));
            data.Add("", 0, v => Take(t => t with { StartMin = v }));
            data.Add("", 0.1, v => Take(t => t with { DurationMin = v }));
            data.Add("", 240, v => s_task with { Takes = [new("1", 0, v)] });
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public void Validate_AtAndBeyondEachEnd_RefusesOnlyBeyond(string path, double value, Func<double, RunTimeTask> make)
    {
        IReadOnlyList<Violation> violations = RunTimeRules.Validate(make(value));
        Assert.Equal(path.Length == 0 ? [] : [path], violations.Select(v => v.Field));
    }

    [Fact]
    public void Validate_NothingToForecast_IsRefused()
    {
        Violation only = Assert.Single(RunTimeRules.Validate(new RunTimeTask { Batteries = [RunTimeSamples.Brick] }, "setup.kit", "setup.day"));
        Assert.Equal("setup.kit.powered_devices", only.Field);
        Assert.Empty(RunTimeRules.Validate(new RunTimeTask { Media = RunTimeSamples.Media }));
        Assert.Empty(RunTimeRules.Validate(new RunTimeTask { Batteries = [RunTimeSamples.Brick], Devices = [RunTimeSamples.Recorder] }));
    }

    [Fact]
    public void Validate_ManyThingsWrong_NamesAllWithTheirPaths()
    {
        RunTimeTask task = s_task with
        {
            Batteries = [RunTimeSamples.Brick, RunTimeSamples.Brick],
            Devices = [RunTimeSamples.Recorder, RunTimeSamples.Recorder with { BatteryId = "other" }, RunTimeSamples.Recorder with { Id = "cards" }],
            Media = RunTimeSamples.Media with { CopyCount = 3 },
            Takes = [RunTimeSamples.Take("1", 10, 20), RunTimeSamples.Take(" ", 25, 20), RunTimeSamples.Take("3", 590, 20), RunTimeSamples.Take(new string('x', 41), 0, double.NaN)],
            MarginFraction = double.NaN,
        };
        Assert.Equal(
            [
                "day.takes[1].label", "day.takes[1].start_min", "day.takes[2].start_min", "day.takes[3].duration_min", "day.takes[3].label", "kit.batteries[1].id", "kit.powered_devices[1].battery_id",
                "kit.powered_devices[1].id", "kit.powered_devices[2].id", "kit.recording_media.copy_count", "margin_fraction",
            ],
            RunTimeRules.Validate(task).Select(v => v.Field).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Validate_TooManyOfAKind_IsRefused()
    {
        Battery[] batteries = [.. Enumerable.Range(0, 21).Select(i => RunTimeSamples.Brick with { Id = $"b{i}" })];
        PoweredDevice[] devices = [.. Enumerable.Range(0, 21).Select(i => RunTimeSamples.Recorder with { Id = $"d{i}", BatteryId = "b0" })];
        PlannedTake[] takes = [.. Enumerable.Range(0, 201).Select(i => RunTimeSamples.Take($"{i}", i, 1))];
        Assert.Equal(["kit.batteries", "kit.powered_devices", "day.takes"], RunTimeRules.Validate(s_task with { Batteries = batteries, Devices = devices, Takes = takes }).Select(v => v.Field));
        Assert.Empty(RunTimeRules.Validate(s_task with { Batteries = [.. batteries.Take(20)], Devices = [.. devices.Take(20)], Takes = [.. takes.Take(200)] }));
    }

    [Fact]
    public void Check_TakesThatTouch_AreFine()
    {
        var violations = new List<Violation>();
        CallSheetRules.Check([RunTimeSamples.Take("1", 0, 0.1), RunTimeSamples.Take("2", 0.1, 0.2), RunTimeSamples.Take("3", 0.1 + 0.2, 10)], 10.3, "day", violations);
        Assert.Empty(violations);
    }

    private static RunTimeTask Battery(Func<Battery, Battery> change) => s_task with { Batteries = [change(RunTimeSamples.Brick)] };

    private static RunTimeTask Device(Func<PoweredDevice, PoweredDevice> change) => s_task with { Devices = [change(RunTimeSamples.Recorder)] };

    private static RunTimeTask Media(Func<RecordingMedia, RecordingMedia> change) => s_task with { Media = change(RunTimeSamples.Media) };

    private static RunTimeTask Take(Func<PlannedTake, PlannedTake> change) => s_task with { Takes = [change(RunTimeSamples.Take("1", 10, 20))] };
}
