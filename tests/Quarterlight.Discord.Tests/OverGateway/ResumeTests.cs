using System.Text.Json;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>A session is gone on with where that can help, and given up where it cannot.</summary>
public sealed class ResumeTests
{
    private const string OpReconnect = """{"op":7,"d":null,"s":null,"t":null}""";
    private const string OpGone = """{"op":9,"d":false}""";
    private const string OpRefused = """{"op":9,"d":true}""";

    [Fact]
    public async Task ReconnectAsked_ResumesAtTheResumeAddressWithTheLastNumber()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Interaction(41);
        socket.Say(OpReconnect);
        await rig.PassBackOffAsync(0.5);
        Assert.Equal(4000, socket.CloseSent);
        FakeSocket second = await rig.NextConnectionAsync();
        Assert.Equal("wss://resume.example.test/?v=10&encoding=json", second.Address!.AbsoluteUri);
        second.Hello();
        JsonElement d = (await second.NextSentAsync(6)).GetProperty("d");
        Assert.Equal((SourceRig.Token, "session-1", 41), (d.GetProperty("token").GetString(), d.GetProperty("session_id").GetString(), d.GetProperty("seq").GetInt32()));
        Assert.Equal("resuming", rig.Source.Health.Detail);

        // What was missed comes before RESUMED and is handed on.
        second.Interaction(42, id: 78);
        second.Resumed(43);
        await Eventually.TrueAsync(() => rig.Source.Health.Ready);
        Assert.Equal([77UL, 78UL], rig.Received.Select(i => i.Ticket.InteractionId));
        Assert.Equal(1, rig.Finds);
        Assert.Single(rig.Ledger.Kept);
    }

    [Fact]
    public async Task ReconnectAsked_WhatComesAfterwards_IsLeftToTheReplay()
    {
        await using SourceRig rig = new();
        rig.Prepare = s => s.AnswersClose = rig.Connections > 0;
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Say(OpReconnect);
        await Eventually.TrueAsync(() => socket.CloseSent is not null);
        socket.Interaction(50);
        socket.Close(4000);
        await rig.PassBackOffAsync(0.5);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        Assert.Equal(1, (await second.NextSentAsync(6)).GetProperty("d").GetProperty("seq").GetInt32());
        Assert.Empty(rig.Received);
    }

    [Fact]
    public async Task ReconnectAsked_BeforeHello_IsFollowed()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Say(OpReconnect);
        await rig.PassBackOffAsync(0.5);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(2);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("http://resume.example.test")]
    [InlineData("ws://resume.example.test")]
    [InlineData("nonsense")]
    public async Task ResumeAddress_OfNoUse_FirstAddressIsTaken(string? address)
    {
        // The token goes there: only over an encrypted connection.
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync(resume: address);
        socket.Close(null);
        await rig.PassBackOffAsync(0.5);
        FakeSocket second = await rig.NextConnectionAsync();
        Assert.Equal("wss://gateway.example.test/?v=10&encoding=json", second.Address!.AbsoluteUri);
        second.Hello();
        await second.NextSentAsync(6);
    }

    [Fact]
    public async Task Resume_FailsThreeTimes_ThenIdentifiesAtTheFirstAddress()
    {
        // Seen in other clients: a dead session tried for hours, at a flat pace.
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        double wait = 0.5;
        for (int i = 0; i < 3; i++)
        {
            socket.Close(4000);
            await rig.PassBackOffAsync(wait);
            wait *= 2;
            socket = await rig.NextConnectionAsync();
            Assert.Equal("resume.example.test", socket.Address!.Host);
            socket.Hello();
            await socket.NextSentAsync(6);
        }

        socket.Close(4000);
        await rig.PassBackOffAsync(wait);
        socket = await rig.NextConnectionAsync();
        Assert.Equal("gateway.example.test", socket.Address!.Host);
        socket.Hello();
        await socket.NextSentAsync(2);
        Assert.Equal(2, rig.Ledger.Kept.Count);
    }

    [Fact]
    public async Task Resume_Succeeds_CountOfFailuresStartsAnew()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        double wait = 0.5;
        for (int i = 0; i < 5; i++)
        {
            socket.Close(4000);
            await rig.PassBackOffAsync(wait);
            wait *= 2;
            socket = await rig.NextConnectionAsync();
            socket.Hello();
            await socket.NextSentAsync(6);
            socket.Resumed(10 + i);
            await Eventually.TrueAsync(() => rig.Source.Health.Ready);
        }

        Assert.Single(rig.Ledger.Kept);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.5, 3)]
    [InlineData(0.999, 4.996)]
    public async Task SessionGone_WaitsOneToFiveSecondsThenIdentifies(double random, double seconds)
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        rig.Time.Advance(TimeSpan.FromSeconds(10));
        rig.Random = random;
        socket.Say(OpGone);
        await rig.PassBackOffAsync(seconds);
        FakeSocket second = await rig.NextConnectionAsync();
        Assert.Equal("gateway.example.test", second.Address!.Host);
        second.Hello();
        await Eventually.TrueAsync(() => second.Sent.Any(s => s.Json.Contains("\"op\":2", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task SessionRefusedForNow_WaitsAndResumes()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Say(OpRefused);
        await rig.PassBackOffAsync(3);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(6);
    }

    [Fact]
    public async Task SessionGone_RightBehindResumed_IsUnderstood()
    {
        // The order at which a widespread client breaks.
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Say(OpReconnect);
        await rig.PassBackOffAsync(0.5);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(6);
        second.Resumed(2);
        second.Say(OpGone);
        await rig.PassBackOffAsync(3);
        await rig.Time.PassAsync(TimeSpan.FromSeconds(1.5));
        FakeSocket third = await rig.NextConnectionAsync();
        third.Hello();
        await third.NextSentAsync(2);
        third.Ready("session-2");
        await Eventually.TrueAsync(() => rig.Source.Health.Ready);
    }

    [Fact]
    public async Task SessionGone_InAnswerToResume_Identifies()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        rig.Time.Advance(TimeSpan.FromSeconds(10));
        socket.Break();
        await rig.PassBackOffAsync(0.5);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(6);
        second.Say(OpGone);
        await rig.PassBackOffAsync(3);
        FakeSocket third = await rig.NextConnectionAsync();
        third.Hello();
        await third.NextSentAsync(2);
    }
}
