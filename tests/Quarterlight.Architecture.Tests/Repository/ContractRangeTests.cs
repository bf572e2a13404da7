using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Planner.Conversations;
using Quarterlight.Quantities;
using Quarterlight.Radio.Channels;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Link;

namespace Quarterlight.Architecture.Tests.Repository;

/// <summary>A range is stated once in the code; the contract's comment must say the same.</summary>
public partial class ContractRangeTests
{
    public static TheoryData<string, string, double, double> Ranges
    {
        get
        {
            var data = new TheoryData<string, string, double, double>();
            foreach ((string name, ValidRange range) in CabinRules.Ranges)
            {
                data.Add("cabin.proto", name, range.Min, range.Max);
            }

            Add(data, "cabin.proto", "cylinder_count", DriveConditionsRules.Cylinders);
            Add(data, "kit.proto", "body_length_m", KitRules.BodyLength);
            Add(data, "kit.proto", "body_diameter_m", KitRules.BodyDiameter);
            Add(data, "kit.proto", "sensitivity_mv_per_pa", KitRules.Sensitivity);
            Add(data, "kit.proto", "self_noise_dba", KitRules.SelfNoiseLevel);
            Add(data, "kit.proto", "max_level_db", KitRules.MaxLevel);
            Add(data, "kit.proto", "recorder_input_count", KitRules.RecorderInputs);
            Add(data, "scene.proto", "speed_km_per_hour", DriveConditionsRules.Speed);
            Add(data, "scene.proto", "engine_speed_rpm", DriveConditionsRules.EngineSpeed);
            Add(data, "scene.proto", "focal_length_mm", ShotRules.FocalLengthRange);
            Add(data, "scene.proto", "sensor_width_mm", ShotRules.SensorWidthRange);
            Add(data, "scene.proto", "sensor_height_mm", ShotRules.SensorHeightRange);
            Add(data, "radio.proto", "height_m", LinkRules.AntennaHeightM);
            Add(data, "radio.proto", "gain_dbi", LinkRules.GainDbi);
            Add(data, "radio.proto", "feeder_loss_db", LinkRules.FeederLossDb);
            Add(data, "radio.proto", "shielding_db", LinkRules.ShieldingDb);
            Add(data, "radio.proto", "windscreen_drop_m", WindscreenRule.DropM);
            Add(data, "radio.proto", "deviation_khz", LinkRules.DeviationKHz);
            Add(data, "radio.proto", "audio_bandwidth_khz", LinkRules.AudioBandwidthKHz);
            Add(data, "radio.proto", "de_emphasis_us", LinkRules.DeEmphasisMicroseconds);
            Add(data, "radio.proto", "filter_bandwidth_khz", LinkRules.FilterBandwidthKHz);
            Add(data, "radio.proto", "target_snr_db", LinkRules.TargetSnrDb);
            Add(data, "radio.proto", "required_cn_db", LinkRules.RequiredCnDb);
            Add(data, "radio.proto", "bandwidth_khz", LinkRules.DigitalBandwidthKHz);
            Add(data, "radio.proto", "latency_ms", LinkRules.LatencyMs);
            Add(data, "radio.proto", "frequency_mhz", LinkRules.FrequencyMHz);
            Add(data, "radio.proto", "power", LinkRules.PowerMw);
            Add(data, "radio.proto", "field_distance_m", LinkRules.FieldDistanceM);
            Add(data, "radio.proto", "noise_figure_db", LinkRules.NoiseFigureDb);
            Add(data, "radio.proto", "field_dbuv_per_m", LinkRules.StationFieldDbuvPerM);
            Add(data, "radio.proto", "gap_m", LinkRules.GapM);
            Add(data, "radio.proto", "step_khz", CoordinationRules.StepKHz);
            Add(data, "radio.proto", "intercept_dbm", OutputStage.Oip3);
            Add(data, "radio.proto", "min_spacing_khz", CoordinationRules.SpacingKHz);
            Add(data, "radio.proto", "third_order_guard_khz", CoordinationRules.GuardKHz);
            Add(data, "radio.proto", "fifth_order_guard_khz", CoordinationRules.GuardKHz);
            Add(data, "radio.proto", "transmitter_distance_m", IntermodLevels.DistanceM);
            Add(data, "radio_service.proto", "frequency_mhz", LawRules.Frequency);
            Add(data, "radio_service.proto", "eirp_dbm", LawRules.Power);
            Add(data, "radio_service.proto", "conducted_power_dbm", LawRules.Power);
            Add(data, "radio_service.proto", "channel_width_khz", LawRules.ChannelWidth);
            Add(data, "radio_service.proto", "channel_count", QuietChannels.ChannelCount);
            Add(data, "team_service.proto", "conversation_id", ConversationRules.IdLength);
            Add(data, "team_service.proto", "state", ConversationRules.StateSize);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Ranges))]
    public void Comment_OfARangedField_StatesTheRangeInForce(string file, string field, double min, double max)
    {
        string[] lines = File.ReadAllLines(Path.Combine(House.Root, "protos", "quarterlight", "v1", file));
        int at = Array.FindIndex(lines, l => l.Contains($" {field} = ", StringComparison.Ordinal));
        Assert.True(at > 0, $"{file} has no field {field}");
        Match stated = RangePattern().Match(lines[at - 1]);
        Assert.True(stated.Success, $"the comment of {field} states no range: {lines[at - 1]}");
        Assert.Equal((min, max), (Number(stated.Groups[1].Value), Number(stated.Groups[2].Value)));
    }

    [Fact]
    public void Comment_OfSaveConversation_StatesHowLongAndHowManyAreKept()
    {
        string contract = File.ReadAllText(Path.Combine(House.Root, "protos", "quarterlight", "v1", "team_service.proto"));
        Assert.Contains($"not saved for {ConversationRules.DaysKept} days", contract, StringComparison.Ordinal);
        Assert.Contains($"more than {ConversationRules.MostKept}.", contract, StringComparison.Ordinal);
        Assert.Equal(ConversationRules.IdLength.Max, Number(Regex.Match(contract, @"Id of the conversation: 1 to (\d+) of").Groups[1].Value));
        Assert.Equal(ConversationRules.StateSize.Max, Number(Regex.Match(contract, @"handed back as it is, 1 to (\d+) bytes").Groups[1].Value));
    }

    private static void Add(TheoryData<string, string, double, double> data, string file, string field, ValidRange range) => data.Add(file, field, range.Min, range.Max);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(-?\d+(?:\.\d+)?)(?: \([^)]*\))? to (\d+(?:\.\d+)?)")]
    private static partial Regex RangePattern();
}
