using Quarterlight.Quantities;

namespace Quarterlight.Radio.Channels;

/// <summary>What one transmitter of a task must keep to.</summary>
internal static class TransmitterRules
{
    public static void Check(ChannelTransmitter transmitter, IReadOnlyList<ExcludedBlock> excluded, string path, List<Violation> violations)
    {
        int before = violations.Count;
        CoordinationRules.TuningRangeCount.Check(path + ".tuning_ranges", transmitter.TuningRanges.Count, violations);
        CoordinationRules.StepKHz.Check(path + ".step_khz", transmitter.StepHz / 1e3, violations);
        for (int i = 0; i < transmitter.TuningRanges.Count; i++)
        {
            CoordinationRules.CheckSpan($"{path}.tuning_ranges[{i}]", transmitter.TuningRanges[i].LowHz, transmitter.TuningRanges[i].HighHz, violations);
        }

        if (transmitter.FixedHz is long fixedHz)
        {
            CheckFixed(transmitter, fixedHz, excluded, path, violations);
        }
        else if (transmitter.TuningRanges.Count == 0)
        {
            violations.Add(new Violation(path + ".tuning_ranges", "there is none", "Say from where to where the transmitter tunes, or the frequency it is fixed at"));
        }
        else if (violations.Count == before)
        {
            CheckChannels(transmitter, excluded, path, violations);
        }
    }

    private static void CheckFixed(
        ChannelTransmitter transmitter, long fixedHz, IReadOnlyList<ExcludedBlock> excluded, string path, List<Violation> violations)
    {
        string field = path + ".fixed_mhz";
        if (!CoordinationRules.FrequencyMHz.Check(field, fixedHz / 1e6, violations))
        {
            return;
        }

        if (transmitter.TuningRanges.Count > 0 && !transmitter.TuningRanges.Any(r => r.LowHz <= fixedHz && fixedHz <= r.HighHz))
        {
            violations.Add(new Violation(field, $"{CoordinationRules.MHz(fixedHz)} lies outside the transmitter's tuning ranges", "Correct the frequency or the ranges"));
        }

        if (excluded.FirstOrDefault(b => b.LowHz <= fixedHz && fixedHz <= b.HighHz) is ExcludedBlock block)
        {
            violations.Add(new Violation(field, $"{CoordinationRules.MHz(fixedHz)} lies in an excluded block{Reason(block)}", "Retune the transmitter or free it"));
        }
    }

    private static void CheckChannels(ChannelTransmitter transmitter, IReadOnlyList<ExcludedBlock> excluded, string path, List<Violation> violations)
    {
        double channels = transmitter.TuningRanges.Sum(r => (double)((r.HighHz - r.LowHz) / transmitter.StepHz) + 1);
        if (channels > CoordinationRules.ChannelCount.Max)
        {
            violations.Add(new Violation(
                path + ".step_khz",
                $"the ranges hold {channels:0} channels",
                $"Take a wider step or narrower ranges: at most {CoordinationRules.ChannelCount.Max:0} channels"));
            return;
        }

        // A range that is excluded altogether is no mistake while another is usable.
        if (!transmitter.TuningRanges.Any(r => CandidateGrid.Channels(r, transmitter.StepHz, excluded).Any()))
        {
            string field = transmitter.TuningRanges.Count == 1 ? ".tuning_ranges[0]" : ".tuning_ranges";
            string why = excluded.FirstOrDefault(b => transmitter.TuningRanges.Any(r => r.LowHz <= b.HighHz && b.LowHz <= r.HighHz)) is { } block ? Reason(block) : "";
            violations.Add(new Violation(path + field, "every channel lies in an excluded block" + why, "Give a range with a channel outside them"));
        }
    }

    private static string Reason(ExcludedBlock block) => block.Why.Length == 0 ? "" : $" ({block.Why})";
}
