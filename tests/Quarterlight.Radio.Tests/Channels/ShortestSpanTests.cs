using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

/// <summary>Shortest spans of sets without third-order hits: OEIS A003022 as quoted by MathWorld (intermod_sets.csv).</summary>
public class ShortestSpanTests
{
    [Theory]
    [InlineData(3, 3)]
    [InlineData(4, 6)]
    [InlineData(5, 11)]
    [InlineData(6, 17)]
    [InlineData(7, 25)]
    [InlineData(8, 34)]
    public void Solve_OnTheShortestSpan_FindsASetAndProvesThereIsNoneOnOneStepLess(int carriers, int span)
    {
        CoordinationResult fits = ChannelCoordinator.Solve(Tasks.OnChannels(carriers, span + 1));
        Assert.Equal(CoordinationProof.FullSetFound, fits.Proof);
        Assert.True(fits.Complete);
        Assert.True(fits.Check.Clean);

        CoordinationResult short1 = ChannelCoordinator.Solve(Tasks.OnChannels(carriers, span));
        Assert.Equal(CoordinationProof.ProvedLargest, short1.Proof);
        Assert.Equal(carriers - 1, short1.PlacedCount);
        Assert.True(short1.Check.Clean);
        Assert.NotNull(short1.FewestHits);
        Assert.True(short1.FewestHits.Check.HitCount > 0);
        Assert.Empty(short1.FewestHits.Check.SpacingShortfalls);
    }

    [Fact]
    public void Solve_NodeLimitTooLow_SaysThatNothingIsProved()
    {
        CoordinationResult result = ChannelCoordinator.Solve(Tasks.OnChannels(8, 34) with { NodeLimit = 50 });
        Assert.Equal(CoordinationProof.NotProved, result.Proof);
        Assert.False(result.Complete);
        Assert.True(result.NodesVisited <= 50 + 8);
    }
}
