using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>Limits of what a connection may send (Gateway, Sending Events and Rate Limiting).</summary>
public sealed class FrameLimitTests
{
    [Fact]
    public async Task Send_FrameAboveTheLimit_IsRefused()
    {
        var time = new WatchedTime();
        using var socket = new FakeSocket(time);
        using var sender = new FrameSender(socket, time, TimeSpan.FromSeconds(1));
        await sender.SendAsync(new byte[4096], TestContext.Current.CancellationToken);
        await Assert.ThrowsAsync<ArgumentException>(() => sender.SendAsync(new byte[4097], TestContext.Current.CancellationToken));
        Assert.Single(socket.Sent);
    }

    [Fact]
    public async Task Send_MoreThanAWindowHolds_WaitsForTheWindow()
    {
        var time = new WatchedTime();
        using var socket = new FakeSocket(time);
        using var sender = new FrameSender(socket, time, TimeSpan.FromSeconds(1));
        for (int i = 0; i < 120; i++)
        {
            await sender.SendAsync(new byte[1], TestContext.Current.CancellationToken);
            time.Advance(TimeSpan.FromMilliseconds(100));
        }

        Task next = sender.SendAsync(new byte[1], TestContext.Current.CancellationToken);
        await time.PassAsync(TimeSpan.FromSeconds(48));
        await Eventually.EndsAsync(next);
        Assert.Equal(60, socket.Sent[^1].At.TotalSeconds, 0.01);
        Assert.All(socket.Sent.Zip(socket.Sent.Skip(120)), pair => Assert.True(pair.Second.At - pair.First.At >= TimeSpan.FromSeconds(60)));
    }

    [Fact]
    public async Task Send_ManyAtOnce_GoOneByOne()
    {
        var time = new WatchedTime();
        using var socket = new FakeSocket(time);
        using var sender = new FrameSender(socket, time, TimeSpan.FromSeconds(1));
        await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => Task.Run(() => sender.SendAsync(new byte[1], CancellationToken.None))));
        Assert.Empty(socket.Misuses);
        Assert.Equal(50, socket.Sent.Count);
    }

    [Fact]
    public async Task Answer_WhenAskedTooOften_IsLeftOut()
    {
        var time = new WatchedTime();
        using var socket = new FakeSocket(time);
        using var sender = new FrameSender(socket, time, TimeSpan.FromSeconds(1));
        for (int i = 0; i < 130; i++)
        {
            await sender.AnswerAsync(new byte[1], TestContext.Current.CancellationToken);
        }

        Assert.Equal(100, socket.Sent.Count);
        await sender.SendAsync(new byte[1], TestContext.Current.CancellationToken);
        Assert.Equal(101, socket.Sent.Count);
    }

    [Fact]
    public async Task Send_NeverLeaves_TimesOutAndFreesTheWay()
    {
        var time = new WatchedTime();
        using var socket = new FakeSocket(time) { NeverSends = true };
        using var sender = new FrameSender(socket, time, TimeSpan.FromSeconds(1));
        // Seen in other clients: a turn that is never given back, so that everything behind it waits for ever.
        Task stuck = sender.SendAsync(new byte[1], TestContext.Current.CancellationToken);
        await time.PassAsync(TimeSpan.FromSeconds(1));
        await Assert.ThrowsAsync<TimeoutException>(() => Eventually.EndsAsync(stuck));
        socket.NeverSends = false;
        await Eventually.EndsAsync(sender.SendAsync(new byte[1], TestContext.Current.CancellationToken));
    }

    [Fact]
    public void OwnFrames_LongestTokenAndSession_FitTheLimit()
    {
        var options = new GatewayOptions { Token = new string('t', 300), ShardId = 9999, ShardCount = 10000, Intents = int.MaxValue };
        var session = new GatewaySession(new string('s', 300), null, long.MaxValue);
        Assert.InRange(GatewayWriter.Identify(options).Length, 1, 4096);
        Assert.InRange(GatewayWriter.Resume(options, session).Length, 1, 4096);
    }
}
