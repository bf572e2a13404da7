using Quarterlight.Quantities;

namespace Quarterlight.Radio.Channels;

/// <summary>Carriers that cannot be moved must not be at odds from the start.</summary>
internal static class FixedCarrierRules
{
    public static void Check(CoordinationTask task, Func<string, string> path, List<Violation> violations)
    {
        CoordinationLimits limits = task.Limits;
        var carriers = new List<(string Field, string Id, long Hz, bool IsNeighbour)>();
        carriers.AddRange(task.Transmitters.Select((t, i) => (path($"transmitters[{i}].fixed_mhz"), t.Id, t.FixedHz ?? -1, false)).Where(c => c.Item3 >= 0));
        carriers.AddRange(task.Neighbours.Select((n, i) => (path($"neighbours[{i}].frequency_mhz"), n.Id, n.FrequencyHz, true)));
        for (int j = 1; j < carriers.Count; j++)
        {
            for (int i = 0; i < j; i++)
            {
                (string Field, string Id, long Hz, bool IsNeighbour) first = carriers[i], second = carriers[j];
                long distanceHz = Math.Abs(first.Hz - second.Hz);
                if (first.IsNeighbour && second.IsNeighbour)
                {
                    // With such a pair A, B and any carrier X, X+A-B falls beside X itself: nothing could ever be clean.
                    long needHz = NeighbourSpacingHz(limits);
                    if (distanceHz < needHz)
                    {
                        violations.Add(new Violation(
                            second.Field,
                            $"it is {distanceHz / 1e3:0.###} kHz from {first.Id}, so that with any carrier the two make a product nearer to it than the guard",
                            $"Leave one of the two out, or lower the guards: they must be at least {needHz / 1e3:0.###} kHz apart"));
                    }
                }
                else if (distanceHz < limits.EffectiveSpacingHz)
                {
                    violations.Add(new Violation(
                        second.Field,
                        $"it is {distanceHz / 1e3:0.###} kHz from {first.Id}, which cannot be moved either",
                        $"Retune one of the two, or lower the spacing: carriers must be at least {limits.EffectiveSpacingHz / 1e3:0.###} kHz apart"));
                }
            }
        }
    }

    private static long NeighbourSpacingHz(CoordinationLimits limits) =>
        Math.Max(limits.Guard(3), limits.FifthOrder == FifthOrderScope.TwoAndThreeSignal ? (limits.Guard(5) + 1) / 2 : 0);
}
