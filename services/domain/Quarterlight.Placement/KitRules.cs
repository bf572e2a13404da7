using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>What a valid kit is.</summary>
public static class KitRules
{
    /// <summary>Kinds of microphone.</summary>
    public static ValidRange MicrophoneKinds { get; } = new(1, 24, "");

    /// <summary>Recorder inputs.</summary>
    public static ValidRange RecorderInputs { get; } = new(1, 32, "");

    /// <summary>Body length.</summary>
    public static ValidRange BodyLength { get; } = new(0.003, 0.5, "m");

    /// <summary>Body diameter.</summary>
    public static ValidRange BodyDiameter { get; } = new(0.002, 0.08, "m");

    /// <summary>Sensitivity.</summary>
    public static ValidRange Sensitivity { get; } = new(0.1, 200, "mV/Pa");

    /// <summary>Self-noise.</summary>
    public static ValidRange SelfNoiseLevel { get; } = new(0, 45, "dB(A)");

    /// <summary>Highest level.</summary>
    public static ValidRange MaxLevel { get; } = new(90, 160, "dB");

    /// <summary>How many of one microphone.</summary>
    public static ValidRange MicrophoneCount { get; } = new(1, 32, "");

    /// <summary>How many of one fixing.</summary>
    public static ValidRange FixingCount { get; } = new(0, 200, "");

    /// <summary>Everything wrong with a kit; empty when it is valid.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="prefix">Field path of the kit, such as "kit".</param>
    public static IReadOnlyList<Violation> Validate(Kit kit, string prefix = "kit")
    {
        ArgumentNullException.ThrowIfNull(kit);
        var violations = new List<Violation>();
        if (kit.Microphones.Count == 0)
        {
            violations.Add(new Violation($"{prefix}.microphones", "the kit has no microphones", "List at least one"));
        }
        else
        {
            MicrophoneKinds.Check($"{prefix}.microphones", kit.Microphones.Count, violations);
        }

        RecorderInputs.Check($"{prefix}.recorder_input_count", kit.RecorderInputCount, violations);
        foreach ((Fixings fixing, int count) in kit.FixingCounts)
        {
            FixingCount.Check($"{prefix}.fixings[{fixing}].count", count, violations);
        }

        var ids = new HashSet<string>();
        for (int m = 0; m < kit.Microphones.Count; m++)
        {
            Microphone microphone = kit.Microphones[m];
            string at = $"{prefix}.microphones[{m}]";
            if (!ids.Add(microphone.Id))
            {
                violations.Add(new Violation($"{at}.id", $"\"{microphone.Id}\" is there twice", "Give each microphone an id of its own and use count for several alike"));
            }

            BodyLength.Check($"{at}.body_length_m", microphone.BodyLengthM, violations);
            BodyDiameter.Check($"{at}.body_diameter_m", microphone.BodyDiameterM, violations);
            Sensitivity.Check($"{at}.sensitivity_mv_per_pa", microphone.SensitivityMvPerPa, violations);
            SelfNoiseLevel.Check($"{at}.self_noise_dba", microphone.SelfNoiseDba, violations);
            MaxLevel.Check($"{at}.max_level_db", microphone.MaxLevelDb, violations);
            MicrophoneCount.Check($"{at}.count", microphone.Count, violations);
            if (microphone.Fixings == Fixings.None)
            {
                violations.Add(new Violation($"{at}.fixings", "nothing can hold this microphone", "List at least one fixing"));
            }
        }

        return violations;
    }
}
