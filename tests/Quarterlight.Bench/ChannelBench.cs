using BenchmarkDotNet.Attributes;
using Quarterlight.Radio.Channels;

namespace Quarterlight.Bench;

/// <summary>
/// Channel coordination: the proof that eight carriers do not fit on 34 channels, against plain backtracking on the same case; and two dozen
/// transmitters in 100 MHz alone, which the plain way does not end on.
/// </summary>
[MemoryDiagnoser]
public class ChannelBench
{
    private const long StepHz = 25_000;
    private readonly CoordinationTask _eight = Alike(8, 34, StepHz, StepHz);
    private readonly CoordinationTask _twoDozen = Alike(24, 4001, 300_000, 50_000);

    [GlobalSetup]
    public void Setup()
    {
        bool plain = PlainBacktracking.Solve(8, 34, StepHz, StepHz, StepHz) is null;
        CoordinationProof proof = ChannelCoordinator.Solve(_eight).Proof;
        if (!plain || proof != CoordinationProof.ProvedLargest || !ChannelCoordinator.Solve(_twoDozen).Complete)
        {
            throw new InvalidOperationException($"The two ways differ: {plain} and {proof}.");
        }
    }

    [Benchmark(Baseline = true)]
    public bool PlainEightOn34Channels() => PlainBacktracking.Solve(8, 34, StepHz, StepHz, StepHz) is null;

    /// <summary>Does more than the reference: it also finds the largest partial set, proves it, and looks for a compromise.</summary>
    [Benchmark]
    public CoordinationResult EightOn34Channels() => ChannelCoordinator.Solve(_eight);

    [Benchmark]
    public CoordinationResult TwoDozenIn100MHz() => ChannelCoordinator.Solve(_twoDozen);

    private static CoordinationTask Alike(int count, int channels, long spacingHz, long guardHz) => new()
    {
        Transmitters =
        [
            .. Enumerable.Range(1, count).Select(i => new ChannelTransmitter
            {
                Id = $"t{i:00}", TuningRanges = [new(500_000_000, 500_000_000 + ((channels - 1) * StepHz))], StepHz = StepHz,
            }),
        ],
        Limits = new CoordinationLimits { MinSpacingHz = spacingHz, ThirdOrderGuardHz = guardHz },
    };
}
