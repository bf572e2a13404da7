using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

public class ChannelCoordinatorTests
{
    private static readonly CoordinationTask[] s_random =
        [.. Enumerable.Range(0, 1000).Select(RandomTasks.Make).Where(t => CoordinationRules.Validate(t, "").Count == 0)];

    [Fact]
    public void Solve_RandomSmallTasks_FindsAsManyAsBruteForceAndProvesIt()
    {
        Assert.True(s_random.Length > 400, $"Only {s_random.Length} tasks are valid.");
        int[] kinds = new int[2];
        foreach (CoordinationTask task in s_random)
        {
            CoordinationResult result = ChannelCoordinator.Solve(task);
            int largest = BruteForce.Largest(task);
            Assert.Equal(largest, result.PlacedCount);
            bool full = largest == task.Transmitters.Count;
            kinds[full ? 1 : 0]++;
            Assert.Equal(full ? CoordinationProof.FullSetFound : CoordinationProof.ProvedLargest, result.Proof);
            long[] own = [.. result.Carriers.Where(c => c.FrequencyHz is not null).Select(c => c.FrequencyHz!.Value)];
            Assert.True(BruteForce.Clean(own, [.. task.Neighbours.Select(n => n.FrequencyHz)], task.Limits), $"seed {task.Seed}");
            AssertTuned(task, result.Carriers);
        }

        // Both kinds of case must have been seen, or the comparison says little.
        Assert.All(kinds, k => Assert.True(k > 100, $"{kinds[0]} not full, {kinds[1]} full"));
    }

    [Fact]
    public void Solve_LeftOver_OffersEverybodyACarrierAndListsTheHitsBruteForceCounts()
    {
        int seen = 0;
        foreach (CoordinationTask task in s_random)
        {
            if (ChannelCoordinator.Solve(task).FewestHits is not CompromiseAssignment compromise)
            {
                continue;
            }

            seen++;
            long[] own = [.. compromise.Carriers.Select(c => c.FrequencyHz!.Value)];
            long[] neighbours = [.. task.Neighbours.Select(n => n.FrequencyHz)];
            Assert.Equal(BruteForce.Hits(own, neighbours, task.Limits), compromise.Check.HitCount);
            Assert.Equal(compromise.Check.HitCount, compromise.Check.Hits.Count);
            Assert.Empty(compromise.Check.SpacingShortfalls);
            AssertTuned(task, compromise.Carriers);
        }

        Assert.True(seen > 50, $"Only {seen} compromises.");
    }

    [Fact]
    public void Solve_LeftOver_ComesToTheFewestHitsInMostSmallCases()
    {
        // A local search: it must never claim fewer hits than there can be, and a judgement says it should seldom stay above.
        int seen = 0, least = 0;
        foreach (CoordinationTask task in s_random.Where(t => t.Transmitters.Aggregate(1, (n, x) => n * BruteForce.Channels(x, t).Length) < 1500))
        {
            CoordinationResult result = ChannelCoordinator.Solve(task);
            if (!result.Complete && BruteForce.FewestHits(task) is int fewest)
            {
                int found = Assert.IsType<CompromiseAssignment>(result.FewestHits).Check.HitCount;
                Assert.True(found >= fewest, $"seed {task.Seed}");
                seen++;
                least += found == fewest ? 1 : 0;
            }
            else
            {
                Assert.Null(result.FewestHits);
            }
        }

        Assert.True(seen > 50, $"Only {seen} cases.");
        Assert.True(least > 0.9 * seen, $"The fewest in {least} of {seen}.");
    }

    [Fact]
    public void Solve_TransmittersInAnotherOrder_GivesEachTheSameCarrier()
    {
        foreach (CoordinationTask task in s_random.Take(100))
        {
            CoordinationTask turned = task with { Transmitters = [.. task.Transmitters.Reverse()], Neighbours = [.. task.Neighbours.Reverse()], ExcludedBlocks = [.. task.ExcludedBlocks.Reverse()] };
            CoordinationResult one = ChannelCoordinator.Solve(task), other = ChannelCoordinator.Solve(turned);
            Assert.Equal(one.Carriers, other.Carriers.Reverse());
            Assert.Equal(one.FewestHits?.Carriers, other.FewestHits?.Carriers.Reverse());
        }
    }

    [Fact]
    public void Solve_Twice_GivesTheSame()
    {
        CoordinationTask task = Tasks.OnChannels(10, 50) with { NodeLimit = 20_000 };
        CoordinationResult one = ChannelCoordinator.Solve(task), other = ChannelCoordinator.Solve(task);
        Assert.False(one.Complete);
        Assert.Equal(one.Carriers, other.Carriers);
        Assert.Equal(one.NodesVisited, other.NodesVisited);
        Assert.Equal(one.FewestHits!.Carriers, other.FewestHits!.Carriers);
    }

    [Theory]
    [InlineData(50_000)]
    [InlineData(100_000)]
    public void Solve_TwoDozenIn100MHz_FindsAFullSetWithoutExhausting(long guardHz)
    {
        var task = new CoordinationTask
        {
            Transmitters = Tasks.Alike(24, 500_000_000, 600_000_000),
            Limits = new CoordinationLimits { ThirdOrderGuardHz = guardHz },
        };
        CoordinationResult result = ChannelCoordinator.Solve(task);
        Assert.True(result.Complete);
        Assert.True(result.NodesVisited < task.NodeLimit / 10, $"{result.NodesVisited} nodes");
        Assert.True(BruteForce.Clean([.. result.Carriers.Select(c => c.FrequencyHz!.Value)], [], task.Limits));
    }

    [Fact]
    public void Solve_OneAlreadyTuned_LeavesItThere()
    {
        ChannelTransmitter[] transmitters = Tasks.Alike(8, 500_000_000, 520_000_000);
        transmitters[3] = transmitters[3] with { FixedHz = 507_312_500 };
        CoordinationResult result = ChannelCoordinator.Solve(new CoordinationTask { Transmitters = transmitters });
        Assert.True(result.Complete);
        Assert.Equal(507_312_500, result.Carriers[3].FrequencyHz);
        Assert.True(BruteForce.Clean([.. result.Carriers.Select(c => c.FrequencyHz!.Value)], [], new CoordinationLimits()));
    }

    [Fact]
    public void Solve_BadTask_RefusesWithViolations()
    {
        CoordinationTask task = Tasks.OnChannels(3, 4) with { NodeLimit = 0 };
        Assert.Throws<Quantities.InvalidInputException>(() => ChannelCoordinator.Solve(task));
    }

    private static void AssertTuned(CoordinationTask task, IReadOnlyList<AssignedCarrier> carriers)
    {
        Assert.Equal(task.Transmitters.Select(t => t.Id), carriers.Select(c => c.TransmitterId));
        for (int i = 0; i < carriers.Count; i++)
        {
            if (carriers[i].FrequencyHz is long hz)
            {
                Assert.Contains(hz, BruteForce.Channels(task.Transmitters[i], task));
            }
        }
    }
}
