using Quarterlight.Quantities;

namespace Quarterlight.Clips.Judgement;

/// <summary>
/// From where a clip is used with care or redone. The defaults are common practice of the trade or our own judgement, as docs/models/clip-verdict.md
/// says of each; a team may set its own.
/// </summary>
public sealed record ClipThresholds
{
    /// <summary>Range of <see cref="SpeechToNoiseUseDb"/> and <see cref="SpeechToNoiseCareDb"/>.</summary>
    public static ValidRange SpeechToNoiseDb { get; } = new(0, 60, "dB");

    /// <summary>Range of <see cref="TruePeakCareDbtp"/>.</summary>
    public static ValidRange TruePeakDbtp { get; } = new(-20, 0, "dBTP");

    /// <summary>Range of <see cref="ClippingRedoPerMinute"/>.</summary>
    public static ValidRange ClippingPerMinute { get; } = new(0, 1000, "runs a minute");

    /// <summary>Range of <see cref="SpeechLowDbov"/>.</summary>
    public static ValidRange LowSpeechDbov { get; } = new(-70, -20, "dBov");

    /// <summary>Range of <see cref="SpeechHighDbov"/>.</summary>
    public static ValidRange HighSpeechDbov { get; } = new(-30, 0, "dBov");

    /// <summary>Range of <see cref="DropoutRedoPerMinute"/>.</summary>
    public static ValidRange DropoutsPerMinute { get; } = new(0, 100, "a minute");

    /// <summary>Range of <see cref="DcOffsetCareFraction"/>.</summary>
    public static ValidRange DcOffsetFraction { get; } = new(0.001, 0.5, "of full scale");

    /// <summary>Range of <see cref="HumCareDb"/>.</summary>
    public static ValidRange HumDb { get; } = new(0, 80, "dB");

    /// <summary>Range of <see cref="LeastSpeechSeconds"/>.</summary>
    public static ValidRange SpeechSeconds { get; } = new(0.3, 30, "s");

    /// <summary>The defaults.</summary>
    public static ClipThresholds Default { get; } = new();

    /// <summary>Least speech over noise in dB, A-weighted, to use a clip.</summary>
    public double SpeechToNoiseUseDb { get; init; } = 20;

    /// <summary>Least speech over noise in dB, A-weighted, to use it with care.</summary>
    public double SpeechToNoiseCareDb { get; init; } = 12;

    /// <summary>Highest true peak in dBTP without care.</summary>
    public double TruePeakCareDbtp { get; init; } = -1;

    /// <summary>Clipping runs a minute from which a clip is redone; fewer need care.</summary>
    public double ClippingRedoPerMinute { get; init; } = 6;

    /// <summary>Lowest active speech level in dBov without care.</summary>
    public double SpeechLowDbov { get; init; } = -45;

    /// <summary>Highest active speech level in dBov without care.</summary>
    public double SpeechHighDbov { get; init; } = -12;

    /// <summary>Dropouts a minute from which a clip is redone; fewer need care.</summary>
    public double DropoutRedoPerMinute { get; init; } = 2;

    /// <summary>Mean of the samples from which care is needed, as a share of full scale.</summary>
    public double DcOffsetCareFraction { get; init; } = 0.01;

    /// <summary>Hum less far below the speech than this in dB needs care.</summary>
    public double HumCareDb { get; init; } = 40;

    /// <summary>Least seconds of speech to judge speech by.</summary>
    public double LeastSpeechSeconds { get; init; } = 1;

    /// <summary>True: an engine that is heard needs care whatever the speech over noise.</summary>
    public bool EngineNeedsCare { get; init; }

    /// <summary>True: wind that is heard needs care.</summary>
    public bool WindNeedsCare { get; init; } = true;

    /// <summary>True: a fan that is heard needs care, since no fan may run in a take.</summary>
    public bool AirConditioningNeedsCare { get; init; } = true;

    /// <summary>Everything wrong with the thresholds; empty when all is well.</summary>
    /// <param name="prefix">Path of the thresholds in the contract's words, such as <c>thresholds</c>.</param>
    public IReadOnlyList<Violation> Validate(string prefix)
    {
        var violations = new List<Violation>();
        bool use = SpeechToNoiseDb.Check($"{prefix}.speech_to_noise_use_db", SpeechToNoiseUseDb, violations);
        bool care = SpeechToNoiseDb.Check($"{prefix}.speech_to_noise_care_db", SpeechToNoiseCareDb, violations);
        if (use && care && SpeechToNoiseCareDb > SpeechToNoiseUseDb)
        {
            violations.Add(new(
                $"{prefix}.speech_to_noise_care_db",
                $"{SpeechToNoiseCareDb:0.#} dB to use with care is more than the {SpeechToNoiseUseDb:0.#} dB to use",
                "It must be at most speech_to_noise_use_db"));
        }

        TruePeakDbtp.Check($"{prefix}.true_peak_care_dbtp", TruePeakCareDbtp, violations);
        ClippingPerMinute.Check($"{prefix}.clipping_redo_per_minute", ClippingRedoPerMinute, violations);
        LowSpeechDbov.Check($"{prefix}.speech_low_dbov", SpeechLowDbov, violations);
        HighSpeechDbov.Check($"{prefix}.speech_high_dbov", SpeechHighDbov, violations);
        DropoutsPerMinute.Check($"{prefix}.dropout_redo_per_minute", DropoutRedoPerMinute, violations);
        DcOffsetFraction.Check($"{prefix}.dc_offset_care_fraction", DcOffsetCareFraction, violations);
        HumDb.Check($"{prefix}.hum_care_db", HumCareDb, violations);
        SpeechSeconds.Check($"{prefix}.least_speech_s", LeastSpeechSeconds, violations);
        return violations;
    }
}
