using System.Globalization;
using System.Text.RegularExpressions;

namespace Quarterlight.Crew.Wording;

/// <summary>Turns a field path of the contract into words a crew knows, such as "the second talker's head poses".</summary>
public static partial class FieldWords
{
    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];

    private static readonly HashSet<string> Wrappers = ["scene", "bundle", "changes", "source", "position", "measurements", "plan", "setup", "gear", "rules", "link_gear", "analogue_fm", "digital", "header", "thresholds", "sent_plan", "recording_media", "air"];

    private static readonly Dictionary<string, string> Lists = new()
    {
        ["talkers"] = "talker",
        ["head_poses"] = "head pose",
        ["shots"] = "camera",
        ["microphones"] = "microphone",
        ["fixings"] = "fixing",
        ["open_windows"] = "window",
        ["silent_seat_ids"] = "silent seat",
        ["seats"] = "seat",
        ["stations"] = "station",
        ["transmitters"] = "transmitter",
        ["wireless_transmitters"] = "transmitter",
        ["tuning_ranges"] = "tuning range",
        ["excluded_blocks"] = "block to keep out of",
        ["neighbours"] = "neighbouring carrier",
        ["frequencies_mhz"] = "channel",
        ["takes"] = "take",
        ["route"] = "stretch",
        ["stretches"] = "stretch",
        ["batteries"] = "battery",
        ["powered_devices"] = "device",
        ["transmitter_audio"] = "transmitter",
        ["efforts"] = "effort",
        ["table_speeds_km_per_hour"] = "speed of the table",
    };

    private static readonly Dictionary<string, string> Words = new()
    {
        ["talkers"] = "talkers",
        ["head_poses"] = "head poses",
        ["shots"] = "cameras",
        ["microphones"] = "microphones",
        ["share_fraction"] = "share of the talking",
        ["yaw_deg"] = "turn to the side",
        ["pitch_deg"] = "look up or down",
        ["lean_forward_m"] = "lean forward",
        ["lean_left_m"] = "lean to the left",
        ["lean_up_m"] = "height of the head",
        ["seat_id"] = "seat",
        ["silent_seat_ids"] = "silent seats",
        ["vocal_effort"] = "vocal effort",
        ["display_name"] = "name",
        ["focal_length_mm"] = "focal length",
        ["sensor_width_mm"] = "sensor width",
        ["sensor_height_mm"] = "sensor height",
        ["aim_point"] = "aim",
        ["x_m"] = "distance forward",
        ["y_m"] = "distance to the left",
        ["z_m"] = "height",
        ["drive_conditions"] = "driving conditions",
        ["speed_km_per_hour"] = "speed",
        ["open_windows"] = "windows",
        ["pane_id"] = "pane",
        ["open_fraction"] = "opening",
        ["fan_step"] = "fan step",
        ["engine_speed_rpm"] = "engine speed",
        ["engine_state"] = "engine",
        ["road_surface"] = "road surface",
        ["body_style"] = "body style",
        ["drive_side"] = "driver's side",
        ["engine_layout"] = "engine layout",
        ["cylinder_count"] = "number of cylinders",
        ["recorder_input_count"] = "number of recorder inputs",
        ["sensitivity_mv_per_pa"] = "sensitivity",
        ["self_noise_dba"] = "self-noise",
        ["max_level_db"] = "highest level",
        ["site_id"] = "site",
        ["talker_id"] = "talker",
        ["removed_microphone_ids"] = "microphones left out",
        ["removed_shot_ids"] = "cameras left out",
        ["removed_site_ids"] = "sites left out",
        ["follow_car"] = "follow car",
        ["gap_m"] = "gap",
        ["country_code"] = "country",
        ["sight"] = "view between the cars",
        ["stations"] = "stations",
        ["field_dbuv_per_m"] = "field",
        ["availability_fraction"] = "share of the time it is to hold",
        ["transmit_antenna"] = "transmitter's antenna",
        ["receive_antenna"] = "receiver's antenna",
        ["height_m"] = "height",
        ["gain_dbi"] = "gain",
        ["shielding_db"] = "shielding",
        ["feeder_loss_db"] = "cable loss",
        ["noise_figure_db"] = "noise figure",
        ["power"] = "power",
        ["power_mw"] = "power",
        ["power_basis"] = "kind of power",
        ["field_distance_m"] = "distance of the field",
        ["frequency_mhz"] = "frequency",
        ["fixed_mhz"] = "fixed frequency",
        ["low_mhz"] = "lower edge",
        ["high_mhz"] = "upper edge",
        ["step_khz"] = "tuning step",
        ["count"] = "number",
        ["intercept_dbm"] = "intercept",
        ["target_snr_db"] = "signal over noise",
        ["required_cn_db"] = "carrier over noise",
        ["latency_ms"] = "delay",
        ["min_spacing_khz"] = "spacing of channels",
        ["third_order_guard_khz"] = "guard against third-order products",
        ["fifth_order_guard_khz"] = "guard against fifth-order products",
        ["transmitter_distance_m"] = "distance between transmitters",
        ["frequencies_mhz"] = "channels",
        ["tuning_ranges"] = "tuning ranges",
        ["transmitters"] = "transmitters",
        ["wireless_transmitters"] = "transmitters",
        ["excluded_blocks"] = "blocks to keep out of",
        ["channel_count"] = "number of channels",
        ["eirp_dbm"] = "radiated power",
        ["conducted_power_dbm"] = "power",
        ["channel_width_khz"] = "channel width",
        ["emission"] = "kind of signal",
        ["file"] = "file",
        ["file_name"] = "file name",
        ["byte_count"] = "size of the file",
        ["piece"] = "file",
        ["part"] = "file",
        ["picture_channel"] = "channel to draw",
        ["cylinders"] = "number of cylinders",
        ["full_scale_spl_db"] = "level of full scale",
        ["noise_correction"] = "measured noise",
        ["speech_to_noise_use_db"] = "least speech over noise to use a clip",
        ["speech_to_noise_care_db"] = "least speech over noise to use a clip with care",
        ["true_peak_care_dbtp"] = "highest true peak",
        ["clipping_redo_per_minute"] = "number of clipped runs a minute",
        ["speech_low_dbov"] = "lowest speech level",
        ["speech_high_dbov"] = "highest speech level",
        ["dropout_redo_per_minute"] = "number of dropouts a minute",
        ["dc_offset_care_fraction"] = "offset",
        ["hum_care_db"] = "distance of hum below the speech",
        ["least_speech_s"] = "least speech",
        ["shoot_day"] = "shoot day",
        ["day"] = "day",
        ["start_time"] = "start of the day",
        ["utc_offset_min"] = "difference to UTC",
        ["duration_min"] = "length of the day",
        ["start_min"] = "start",
        ["latitude_deg"] = "latitude",
        ["longitude_deg"] = "longitude",
        ["temperature_c"] = "temperature outside",
        ["relative_humidity_percent"] = "humidity",
        ["wind_speed_m_per_s"] = "wind",
        ["cloud_fraction"] = "cloud",
        ["heading_deg"] = "heading",
        ["soak_min"] = "time the car stood shut",
        ["equipment_w"] = "lamps and electronics",
        ["adult_count"] = "number of adults",
        ["child_count"] = "number of children",
        ["animal_count"] = "number of animals",
        ["clothing_clo"] = "clothing",
        ["activity_met"] = "activity",
        ["power_w"] = "power",
        ["set_point_c"] = "temperature to cool to",
        ["airflow_l_per_s"] = "air moved",
        ["roll_min"] = "length of a take",
        ["rhythm_limit"] = "limit of the rhythm",
        ["margin_fraction"] = "share kept back",
        ["battery_c"] = "temperature of the batteries",
        ["energy_wh"] = "energy",
        ["age_years"] = "age",
        ["battery_id"] = "battery",
        ["battery_count"] = "number of batteries it holds",
        ["track_count"] = "number of tracks",
        ["sample_rate_hz"] = "sample rate",
        ["card_size_gb"] = "size of a card",
        ["card_count"] = "number of cards",
        ["copy_count"] = "number of copies",
        ["write_speed_mb_per_s"] = "writing speed",
        ["recorder_gain"] = "recorder's inputs",
        ["headroom_db"] = "headroom",
        ["full_scale_dbu"] = "full scale",
        ["full_modulation_dbu"] = "full modulation",
        ["gain_min_db"] = "least gain",
        ["gain_max_db"] = "most gain",
        ["gain_step_db"] = "step of the gain",
        ["max_input_dbu"] = "highest input level",
        ["input_noise_dbu"] = "input noise",
        ["dynamic_range_db"] = "dynamic range",
        ["pad_db"] = "pad",
        ["receiver_output_dbu"] = "receiver's output",
        ["microphone_transmitter_id"] = "transmitter of the microphones",
        ["loudest"] = "loudest effort",
        ["length_m"] = "length",
        ["speed_limit_km_per_hour"] = "speed limit",
        ["traffic_speed_km_per_hour"] = "speed of traffic",
        ["cabin"] = "car",
        ["kit"] = "kit",
    };

    /// <summary>The path in words; "the request" for an empty path.</summary>
    /// <param name="path">Path such as <c>scene.talkers[1].head_poses</c>.</param>
    public static string Of(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        string[] segments = path.Split('.', StringSplitOptions.RemoveEmptyEntries);
        var parts = new List<string>();
        for (int i = 0; i < segments.Length; i++)
        {
            Match match = Segment().Match(segments[i]);
            string name = match.Groups[1].Value;
            bool last = i == segments.Length - 1;
            if (match.Groups[2].Success)
            {
                int index = int.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture);
                parts.Add($"{Ordinal(index)} {Lists.GetValueOrDefault(name, Plain(name))}");
            }
            else if (last || !Wrappers.Contains(name))
            {
                parts.Add(Words.GetValueOrDefault(name, Plain(name)));
            }
        }

        return parts.Count == 0 ? "the request" : "the " + string.Join("'s ", parts).Replace("s's ", "s' ", StringComparison.Ordinal);
    }

    private static string Ordinal(int index) =>
        index < Ordinals.Length ? Ordinals[index] : string.Create(CultureInfo.InvariantCulture, $"{index + 1}th");

    // Without the unit, which the sentence names.
    private static string Plain(string name) => Unit().Replace(name, "").Replace('_', ' ');

    [GeneratedRegex(@"^([a-z0-9_]*)(?:\[(\d{1,4})\])?", RegexOptions.CultureInvariant)]
    private static partial Regex Segment();

    [GeneratedRegex(@"_(m|mm|cm|deg|db|dba|dbm|dbi|mhz|khz|mw|ms|fraction|ids?|count)$", RegexOptions.CultureInvariant)]
    private static partial Regex Unit();
}
