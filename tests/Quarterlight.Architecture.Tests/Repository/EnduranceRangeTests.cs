using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Acoustics;
using Quarterlight.Endurance;
using Quarterlight.Endurance.Heat;
using Quarterlight.Endurance.RunTime;
using Quarterlight.Placement.Levels;
using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

namespace Quarterlight.Architecture.Tests.Repository;

/// <summary>
/// The same of heat, run time, levels, noise and routes, by message and field; and none left out: a comment that states a range has a row here.
/// </summary>
public partial class EnduranceRangeTests
{
    private static readonly string[] s_files = ["heat", "run_time", "gear", "levels", "noise", "endurance_service", "noise_service"];

    // Figures of answers, and words whose length the wire itself looks at.
    private static readonly string[] s_notAsked = ["ShootingRhythm.rolling_fraction", "HeatOption.rolling_fraction", "RunTimeItem.derating_fraction", "NoiseShare.share_fraction"];

    private static readonly Dictionary<string, ValidRange> s_ranges = new()
    {
        ["OutsideAir.temperature_c"] = HeatRules.OutsideC,
        ["OutsideAir.relative_humidity_percent"] = HeatRules.HumidityPercent,
        ["OutsideAir.wind_speed_m_per_s"] = HeatRules.WindMPerS,
        ["OutsideAir.cloud_fraction"] = HeatRules.CloudFraction,
        ["Occupants.adult_count"] = HeatRules.Head,
        ["Occupants.child_count"] = HeatRules.Head,
        ["Occupants.animal_count"] = HeatRules.Head,
        ["Occupants.clothing_clo"] = HeatRules.ClothingClo,
        ["Occupants.activity_met"] = HeatRules.ActivityMet,
        ["CoolingSystem.power_w"] = HeatRules.CoolingW,
        ["CoolingSystem.set_point_c"] = HeatRules.SetPointC,
        ["CoolingSystem.airflow_l_per_s"] = HeatRules.AirflowLPerS,
        ["PlannedTake.label"] = CallSheetRules.LabelLength,
        ["PlannedTake.start_min"] = CallSheetRules.Start,
        ["PlannedTake.duration_min"] = CallSheetRules.Duration,
        ["ShootDay.utc_offset_min"] = HeatRules.UtcOffsetMin,
        ["ShootDay.duration_min"] = HeatRules.DurationMin,
        ["ShootDay.latitude_deg"] = HeatRules.LatitudeDeg,
        ["ShootDay.longitude_deg"] = HeatRules.LongitudeDeg,
        ["ShootDay.heading_deg"] = HeatRules.HeadingDeg,
        ["ShootDay.soak_min"] = HeatRules.SoakMin,
        ["ShootDay.equipment_w"] = HeatRules.EquipmentW,
        ["HeatSetup.speed_km_per_hour"] = HeatRules.SpeedKmPerHour,
        ["HeatSetup.open_windows"] = HeatRules.OpenWindows,
        ["ForecastHeatRequest.roll_min"] = HeatRules.RollMin,
        ["Battery.energy_wh"] = RunTimeRules.Energy,
        ["Battery.age_years"] = BatteryDerating.Age,
        ["Battery.count"] = RunTimeRules.BatteryCount,
        ["PoweredDevice.power_w"] = RunTimeRules.Power,
        ["PoweredDevice.battery_count"] = RunTimeRules.BatteriesHeld,
        ["PoweredDevice.count"] = RunTimeRules.DeviceCount,
        ["RecordingMedia.track_count"] = RunTimeRules.TrackCount,
        ["RecordingMedia.sample_rate_hz"] = RunTimeRules.SampleRate,
        ["RecordingMedia.card_size_gb"] = RunTimeRules.CardSize,
        ["RecordingMedia.card_count"] = RunTimeRules.CardCount,
        ["RecordingMedia.copy_count"] = RunTimeRules.CopyCount,
        ["RecordingMedia.write_speed_mb_per_s"] = RunTimeRules.WriteSpeed,
        ["ForecastRunTimeRequest.margin_fraction"] = RunTimeRules.Margin,
        ["ForecastRunTimeRequest.battery_c"] = BatteryDerating.Temperature,
        ["ForecastRunTimeRequest.duration_min"] = RunTimeRules.Duration,
        ["RecorderGain.full_scale_dbu"] = LevelRules.FullScale,
        ["RecorderGain.gain_min_db"] = LevelRules.GainMin,
        ["RecorderGain.gain_max_db"] = LevelRules.GainMax,
        ["RecorderGain.gain_step_db"] = LevelRules.GainStep,
        ["RecorderGain.max_input_dbu"] = LevelRules.MaxInput,
        ["RecorderGain.input_noise_dbu"] = LevelRules.InputNoise,
        ["RecorderGain.dynamic_range_db"] = LevelRules.DynamicRange,
        ["RecorderGain.pad_db"] = LevelRules.Pad,
        ["TransmitterAudio.full_modulation_dbu"] = LevelRules.FullModulation,
        ["TransmitterAudio.gain_min_db"] = LevelRules.TransmitterGainMin,
        ["TransmitterAudio.gain_max_db"] = LevelRules.TransmitterGainMax,
        ["TransmitterAudio.gain_step_db"] = LevelRules.GainStep,
        ["TransmitterAudio.dynamic_range_db"] = LevelRules.TransmitterDynamicRange,
        ["TransmitterAudio.receiver_output_dbu"] = LevelRules.ReceiverOutput,
        ["ForecastNoiseRequest.table_speeds_km_per_hour"] = NoiseRules.TableSpeedCount,
    };

    // Beside other messages' fields in files that have rows elsewhere.
    private static readonly Dictionary<string, (string File, ValidRange Range)> s_elsewhere = new()
    {
        ["RouteStretch.label"] = ("scene", NoiseRules.LabelLength),
        ["RouteStretch.length_m"] = ("scene", NoiseRules.StretchLength),
        ["RouteStretch.speed_limit_km_per_hour"] = ("scene", NoiseRules.RoadSpeed),
        ["RouteStretch.traffic_speed_km_per_hour"] = ("scene", NoiseRules.RoadSpeed),
        ["PlanLevelsRequest.headroom_db"] = ("placement_service", LevelRules.Headroom),
    };

    // "at most N" of lists, the same way.
    private static readonly Dictionary<string, (string File, ValidRange Range)> s_counts = new()
    {
        ["ShootDay.takes"] = ("heat", CallSheetRules.TakeCount),
        ["Scene.route"] = ("scene", NoiseRules.StretchCount),
        ["FindQuietStretchesRequest.stretches"] = ("noise_service", NoiseRules.StretchCount),
        ["Kit.transmitter_audio"] = ("kit", LevelRules.TransmitterKinds),
        ["Kit.batteries"] = ("kit", RunTimeRules.BatteryKinds),
        ["Kit.powered_devices"] = ("kit", RunTimeRules.DeviceKinds),
    };

    public static TheoryData<string> Ranges => [.. s_ranges.Keys, .. s_elsewhere.Keys];

    public static TheoryData<string> Counts => [.. s_counts.Keys];

    [Theory]
    [MemberData(nameof(Ranges))]
    public void Comment_OfARangedField_StatesTheRangeInForce(string field)
    {
        (string[] files, ValidRange range) = s_ranges.TryGetValue(field, out ValidRange? own) ? (s_files, own) : ([s_elsewhere[field].File], s_elsewhere[field].Range);
        string comment = Assert.Single(files.SelectMany(Comments), c => c.Field == field).Comment;
        Match stated = RangePattern().Match(comment);
        Assert.True(stated.Success, $"the comment of {field} states no range: {comment}");
        Assert.Equal((range.Min, range.Max), (Number(stated.Groups[1].Value), Number(stated.Groups[2].Value)));
    }

    [Theory]
    [MemberData(nameof(Counts))]
    public void Comment_OfAList_StatesTheMostInForce(string field)
    {
        (string file, ValidRange range) = s_counts[field];
        string comment = Assert.Single(Comments(file), c => c.Field == field).Comment;
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"at most {range.Max}"), comment, StringComparison.Ordinal);
    }

    [Fact]
    public void Comments_OfTheNewFiles_EveryRangeHasItsRow()
    {
        string[] stated = [.. s_files.SelectMany(Comments).Where(c => RangePattern().IsMatch(c.Comment) && !c.Comment.Contains("a-z", StringComparison.Ordinal) && !c.Comment.Contains("80 characters", StringComparison.Ordinal)).Select(c => c.Field)];
        Assert.Equal(s_ranges.Keys.Concat(s_notAsked).Order(StringComparer.Ordinal), stated.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Comment_OfTheTableOfSpeeds_StatesTheSpeedsToo()
    {
        string comment = Comments("noise_service").Single(c => c.Field == "ForecastNoiseRequest.table_speeds_km_per_hour").Comment;
        Assert.Contains($"of {DriveConditionsRules.Speed.Min} to {DriveConditionsRules.Speed.Max},", comment, StringComparison.Ordinal);
    }

    private static IEnumerable<(string Field, string Comment)> Comments(string file)
    {
        string message = "", comment = "";
        foreach (string line in File.ReadLines(Path.Combine(House.Root, "protos", "quarterlight", "v1", $"{file}.proto")))
        {
            if (MessagePattern().Match(line) is { Success: true } opened)
            {
                message = opened.Groups[1].Value;
            }
            else if (line.TrimStart().StartsWith("//", StringComparison.Ordinal))
            {
                comment = line.Trim();
            }
            else if (FieldPattern().Match(line) is { Success: true } field)
            {
                yield return ($"{message}.{field.Groups[1].Value}", comment);
            }
        }
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(-?\d+(?:\.\d+)?)(?: \([^)]*\))? to (-?\d+(?:\.\d+)?)")]
    private static partial Regex RangePattern();

    [GeneratedRegex(@"^message (\w+)")]
    private static partial Regex MessagePattern();

    [GeneratedRegex(@" (\w+) = \d+;")]
    private static partial Regex FieldPattern();
}
