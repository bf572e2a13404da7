using Quarterlight.Quantities;
using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

public class CoordinationRulesTests
{
    private static readonly CoordinationTask s_good = new()
    {
        Transmitters = Tasks.Alike(2, 500_000_000, 510_000_000),
        Neighbours = [new("feed", 98_000_000)],
        ExcludedBlocks = [new(502_000_000, 504_000_000, "broadcast")],
    };

    [Fact]
    public void Validate_GoodTask_SaysNothing() => Assert.Empty(CoordinationRules.Validate(s_good, "task"));

    [Fact]
    public void Validate_EachMistake_NamesItsField()
    {
        AssertFields(s_good with { Transmitters = [] }, "task.transmitters");
        AssertFields(s_good with { Transmitters = Tasks.Alike(41, 500_000_000, 510_000_000) }, "task.transmitters");
        AssertFields(s_good with { NodeLimit = 0 }, "task.node_limit");
        AssertFields(WithSecond(t => t with { Id = " " }), "task.transmitters[1].id");
        AssertFields(WithSecond(t => t with { Id = "t01" }), "task.transmitters[1].id");
        AssertFields(s_good with { Neighbours = [new("t02", 98_000_000)] }, "task.neighbours[0].id");
        AssertFields(WithSecond(t => t with { StepHz = 0 }), "task.transmitters[1].step_khz");
        AssertFields(WithSecond(t => t with { TuningRanges = [] }), "task.transmitters[1].tuning_ranges");
        AssertFields(WithSecond(t => t with { TuningRanges = [new(510_000_000, 500_000_000)] }), "task.transmitters[1].tuning_ranges[0].high_mhz");
        AssertFields(WithSecond(t => t with { TuningRanges = [new(500, 500_000_000)] }), "task.transmitters[1].tuning_ranges[0].low_mhz");
        AssertFields(WithSecond(t => t with { TuningRanges = [new(502_000_000, 503_000_000)] }), "task.transmitters[1].tuning_ranges[0]");
        AssertFields(WithSecond(t => t with { TuningRanges = [new(100_000_000, 900_000_000)], StepHz = 1000 }), "task.transmitters[1].step_khz");
        AssertFields(WithSecond(t => t with { FixedHz = 511_000_000 }), "task.transmitters[1].fixed_mhz");
        AssertFields(WithSecond(t => t with { FixedHz = 503_000_000 }), "task.transmitters[1].fixed_mhz");
        AssertFields(s_good with { Neighbours = [new("far", 6_000_000_001)] }, "task.neighbours[0].frequency_mhz");
        AssertFields(s_good with { ExcludedBlocks = [new(504_000_000, 502_000_000, "")] }, "task.excluded_blocks[0].high_mhz");
        AssertFields(s_good with { ExcludedBlocks = [new(0, 400_000_000, "")] }, "task.excluded_blocks[0].low_mhz");
        AssertFields(s_good with { Limits = new() { MinSpacingHz = 999 } }, "task.min_spacing_khz");
        AssertFields(s_good with { Limits = new() { ThirdOrderGuardHz = 1_000_001 } }, "task.third_order_guard_khz");
        AssertFields(s_good with { Limits = new() { FifthOrderGuardHz = -1 } }, "task.fifth_order_guard_khz");
        AssertFields(s_good with { Limits = new() { FifthOrder = (FifthOrderScope)7 } }, "task.fifth_order");
    }

    [Fact]
    public void Validate_ManyMistakes_NamesAllAtOnce() => AssertFields(
        s_good with { NodeLimit = 0, Neighbours = [new("", 1)] }, "task.node_limit", "task.neighbours[0].id", "task.neighbours[0].frequency_mhz");

    [Fact]
    public void Validate_TwoFixedTransmittersTooClose_NamesTheSecond()
    {
        ChannelTransmitter[] both = [s_good.Transmitters[0] with { FixedHz = 500_000_000 }, s_good.Transmitters[1] with { FixedHz = 500_299_999 }];
        AssertFields(s_good with { Transmitters = both }, "task.transmitters[1].fixed_mhz");
        Assert.Empty(CoordinationRules.Validate(s_good with { Transmitters = [both[0], both[1] with { FixedHz = 500_300_000 }] }, ""));
    }

    [Fact]
    public void Validate_NeighbourBesideAFixedTransmitter_NamesTheNeighbour() => AssertFields(
        WithSecond(t => t with { FixedHz = 500_000_000 }) with { Neighbours = [new("n", 500_100_000)] }, "task.neighbours[0].frequency_mhz");

    [Fact]
    public void Validate_NeighboursWithinTheGuard_NamesTheSecond()
    {
        // Closer than the guard, any third carrier X has X+A-B beside it: brute force agrees that nothing is clean.
        NeighbourCarrier[] pair = [new("a", 600_000_000), new("b", 600_049_999)];
        AssertFields(s_good with { Neighbours = pair }, "task.neighbours[1].frequency_mhz");
        Assert.False(BruteForce.Clean([500_000_000], [pair[0].FrequencyHz, pair[1].FrequencyHz], new CoordinationLimits()));
        Assert.True(BruteForce.Clean([500_000_000], [pair[0].FrequencyHz, 600_050_000], new CoordinationLimits()));
        Assert.Empty(CoordinationRules.Validate(s_good with { Neighbours = [pair[0], pair[1] with { FrequencyHz = 600_050_000 }] }, ""));
    }

    [Fact]
    public void Validate_RangesAtTheirEnds_AreInside()
    {
        CoordinationTask edge = s_good with
        {
            Transmitters = [new() { Id = "t", TuningRanges = [new(1_000_000, 1_000_000), new(6_000_000_000, 6_000_000_000)], StepHz = 1000 }],
            Limits = new() { MinSpacingHz = 1000, ThirdOrderGuardHz = 0, FifthOrderGuardHz = 1_000_000 },
        };
        Assert.Empty(CoordinationRules.Validate(edge, ""));
        Assert.True(ChannelCoordinator.Solve(edge).Complete);
    }

    [Fact]
    public void Validate_OneOfTwoRangesExcluded_IsNoMistake() => Assert.Empty(CoordinationRules.Validate(
        WithSecond(t => t with { TuningRanges = [new(502_000_000, 503_000_000), new(506_000_000, 507_000_000)] }), ""));

    [Fact]
    public void Defaults_AreWhatThePageSays()
    {
        // docs/models/channel-coordination.md; common practice, no source.
        var limits = new CoordinationLimits();
        Assert.Equal((300_000, 50_000, FifthOrderScope.None, 50_000), (limits.MinSpacingHz, limits.ThirdOrderGuardHz, limits.FifthOrder, limits.FifthOrderGuardHz));
    }

    private static CoordinationTask WithSecond(Func<ChannelTransmitter, ChannelTransmitter> change) =>
        s_good with { Transmitters = [s_good.Transmitters[0], change(s_good.Transmitters[1])] };

    private static void AssertFields(CoordinationTask task, params string[] fields)
    {
        IReadOnlyList<Violation> violations = CoordinationRules.Validate(task, "task");
        Assert.Equal(fields, violations.Select(v => v.Field));
        Assert.All(violations, v => Assert.False(v.Problem.EndsWith('.') || v.Remedy.EndsWith('.')));
    }
}
