using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>Waits between connections grow, are spread, and start anew only after a connection that lasted.</summary>
public sealed class BackOffTests
{
    [Fact]
    public void Next_UpperEnd_DoublesUpToTheMost()
    {
        double random = 1;
        var backOff = new BackOff(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(60), () => random);
        Assert.Equal([1, 2, 4, 8, 16, 32, 60, 60], Enumerable.Range(0, 8).Select(_ => backOff.Next().TotalSeconds));
        random = 0;
        Assert.Equal(0, backOff.Next().TotalSeconds);
        random = 1;
        backOff.Reset();
        Assert.Equal(1, backOff.Next().TotalSeconds);
    }

    [Fact]
    public void Next_ManyTimes_NeverOverflows()
    {
        var backOff = new BackOff(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(60), () => 0.5);
        Assert.All(Enumerable.Range(0, 5000).Select(_ => backOff.Next().TotalSeconds), s => Assert.InRange(s, 0.5, 30));
    }

    [Fact]
    public async Task Connection_BrokenBeforeAMinute_WaitsGrow()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync(intervalMs: 600_000);
        foreach (double wait in new[] { 0.5, 1, 2, 4 })
        {
            rig.Time.Advance(TimeSpan.FromSeconds(59));
            socket.Break();
            await rig.PassBackOffAsync(wait);
            socket = await rig.NextConnectionAsync();
            socket.Hello(600_000);
            await socket.NextSentAsync(6);
            socket.Resumed(5);
            await Eventually.TrueAsync(() => rig.Source.Health.Ready);
        }
    }

    [Fact]
    public async Task Connection_LastedAMinute_WaitsStartAnew()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync(intervalMs: 600_000);
        for (int i = 0; i < 4; i++)
        {
            rig.Time.Advance(TimeSpan.FromSeconds(60));
            socket.Break();
            await rig.PassBackOffAsync(0.5);
            socket = await rig.NextConnectionAsync();
            socket.Hello(600_000);
            await socket.NextSentAsync(6);
            socket.Resumed(5);
            await Eventually.TrueAsync(() => rig.Source.Health.Ready);
        }
    }

    [Fact]
    public async Task Gateway_CannotBeOpened_WaitsGrowWithoutUsingUpIdentifies()
    {
        // Seen in other clients: the network is lost once and the client never returns.
        await using SourceRig rig = new();
        bool away = true;
        rig.Prepare = s => s.RefusesToOpen = away;
        rig.Start();
        foreach (double wait in new[] { 0.5, 1, 2, 4, 8, 16, 30, 30, 30, 30 })
        {
            await rig.NextConnectionAsync();
            await rig.PassBackOffAsync(wait);
        }

        Assert.Empty(rig.Ledger.Kept);
        away = false;
        await rig.NextConnectionAsync();
        await rig.PassBackOffAsync(30);
        await rig.ConnectAsync();
        Assert.All(rig.Sockets.SkipLast(1), s => Assert.True(s.Disposed));
    }
}
