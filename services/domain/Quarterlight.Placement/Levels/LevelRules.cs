using Quarterlight.Quantities;

namespace Quarterlight.Placement.Levels;

/// <summary>What valid audio gear and a valid question about levels are.</summary>
public static class LevelRules
{
    /// <summary>Level at a recorder's input for full scale at 0 dB of gain.</summary>
    public static ValidRange FullScale { get; } = new(-20, 40, "dBu");

    /// <summary>Least gain of a recorder.</summary>
    public static ValidRange GainMin { get; } = new(-30, 60, "dB");

    /// <summary>Most gain of a recorder.</summary>
    public static ValidRange GainMax { get; } = new(0, 100, "dB");

    /// <summary>Step of a gain.</summary>
    public static ValidRange GainStep { get; } = new(0.1, 12, "dB");

    /// <summary>Highest level at an input.</summary>
    public static ValidRange MaxInput { get; } = new(-20, 40, "dBu");

    /// <summary>Noise at an input.</summary>
    public static ValidRange InputNoise { get; } = new(-140, -80, "dBu");

    /// <summary>Full scale over the converter's noise.</summary>
    public static ValidRange DynamicRange { get; } = new(80, 160, "dB");

    /// <summary>Pad.</summary>
    public static ValidRange Pad { get; } = new(0, 40, "dB");

    /// <summary>Kinds of transmitter.</summary>
    public static ValidRange TransmitterKinds { get; } = new(0, 20, "");

    /// <summary>Level at a transmitter's input for full modulation at 0 dB of gain.</summary>
    public static ValidRange FullModulation { get; } = new(-60, 30, "dBu");

    /// <summary>Least gain of a transmitter.</summary>
    public static ValidRange TransmitterGainMin { get; } = new(-60, 60, "dB");

    /// <summary>Most gain of a transmitter.</summary>
    public static ValidRange TransmitterGainMax { get; } = new(-40, 80, "dB");

    /// <summary>Full modulation over a transmitter's noise.</summary>
    public static ValidRange TransmitterDynamicRange { get; } = new(30, 140, "dB");

    /// <summary>Level at the receiver's output at full modulation.</summary>
    public static ValidRange ReceiverOutput { get; } = new(-60, 30, "dBu");

    /// <summary>Headroom wanted.</summary>
    public static ValidRange Headroom { get; } = new(0, 30, "dB");

    /// <summary>Everything wrong with a recorder's inputs; empty when they are valid.</summary>
    /// <param name="gain">The inputs.</param>
    /// <param name="prefix">Field path, such as "kit.recorder_gain".</param>
    public static IReadOnlyList<Violation> Validate(RecorderGain gain, string prefix)
    {
        ArgumentNullException.ThrowIfNull(gain);
        var violations = new List<Violation>();
        FullScale.Check($"{prefix}.full_scale_dbu", gain.FullScaleDbu, violations);
        bool both = GainMin.Check($"{prefix}.gain_min_db", gain.GainMinDb, violations);
        both &= GainMax.Check($"{prefix}.gain_max_db", gain.GainMaxDb, violations);
        if (both && gain.GainMaxDb <= gain.GainMinDb)
        {
            violations.Add(new Violation($"{prefix}.gain_max_db", FormattableString.Invariant($"the most gain is {gain.GainMaxDb:0.###} dB and the least {gain.GainMinDb:0.###} dB"), "The most must be above the least"));
        }

        GainStep.Check($"{prefix}.gain_step_db", gain.GainStepDb, violations);
        if (gain.MaxInputDbu is { } most)
        {
            MaxInput.Check($"{prefix}.max_input_dbu", most, violations);
        }

        InputNoise.Check($"{prefix}.input_noise_dbu", gain.InputNoiseDbu, violations);
        DynamicRange.Check($"{prefix}.dynamic_range_db", gain.DynamicRangeDb, violations);
        Pad.Check($"{prefix}.pad_db", gain.PadDb, violations);
        return violations;
    }

    /// <summary>Everything wrong with the audio side of a transmitter; empty when it is valid.</summary>
    /// <param name="transmitter">The transmitter.</param>
    /// <param name="prefix">Field path, such as "kit.transmitter_audio[0]".</param>
    public static IReadOnlyList<Violation> Validate(TransmitterAudio transmitter, string prefix)
    {
        ArgumentNullException.ThrowIfNull(transmitter);
        var violations = new List<Violation>();
        FullModulation.Check($"{prefix}.full_modulation_dbu", transmitter.FullModulationDbu, violations);
        bool both = TransmitterGainMin.Check($"{prefix}.gain_min_db", transmitter.GainMinDb, violations);
        both &= TransmitterGainMax.Check($"{prefix}.gain_max_db", transmitter.GainMaxDb, violations);
        if (both && transmitter.GainMaxDb < transmitter.GainMinDb)
        {
            violations.Add(new Violation($"{prefix}.gain_max_db", FormattableString.Invariant($"the most gain is {transmitter.GainMaxDb:0.###} dB and the least {transmitter.GainMinDb:0.###} dB"), "The most must not be below the least"));
        }

        GainStep.Check($"{prefix}.gain_step_db", transmitter.GainStepDb, violations);
        TransmitterDynamicRange.Check($"{prefix}.dynamic_range_db", transmitter.DynamicRangeDb, violations);
        ReceiverOutput.Check($"{prefix}.receiver_output_dbu", transmitter.ReceiverOutputDbu, violations);
        return violations;
    }

    /// <summary>Everything wrong with the audio side of a kit's transmitters; empty when they are valid.</summary>
    /// <param name="transmitters">The transmitters.</param>
    /// <param name="prefix">Field path of the list, such as "kit.transmitter_audio".</param>
    public static IReadOnlyList<Violation> ValidateAll(IReadOnlyList<TransmitterAudio> transmitters, string prefix)
    {
        ArgumentNullException.ThrowIfNull(transmitters);
        var violations = new List<Violation>();
        TransmitterKinds.Check(prefix, transmitters.Count, violations);
        var ids = new HashSet<string>();
        for (int i = 0; i < transmitters.Count; i++)
        {
            if (!ids.Add(transmitters[i].Id))
            {
                violations.Add(new Violation($"{prefix}[{i}].id", $"transmitter \"{transmitters[i].Id}\" is there twice", "Give each transmitter an id of its own"));
            }

            violations.AddRange(Validate(transmitters[i], $"{prefix}[{i}]"));
        }

        return violations;
    }

    /// <summary>Everything wrong with a question about levels; empty when it can be answered. Scene and plan are taken as valid.</summary>
    /// <param name="task">The question.</param>
    /// <param name="kitPrefix">Field path of the kit, such as "kit".</param>
    public static IReadOnlyList<Violation> Validate(LevelTask task, string kitPrefix = "kit")
    {
        ArgumentNullException.ThrowIfNull(task);
        List<Violation> violations = [.. Validate(task.Recorder, $"{kitPrefix}.recorder_gain"), .. ValidateAll(task.Transmitters, $"{kitPrefix}.transmitter_audio")];
        Headroom.Check("headroom_db", task.HeadroomDb, violations);
        string talkers = string.Join(", ", task.Placement.Scene.Talkers.Select(t => t.Id));
        foreach (string id in task.LoudestByTalker.Keys.Where(k => !task.Placement.Scene.Talkers.Any(t => t.Id == k)).Order(StringComparer.Ordinal))
        {
            violations.Add(new Violation("efforts", $"the scene has no talker \"{id}\"", $"Use one of: {talkers}"));
        }

        if (task.MicrophoneTransmitterId is { } wanted)
        {
            CheckMicrophoneTransmitter(task.Transmitters, wanted, violations);
        }

        return violations;
    }

    private static void CheckMicrophoneTransmitter(IReadOnlyList<TransmitterAudio> transmitters, string id, List<Violation> violations)
    {
        string known = string.Join(", ", transmitters.Where(t => t.Feed == TransmitterFeed.Microphone).Select(t => t.Id));
        string remedy = known.Length == 0 ? "Leave it empty for a cable, or list one fed by a microphone under the kit's transmitter_audio" : $"Use one of: {known}; or leave it empty for a cable";
        if (transmitters.FirstOrDefault(t => t.Id == id) is not { } found)
        {
            violations.Add(new Violation("microphone_transmitter_id", $"the kit has no transmitter \"{id}\"", remedy));
        }
        else if (found.Feed != TransmitterFeed.Microphone)
        {
            violations.Add(new Violation("microphone_transmitter_id", $"transmitter \"{id}\" is fed by the recorder, not by a microphone", remedy));
        }
    }
}
