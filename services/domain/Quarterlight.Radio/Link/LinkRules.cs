using Quarterlight.Quantities;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Link;

/// <summary>What a valid link is.</summary>
public static class LinkRules
{
    /// <summary>Carrier frequency.</summary>
    public static ValidRange FrequencyMHz { get; } = new(76, 2500, "MHz");

    /// <summary>Power.</summary>
    public static ValidRange PowerMw { get; } = new(0.000001, 10_000, "mW");

    /// <summary>Field given instead of a power.</summary>
    public static ValidRange FieldMicrovoltsPerM { get; } = new(1, 1_000_000, "µV/m");

    /// <summary>Distance of that field.</summary>
    public static ValidRange FieldDistanceM { get; } = new(1, 100, "m");

    /// <summary>Antenna height above the road.</summary>
    public static ValidRange AntennaHeightM { get; } = new(0.2, 6, "m");

    /// <summary>Height that an antenna inside a car or on its glass can have.</summary>
    public static ValidRange InsideHeightM { get; } = new(0.2, 2.5, "m");

    /// <summary>Height that an antenna on a roof or a mast can have.</summary>
    public static ValidRange OutsideHeightM { get; } = new(1, 6, "m");

    /// <summary>Gain of an antenna.</summary>
    public static ValidRange GainDbi { get; } = new(-20, 15, "dBi");

    /// <summary>Cable loss.</summary>
    public static ValidRange FeederLossDb { get; } = new(0, 20, "dB");

    /// <summary>Loss through a car and a body.</summary>
    public static ValidRange ShieldingDb { get; } = new(0, 50, "dB");

    /// <summary>Noise figure.</summary>
    public static ValidRange NoiseFigureDb { get; } = new(0, 20, "dB");

    /// <summary>Distance between the antennas.</summary>
    public static ValidRange GapM { get; } = new(1, 3000, "m");

    /// <summary>Road speed.</summary>
    public static ValidRange SpeedKmPerHour { get; } = new(0, 130, "km/h");

    /// <summary>Availability.</summary>
    public static ValidRange AvailabilityFraction { get; } = new(0.5, 0.999, "");

    /// <summary>Stations listed.</summary>
    public static ValidRange StationCount { get; } = new(0, 200, "");

    /// <summary>Field of a station.</summary>
    public static ValidRange StationFieldDbuvPerM { get; } = new(0, 120, "dB over a microvolt per metre");

    /// <summary>Deviation.</summary>
    public static ValidRange DeviationKHz { get; } = new(1, 150, "kHz");

    /// <summary>Highest audio frequency.</summary>
    public static ValidRange AudioBandwidthKHz { get; } = new(2, 20, "kHz");

    /// <summary>De-emphasis.</summary>
    public static ValidRange DeEmphasisMicroseconds { get; } = new(0, 100, "microseconds");

    /// <summary>Filter of an FM receiver.</summary>
    public static ValidRange FilterBandwidthKHz { get; } = new(5, 400, "kHz");

    /// <summary>Audio signal over noise wanted.</summary>
    public static ValidRange TargetSnrDb { get; } = new(20, 60, "dB");

    /// <summary>Carrier over noise a digital link needs.</summary>
    public static ValidRange RequiredCnDb { get; } = new(-5, 40, "dB");

    /// <summary>Bandwidth of a digital link.</summary>
    public static ValidRange DigitalBandwidthKHz { get; } = new(5, 20_000, "kHz");

    /// <summary>Delay of a digital system.</summary>
    public static ValidRange LatencyMs { get; } = new(0, 500, "ms");

    /// <summary>Everything wrong with a link, its path model included; empty when it can be checked.</summary>
    /// <param name="task">The link.</param>
    /// <param name="prefix">Field path of the set-up, such as "setup".</param>
    public static IReadOnlyList<Violation> Validate(LinkTask task, string prefix = "setup") => Validate(task, prefix, out _);

    /// <summary>The same, with the path model that holds; null when something is wrong.</summary>
    internal static List<Violation> Validate(LinkTask task, string prefix, out PathChoice? choice)
    {
        ArgumentNullException.ThrowIfNull(task);
        var violations = new List<Violation>();
        violations.AddRange(ValidateGear(task.Gear, $"{prefix}.gear"));
        violations.AddRange(ValidateFollow(task, $"{prefix}.follow_car"));
        SpeedKmPerHour.Check($"{prefix}.speed_km_per_hour", task.SpeedKmPerHour, violations);
        choice = violations.Count == 0 ? PathModels.Choose(task, prefix, violations) : null;
        return violations;
    }

    /// <summary>Everything wrong with a transmitter and receiver on their own.</summary>
    public static IReadOnlyList<Violation> ValidateGear(LinkGear gear, string at)
    {
        ArgumentNullException.ThrowIfNull(gear);
        var violations = new List<Violation>();
        FrequencyMHz.Check($"{at}.frequency_mhz", gear.FrequencyMHz, violations);
        (gear.PowerBasis == TransmitPowerBasis.Field ? FieldMicrovoltsPerM : PowerMw).Check($"{at}.power", gear.Power, violations);
        if (gear.PowerBasis == TransmitPowerBasis.Field)
        {
            FieldDistanceM.Check($"{at}.field_distance_m", gear.FieldDistanceM ?? double.NaN, violations);
        }
        else if (gear.FieldDistanceM is not null)
        {
            violations.Add(new Violation($"{at}.field_distance_m", "a power has no distance", "Leave it out, or give the strength as a field"));
        }

        NoiseFigureDb.Check($"{at}.noise_figure_db", gear.NoiseFigureDb, violations);
        Check(gear.TransmitAntenna, $"{at}.transmit_antenna", violations);
        Check(gear.ReceiveAntenna, $"{at}.receive_antenna", violations);
        switch (gear.Emission)
        {
            case AnalogueFm fm:
                DeviationKHz.Check($"{at}.analogue_fm.deviation_khz", fm.DeviationKHz, violations);
                AudioBandwidthKHz.Check($"{at}.analogue_fm.audio_bandwidth_khz", fm.AudioBandwidthKHz, violations);
                DeEmphasisMicroseconds.Check($"{at}.analogue_fm.de_emphasis_us", fm.DeEmphasisMicroseconds, violations);
                FilterBandwidthKHz.Check($"{at}.analogue_fm.filter_bandwidth_khz", fm.FilterBandwidthKHz, violations);
                TargetSnrDb.Check($"{at}.analogue_fm.target_snr_db", fm.TargetSnrDb, violations);
                break;
            case DigitalLink digital:
                RequiredCnDb.Check($"{at}.digital.required_cn_db", digital.RequiredCnDb, violations);
                DigitalBandwidthKHz.Check($"{at}.digital.bandwidth_khz", digital.FilterBandwidthKHz, violations);
                if (digital.LatencyMs is { } latency)
                {
                    LatencyMs.Check($"{at}.digital.latency_ms", latency, violations);
                }

                break;
        }

        return violations;
    }

    /// <summary>Everything wrong with the follow car's part on its own, the path model aside.</summary>
    public static IReadOnlyList<Violation> ValidateFollow(LinkTask task, string at)
    {
        ArgumentNullException.ThrowIfNull(task);
        var violations = new List<Violation>();
        GapM.Check($"{at}.gap_m", task.GapM, violations);
        AvailabilityFraction.Check($"{at}.availability_fraction", task.AvailabilityFraction, violations);
        if (task.CountryCode.Length > Law.LawRules.LongestCountryName)
        {
            violations.Add(new Violation($"{at}.country_code", $"the name has {task.CountryCode.Length} characters", $"Use the two letters or a name of at most {Law.LawRules.LongestCountryName} characters"));
        }

        StationCount.Check($"{at}.stations", task.Stations.Count, violations);
        for (int i = 0; i < task.Stations.Count; i++)
        {
            FrequencyMHz.Check($"{at}.stations[{i}].frequency_mhz", task.Stations[i].FrequencyMHz, violations);
            StationFieldDbuvPerM.Check($"{at}.stations[{i}].field_dbuv_per_m", task.Stations[i].FieldDbuvPerM, violations);
        }

        return violations;
    }

    private static void Check(Antenna antenna, string at, List<Violation> violations)
    {
        if (AntennaHeightM.Check($"{at}.height_m", antenna.HeightM, violations))
        {
            (antenna.IsInside ? InsideHeightM : OutsideHeightM).Check($"{at}.height_m", antenna.HeightM, violations);
        }

        FeederLossDb.Check($"{at}.feeder_loss_db", antenna.FeederLossDb, violations);
        if (antenna.StatedShieldingDb is { } shielding && ShieldingDb.Check($"{at}.shielding_db", shielding, violations) && shielding > 0 && !antenna.IsInside)
        {
            violations.Add(new Violation($"{at}.shielding_db", "an antenna outside is not shielded by the car", "Leave it out, or place the antenna in the cabin or on glass"));
        }

        if (antenna.WindscreenDropM is { } drop && WindscreenRule.DropM.Check($"{at}.windscreen_drop_m", drop, violations) && antenna.Place != AntennaPlace.OnGlass)
        {
            violations.Add(new Violation($"{at}.windscreen_drop_m", "only an antenna on glass has a place on the windscreen", "Leave it out, or place the antenna on glass"));
        }

        if (antenna.Kind == AntennaKind.StatedGain)
        {
            GainDbi.Check($"{at}.gain_dbi", antenna.StatedGainDbi ?? double.NaN, violations);
        }
        else if (antenna.StatedGainDbi is not null)
        {
            violations.Add(new Violation($"{at}.gain_dbi", "this kind of antenna brings its own gain", "Leave it out, or choose the kind with a stated gain"));
        }

        if (antenna.Kind is AntennaKind.QuarterWaveWhip or AntennaKind.ShortWhip && antenna.Polarisation == Polarisation.Horizontal)
        {
            violations.Add(new Violation($"{at}.polarisation", "a whip stands upright", "Choose vertical, or another kind of antenna"));
        }

        if (antenna.Kind == AntennaKind.QuarterWaveWhip && antenna.IsInside)
        {
            violations.Add(new Violation($"{at}.place", "a quarter-wave whip needs the metal roof under it", "Place it on the roof, or choose another kind of antenna"));
        }

        if (antenna.Kind == AntennaKind.GlassFilm && antenna.Place != AntennaPlace.OnGlass)
        {
            violations.Add(new Violation($"{at}.place", "a film antenna sits on glass", "Place it on glass, or choose another kind of antenna"));
        }
    }
}
