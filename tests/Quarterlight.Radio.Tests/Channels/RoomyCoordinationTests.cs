using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

public class RoomyCoordinationTests
{
    private static readonly CoordinationTask s_eight = new()
    {
        Transmitters = [.. Enumerable.Range(1, 8).Select(i => new ChannelTransmitter { Id = $"pack-{i}", TuningRanges = [new TuningRange(470_000_000, 494_000_000)] })],
    };

    [Fact]
    public void Solve_WithRoomToSpare_KeepsSeveralTimesTheGuard()
    {
        CoordinationResult result = RoomyCoordination.Solve(s_eight);

        // Brute force beside the room's own checker: every two- and three-signal product against every carrier.
        long[] carriers = [.. result.Carriers.Select(c => c.FrequencyHz!.Value)];
        long nearest = long.MaxValue;
        for (int a = 0; a < 8; a++)
        {
            for (int b = 0; b < 8; b++)
            {
                for (int c = 0; c < 8; c++)
                {
                    if (a != c && b != c)
                    {
                        nearest = Math.Min(nearest, carriers.Min(v => Math.Abs(carriers[a] + carriers[b] - carriers[c] - v)));
                    }
                }
            }
        }

        Assert.True(result.Complete);
        Assert.True(nearest >= 2 * CoordinationDefaults.ThirdOrderGuardHz, $"{nearest} Hz");
    }

    [Fact]
    public void Solve_NoRoomToSpare_IsThePlainAnswer()
    {
        CoordinationTask tight = s_eight with
        {
            Transmitters = [.. s_eight.Transmitters.Select(t => t with { TuningRanges = [new TuningRange(470_000_000, 472_500_000)] })],
        };
        CoordinationResult plain = ChannelCoordinator.Solve(tight), roomy = RoomyCoordination.Solve(tight);

        Assert.Equal(plain.Carriers, roomy.Carriers);
        Assert.Equal(plain.Proof, roomy.Proof);
    }
}
