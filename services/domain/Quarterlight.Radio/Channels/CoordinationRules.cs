using System.Globalization;
using Quarterlight.Quantities;

namespace Quarterlight.Radio.Channels;

/// <summary>What a coordination task must keep to. Frequencies are spoken of in MHz and steps in kHz, as the contract does.</summary>
public static class CoordinationRules
{
    /// <summary>Carrier frequencies, in MHz.</summary>
    public static ValidRange FrequencyMHz { get; } = new(1, 6000, "MHz");

    /// <summary>Tuning step, in kHz.</summary>
    public static ValidRange StepKHz { get; } = new(1, 10_000, "kHz");

    /// <summary>Smallest spacing, in kHz.</summary>
    public static ValidRange SpacingKHz { get; } = new(1, 10_000, "kHz");

    /// <summary>Guards of third and fifth order, in kHz.</summary>
    public static ValidRange GuardKHz { get; } = new(0, 1000, "kHz");

    /// <summary>Transmitters in one task.</summary>
    public static ValidRange TransmitterCount { get; } = new(1, 40, "");

    /// <summary>Neighbours in one task.</summary>
    public static ValidRange NeighbourCount { get; } = new(0, 40, "");

    /// <summary>Excluded blocks in one task.</summary>
    public static ValidRange ExcludedBlockCount { get; } = new(0, 200, "");

    /// <summary>Tuning ranges of one transmitter.</summary>
    public static ValidRange TuningRangeCount { get; } = new(0, 20, "");

    /// <summary>Channels all ranges of one transmitter may hold together.</summary>
    public static ValidRange ChannelCount { get; } = new(1, 50_000, "channels");

    /// <summary>Carriers a search may try.</summary>
    public static ValidRange NodeLimit { get; } = new(1, 50_000_000, "");

    /// <summary>Says everything that is wrong with a task; nothing when it can be solved.</summary>
    /// <param name="task">The task.</param>
    /// <param name="prefix">Path before the field names; may be empty.</param>
    public static IReadOnlyList<Violation> Validate(CoordinationTask task, string prefix)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(prefix);
        var violations = new List<Violation>();
        string Path(string name) => prefix.Length == 0 ? name : prefix + "." + name;
        TransmitterCount.Check(Path("transmitters"), task.Transmitters.Count, violations);
        NeighbourCount.Check(Path("neighbours"), task.Neighbours.Count, violations);
        ExcludedBlockCount.Check(Path("excluded_blocks"), task.ExcludedBlocks.Count, violations);
        NodeLimit.Check(Path("node_limit"), task.NodeLimit, violations);
        violations.AddRange(ValidateLimits(task.Limits, prefix));
        for (int i = 0; i < task.ExcludedBlocks.Count; i++)
        {
            ExcludedBlock block = task.ExcludedBlocks[i];
            CheckSpan(Path($"excluded_blocks[{i}]"), block.LowHz, block.HighHz, violations);
        }

        var ids = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int i = 0; i < task.Transmitters.Count; i++)
        {
            CheckId(Path($"transmitters[{i}].id"), task.Transmitters[i].Id, ids, violations);
            TransmitterRules.Check(task.Transmitters[i], task.ExcludedBlocks, Path($"transmitters[{i}]"), violations);
        }

        for (int i = 0; i < task.Neighbours.Count; i++)
        {
            CheckId(Path($"neighbours[{i}].id"), task.Neighbours[i].Id, ids, violations);
            FrequencyMHz.Check(Path($"neighbours[{i}].frequency_mhz"), task.Neighbours[i].FrequencyHz / 1e6, violations);
        }

        FixedCarrierRules.Check(task, Path, violations);
        return violations;
    }

    /// <summary>Says what is wrong with spacing and guards alone, as for a check of given carriers.</summary>
    /// <param name="limits">Spacing and guards.</param>
    /// <param name="prefix">Path before the field names; may be empty.</param>
    public static IReadOnlyList<Violation> ValidateLimits(CoordinationLimits limits, string prefix)
    {
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(prefix);
        var violations = new List<Violation>();
        string dot = prefix.Length == 0 ? "" : prefix + ".";
        SpacingKHz.Check(dot + "min_spacing_khz", limits.MinSpacingHz / 1e3, violations);
        GuardKHz.Check(dot + "third_order_guard_khz", limits.ThirdOrderGuardHz / 1e3, violations);
        GuardKHz.Check(dot + "fifth_order_guard_khz", limits.FifthOrderGuardHz / 1e3, violations);
        if (!Enum.IsDefined(limits.FifthOrder))
        {
            violations.Add(new Violation(dot + "fifth_order", "the choice is unknown", "Choose none, two-signal, or two- and three-signal products"));
        }

        return violations;
    }

    internal static void CheckSpan(string path, long lowHz, long highHz, List<Violation> violations)
    {
        bool inside = FrequencyMHz.Check(path + ".low_mhz", lowHz / 1e6, violations);
        inside &= FrequencyMHz.Check(path + ".high_mhz", highHz / 1e6, violations);
        if (inside && highHz < lowHz)
        {
            violations.Add(new Violation(path + ".high_mhz", $"{MHz(highHz)} is below the low end, {MHz(lowHz)}", "Give the lower frequency first"));
        }
    }

    internal static string MHz(long hz) => (hz / 1e6).ToString("0.######", CultureInfo.InvariantCulture) + " MHz";

    private static void CheckId(string field, string id, Dictionary<string, string> seen, List<Violation> violations)
    {
        if (string.IsNullOrWhiteSpace(id))
        {
            violations.Add(new Violation(field, "the name is empty", "Give each transmitter and neighbour a name of its own"));
        }
        else if (!seen.TryAdd(id, field))
        {
            violations.Add(new Violation(field, $"the name \"{id}\" is already that of {seen[id][..^3]}", "Give each transmitter and neighbour a name of its own"));
        }
    }
}
