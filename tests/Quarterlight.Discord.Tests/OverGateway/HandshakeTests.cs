using System.Text.Json;
using Microsoft.Extensions.Logging;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>How a session starts and what arrives on it.</summary>
public sealed class HandshakeTests
{
    [Fact]
    public async Task Connect_Hello_IsAnsweredByIdentify()
    {
        await using SourceRig rig = new SourceRig(() => new GatewayOptions { Token = SourceRig.Token, ShardId = 1, ShardCount = 3 }).Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        Assert.Equal("wss://gateway.example.test/?v=10&encoding=json", socket.Address!.AbsoluteUri);
        Assert.Empty(socket.Sent);
        socket.Hello();
        JsonElement d = (await socket.NextSentAsync(2)).GetProperty("d");
        Assert.Equal(SourceRig.Token, d.GetProperty("token").GetString());
        Assert.Equal(0, d.GetProperty("intents").GetInt32());
        Assert.Equal([1, 3], d.GetProperty("shard").EnumerateArray().Select(n => n.GetInt32()));
        Assert.Equal(["browser", "device", "os"], d.GetProperty("properties").EnumerateObject().Select(p => p.Name).Order());
        Assert.False(rig.Source.Health.Ready);
    }

    [Fact]
    public async Task Ready_Health_SaysConnected()
    {
        await using SourceRig rig = new SourceRig().Start();
        await rig.ConnectAsync();
        Assert.Equal("connected", rig.Source.Health.Detail);
        rig.Time.Advance(TimeSpan.FromSeconds(7));
        Assert.Equal(TimeSpan.FromSeconds(7), rig.Source.Health.SinceLastSign);
    }

    [Fact]
    public async Task Health_BeforeAnything_KnowsNoSign()
    {
        await using SourceRig rig = new();
        rig.Find = () => Task.FromResult(SourceRig.Info());
        rig.Start();
        await rig.NextConnectionAsync();
        Assert.Equal((false, "connecting", null), (rig.Source.Health.Ready, rig.Source.Health.Detail, rig.Source.Health.SinceLastSign));
    }

    [Fact]
    public async Task Interaction_Dispatched_IsHandedOn()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Interaction(2, id: 1234);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        Interaction got = Assert.Single(rig.Received);
        Assert.Equal((1234UL, InteractionKind.Component, 40UL), (got.Ticket.InteractionId, got.Kind, got.UserId));
        Assert.Equal(TimeSpan.Zero, rig.Time.GetElapsedTime(got.ReceivedTimestamp));
    }

    [Theory]
    [InlineData(1UL)]
    [InlineData(9_000_000_000_000_000_000UL)]
    public async Task Interaction_IdOfAnotherTime_CountsFromItsReceipt(ulong id)
    {
        // Other clients refuse to answer, or answer too late, because the time inside the id is not that of a laptop's clock.
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        rig.Time.Advance(TimeSpan.FromSeconds(3));
        long now = rig.Time.GetTimestamp();
        socket.Interaction(2, id);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        Interaction got = Assert.Single(rig.Received);
        Assert.Equal((now, (long?)now), (got.ReceivedTimestamp, got.Ticket.ReceivedTimestamp));
    }

    [Fact]
    public async Task OtherEvents_AreIgnored()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Say("""{"op":0,"t":"PRESENCE_UPDATE","s":2,"d":{"user":{"id":"9"}}}""");
        socket.Say("""{"op":0,"t":"GUILD_CREATE","s":3,"d":{"id":"30","members":[{"user":{"id":"9"}}],"extra":{"deep":[1,[2,[3]]]}}}""");
        socket.Say("""{"op":0,"t":"SOMETHING_NEW","s":4,"d":7}""");
        socket.Say("""{"op":42,"d":{"unknown":true}}""");
        socket.Hello(5);
        socket.Interaction(5);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        Assert.True(rig.Source.Health.Ready);
        Assert.DoesNotContain(rig.Logged, l => l.Level > LogLevel.Information);
    }

    [Fact]
    public async Task Interaction_Unreadable_IsLoggedAndTheNextArrives()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        for (int i = 2; i < 12; i++)
        {
            socket.Say($$$"""{"op":0,"t":"INTERACTION_CREATE","s":{{{i}}},"d":{"id":"1","secret":"secret text"}}""");
        }

        socket.Interaction(12);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        Assert.Equal(10, rig.Logged.Count(l => l.Text == "An interaction could not be read: NoTicket"));
        Assert.Equal(1, rig.Connections);
    }

    [Fact]
    public async Task Receiver_ThrowsOrRefuses_ConnectionGoesOn()
    {
        await using SourceRig rig = new();
        rig.Receive = i => i.Ticket.InteractionId switch { 1 => throw new InvalidDataException("secret"), 2 => false, _ => true };
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Interaction(2, 1);
        socket.Interaction(3, 2);
        socket.Interaction(4, 3);
        await Eventually.TrueAsync(() => rig.Received.Count == 3);
        Assert.True(rig.Source.Health.Ready);
        Assert.Contains(rig.Logged, l => l.Text.Contains("failed with InvalidDataException", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Frame_InPieces_IsPutTogether()
    {
        await using SourceRig rig = new();
        rig.Prepare = s => s.MostReadBytes = 7;
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Say($$$"""{"op":0,"t":"GUILD_CREATE","s":2,"d":"{{{new string('x', 200_000)}}}"}""");
        socket.Interaction(3);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
    }

    [Fact]
    public async Task Ready_WithoutSession_StartsAnew()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Hello();
        await socket.NextSentAsync(2);
        socket.Say("""{"op":0,"t":"READY","s":1,"d":{"v":10}}""");
        await rig.PassBackOffAsync(3);
        await rig.Time.PassAsync(TimeSpan.FromSeconds(2));
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(2);
    }

    [Fact]
    public async Task Run_Twice_IsRefused()
    {
        await using SourceRig rig = new SourceRig().Start();
        await rig.NextConnectionAsync();
        await Assert.ThrowsAsync<InvalidOperationException>(() => rig.Source.RunAsync(_ => true, CancellationToken.None));
    }

    [Fact]
    public void Options_AsText_HideTheToken() => Assert.DoesNotContain("secret", new GatewayOptions { Token = SourceRig.Token }.ToString(), StringComparison.Ordinal);
}
