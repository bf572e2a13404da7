using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

/// <summary>Small tasks, cramped on purpose, from a seed.</summary>
internal static class RandomTasks
{
    public static CoordinationTask Make(int seed)
    {
        var random = new Random(seed);
        long[] steps = [25_000, 25_000, 50_000, 30_000];
        bool alike = random.Next(3) == 0;
        int count = random.Next(2, alike ? 6 : 5);

        // Far apart, the channels are kept as a list and not on a common step.
        long apart = random.Next(2) == 0 ? 500_000 : 100_000_007;
        var transmitters = new List<ChannelTransmitter>();
        for (int i = 0; i < count; i++)
        {
            long low = Tasks.BaseHz + (random.Next(8) * 25_000), step = steps[random.Next(steps.Length)];
            var ranges = new List<TuningRange> { new(low, low + (random.Next(3, 11) * step)) };
            if (random.Next(4) == 0)
            {
                ranges.Add(new(low + apart, low + apart + (random.Next(4) * step)));
            }

            transmitters.Add(new ChannelTransmitter
            {
                Id = $"t{i}",
                TuningRanges = alike && i > 0 ? transmitters[0].TuningRanges : ranges,
                StepHz = alike && i > 0 ? transmitters[0].StepHz : step,
                FixedHz = !alike && random.Next(6) == 0 ? low + step : null,
            });
        }

        NeighbourCarrier[] neighbours = [.. Enumerable.Range(0, random.Next(4)).Select(i => new NeighbourCarrier($"n{i}", Tasks.BaseHz + (random.Next(-20, 40) * 20_000L)))];
        ExcludedBlock[] excluded =
            [.. Enumerable.Range(0, random.Next(3)).Select(_ => Tasks.BaseHz + (random.Next(20) * 25_000L)).Select(l => new ExcludedBlock(l, l + (random.Next(4) * 10_000L), "test"))];
        return new CoordinationTask
        {
            Transmitters = transmitters,
            Neighbours = neighbours,
            ExcludedBlocks = excluded,
            Limits = new CoordinationLimits
            {
                MinSpacingHz = random.Next(1, 5) * 20_000,
                ThirdOrderGuardHz = random.Next(6) * 10_000,
                FifthOrder = (FifthOrderScope)random.Next(3),
                FifthOrderGuardHz = random.Next(7) * 15_000,
            },
            NodeLimit = 2_000_000,
            Seed = seed,
        };
    }
}
