using System.Globalization;
using Quarterlight.Quantities;
using Quarterlight.Radio.Channels;
using Quarterlight.Radio.Law;

namespace Quarterlight.Planner.Mapping;

/// <summary>Wireless transmitters and channel rules, from the contract.</summary>
internal static class ChannelMapper
{
    private static readonly ValidRange s_count = new(1, 40, "");
    private static readonly ValidRange s_powerMw = new(0.001, 10_000, "mW");

    /// <summary>A task with each transmitter by itself, and what is known of its output. Everything wrong is noted.</summary>
    public static ChannelTask ToDomain(IReadOnlyList<V1.WirelessTransmitter> kinds, string at, V1.ChannelRules? rules, string rulesAt, FieldReader reader)
    {
        int before = reader.Violations.Count;
        var transmitters = new List<ChannelTransmitter>();
        var stages = new List<OutputStage?>();
        var kindOf = new List<int>();
        for (int k = 0; k < kinds.Count; k++)
        {
            V1.WirelessTransmitter kind = kinds[k];
            string path = $"{at}[{k}]";
            CheckKind(kind, path, reader);
            OutputStage? stage = Stage(kind.HasPowerMw ? kind.PowerMw : null, kind.HasInterceptDbm ? kind.InterceptDbm : null, path, reader);
            for (int n = 1; n <= Math.Clamp(kind.Count, 0, (int)s_count.Max); n++)
            {
                transmitters.Add(new ChannelTransmitter
                {
                    Id = kind.Count == 1 ? kind.Id : string.Create(CultureInfo.InvariantCulture, $"{kind.Id}-{n}"),
                    TuningRanges = [.. kind.TuningRanges.Select(r => new TuningRange(Hz(r.LowMhz, 1e6), Hz(r.HighMhz, 1e6)))],
                    StepHz = Hz(kind.StepKhz, 1e3),
                    FixedHz = kind.HasFixedMhz ? Hz(kind.FixedMhz, 1e6) : null,
                });
                stages.Add(stage);
                kindOf.Add(k);
            }
        }

        CoordinationTask task = Rules(rules) with { Transmitters = transmitters };
        if (LawBook.Find(rules?.CountryCode) is { } country)
        {
            // A band no transmitter reaches into would only clutter the picture.
            IEnumerable<ExcludedBlock> forbidden = LawfulChannels.ForbiddenBlocks(country)
                .Where(b => transmitters.Any(t => t.TuningRanges.Any(r => r.LowHz <= b.HighHz && b.LowHz <= r.HighHz)));
            task = task with { ExcludedBlocks = [.. task.ExcludedBlocks, .. forbidden] };
        }

        if (task.Limits.FifthOrder == FifthOrderScope.TwoAndThreeSignal)
        {
            // Each try costs many times more there: stop within a few seconds.
            task = task with { NodeLimit = CoordinationDefaults.NodeLimit / 4 };
        }

        double? distance = Distance(rules, rulesAt, reader);
        if (reader.Violations.Count == before)
        {
            reader.Violations.AddRange(CoordinationRules.Validate(task, "").Select(v => v with { Field = Renamed(v.Field, at, rulesAt, kindOf) }).DistinctBy(v => (v.Field, v.Problem)));
        }

        return new ChannelTask(task, stages, distance, rules?.CountryCode.Trim() ?? "");
    }

    /// <summary>Given carriers as a task of fixed transmitters.</summary>
    public static ChannelTask ToDomain(IReadOnlyList<double> frequenciesMHz, V1.ChannelRules? rules, double? powerMw, double? interceptDbm, FieldReader reader)
    {
        s_count.Check("frequencies_mhz", frequenciesMHz.Count, reader.Violations);
        for (int i = 0; i < frequenciesMHz.Count; i++)
        {
            CoordinationRules.FrequencyMHz.Check($"frequencies_mhz[{i}]", frequenciesMHz[i], reader.Violations);
        }

        OutputStage? stage = Stage(powerMw, interceptDbm, "", reader);
        CoordinationTask task = Rules(rules) with
        {
            Transmitters = [.. frequenciesMHz.Select((f, i) => new ChannelTransmitter { Id = string.Create(CultureInfo.InvariantCulture, $"{i + 1}"), FixedHz = Hz(f, 1e6) })],
        };
        double? distance = Distance(rules, "rules", reader);

        // Carriers too close to each other are an answer here, not a fault of the question.
        reader.Violations.AddRange(CoordinationRules.ValidateLimits(task.Limits, "rules"));
        CoordinationRules.NeighbourCount.Check("rules.neighbours", task.Neighbours.Count, reader.Violations);
        for (int i = 0; i < task.Neighbours.Count; i++)
        {
            CoordinationRules.FrequencyMHz.Check($"rules.neighbours[{i}].frequency_mhz", task.Neighbours[i].FrequencyHz / 1e6, reader.Violations);
        }

        return new ChannelTask(task, [.. frequenciesMHz.Select(_ => stage)], distance, rules?.CountryCode.Trim() ?? "");
    }

    /// <summary>Checks transmitters that are kept with a kit.</summary>
    public static void CheckKept(IReadOnlyList<V1.WirelessTransmitter> kinds, string at, FieldReader reader)
    {
        if (kinds.Count > 0)
        {
            ToDomain(kinds, at, null, "rules", reader);
        }
    }

    private static void CheckKind(V1.WirelessTransmitter kind, string path, FieldReader reader)
    {
        reader.Id($"{path}.id", kind.Id);
        if (kind.DisplayName.Length > 0)
        {
            reader.DisplayName($"{path}.display_name", kind.DisplayName);
        }

        s_count.Check($"{path}.count", kind.Count, reader.Violations);
        CoordinationRules.StepKHz.Check($"{path}.step_khz", kind.StepKhz, reader.Violations);
        for (int r = 0; r < kind.TuningRanges.Count; r++)
        {
            CoordinationRules.FrequencyMHz.Check($"{path}.tuning_ranges[{r}].low_mhz", kind.TuningRanges[r].LowMhz, reader.Violations);
            CoordinationRules.FrequencyMHz.Check($"{path}.tuning_ranges[{r}].high_mhz", kind.TuningRanges[r].HighMhz, reader.Violations);
        }

        if (kind.HasFixedMhz && kind.Count > 1)
        {
            reader.Add($"{path}.fixed_mhz", $"{kind.Count} transmitters cannot share one carrier", "Give a count of 1, or leave the carrier free");
        }
    }

    private static CoordinationTask Rules(V1.ChannelRules? rules)
    {
        rules ??= new V1.ChannelRules();
        return new CoordinationTask
        {
            Transmitters = [],
            Neighbours = [.. rules.Neighbours.Select((n, i) => new NeighbourCarrier(n.DisplayName.Length > 0 ? n.DisplayName : string.Create(CultureInfo.InvariantCulture, $"neighbour {i + 1}"), Hz(n.FrequencyMhz, 1e6)))],
            ExcludedBlocks = [.. rules.ExcludedBlocks.Select(b => new ExcludedBlock(Hz(b.LowMhz, 1e6), Hz(b.HighMhz, 1e6), b.Reason))],
            Limits = new CoordinationLimits
            {
                MinSpacingHz = rules.HasMinSpacingKhz ? Hz(rules.MinSpacingKhz, 1e3) : CoordinationDefaults.MinSpacingHz,
                ThirdOrderGuardHz = rules.HasThirdOrderGuardKhz ? Hz(rules.ThirdOrderGuardKhz, 1e3) : CoordinationDefaults.ThirdOrderGuardHz,
                FifthOrder = rules.FifthOrder == V1.FifthOrder.Unspecified ? FifthOrderScope.None : (FifthOrderScope)((int)rules.FifthOrder - 1),
                FifthOrderGuardHz = rules.HasFifthOrderGuardKhz ? Hz(rules.FifthOrderGuardKhz, 1e3) : CoordinationDefaults.FifthOrderGuardHz,
            },
        };
    }

    private static OutputStage? Stage(double? powerMw, double? interceptDbm, string path, FieldReader reader)
    {
        string dot = path.Length == 0 ? "" : path + ".";
        bool good = powerMw is null || s_powerMw.Check($"{dot}power_mw", powerMw.Value, reader.Violations);
        good &= interceptDbm is null || OutputStage.Oip3.Check($"{dot}intercept_dbm", interceptDbm.Value, reader.Violations);
        return good && powerMw is { } power && interceptDbm is { } intercept ? new OutputStage(10 * Math.Log10(power), intercept) : null;
    }

    private static double? Distance(V1.ChannelRules? rules, string rulesAt, FieldReader reader) =>
        rules is { HasTransmitterDistanceM: true } && IntermodLevels.DistanceM.Check($"{rulesAt}.transmitter_distance_m", rules.TransmitterDistanceM, reader.Violations)
            ? rules.TransmitterDistanceM : null;

    // Values that are no frequency at all are caught by the ranges; they must only survive the conversion.
    private static long Hz(double value, double unitHz) => double.IsFinite(value) ? (long)Math.Round(Math.Clamp(value * unitHz, -1e12, 1e12)) : long.MinValue / 4;

    // The room numbers single transmitters, the contract their kinds; and the contract keeps the rules apart.
    private static string Renamed(string field, string at, string rulesAt, List<int> kindOf)
    {
        const string Single = "transmitters[";
        if (!field.StartsWith(Single, StringComparison.Ordinal))
        {
            return field.StartsWith("transmitters", StringComparison.Ordinal) ? at + field["transmitters".Length..] : $"{rulesAt}.{field.Replace("].id", "].display_name", StringComparison.Ordinal)}";
        }

        int end = field.IndexOf(']', StringComparison.Ordinal);
        int index = int.Parse(field.AsSpan(Single.Length, end - Single.Length), CultureInfo.InvariantCulture);
        return $"{at}[{kindOf[index]}{field[end..]}";
    }
}

/// <summary>A coordination task and what product levels need besides.</summary>
/// <param name="Task">The task.</param>
/// <param name="Stages">Output stage of each transmitter; null where not known.</param>
/// <param name="DistanceM">Distance between two transmitters in metres; null when not given.</param>
/// <param name="CountryCode">Whose law is looked at; empty for nobody's.</param>
internal sealed record ChannelTask(CoordinationTask Task, IReadOnlyList<OutputStage?> Stages, double? DistanceM, string CountryCode);
