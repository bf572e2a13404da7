using System.Text.Json;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>Heartbeats: when they come, what they hold, and what follows when nobody answers.</summary>
public sealed class HeartbeatTests
{
    private const double IntervalMs = 40_000;

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.999)]
    public async Task FirstBeat_ComesAfterARandomPartOfTheInterval(double part)
    {
        await using SourceRig rig = new() { Random = part };
        rig.Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Hello(IntervalMs);
        await socket.NextSentAsync(2);
        socket.Ready(sequence: 6);
        await Eventually.TrueAsync(() => rig.Source.Health.Ready);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs * part));
        Assert.Equal(6, (await socket.NextSentAsync(1)).GetProperty("d").GetInt32());
        Assert.Equal(IntervalMs * part, socket.Sent[^1].At.TotalMilliseconds, 1.0);
    }

    [Fact]
    public async Task FirstBeat_NoPartOfTheInterval_ComesAtOnceAndSaysNull()
    {
        await using SourceRig rig = new() { Random = 0 };
        rig.Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Hello(IntervalMs);
        JsonElement[] frames = [await socket.NextSentAsync(), await socket.NextSentAsync()];
        JsonElement beat = Assert.Single(frames, f => f.GetProperty("op").GetInt32() == 1);
        Assert.Equal(JsonValueKind.Null, beat.GetProperty("d").ValueKind);
    }

    [Fact]
    public async Task Beats_Answered_ComeEveryInterval()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync(IntervalMs);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs / 2));
        for (int i = 0; i < 4; i++)
        {
            await socket.NextSentAsync(1);
            Assert.Equal(IntervalMs * (0.5 + i), socket.Sent[^1].At.TotalMilliseconds, 5.0);
            await AcknowledgeAsync(rig, socket);
            await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs));
        }

        Assert.Equal(1, rig.Connections);
    }

    [Fact]
    public async Task Beat_NotAnswered_ClosesResumablyAndResumes()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync(IntervalMs);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs / 2));
        await socket.NextSentAsync(1);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs));
        await rig.PassBackOffAsync(0.5);
        Assert.Equal(4000, socket.CloseSent);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(6);
        Assert.Contains(rig.Logged, l => l.Text.Contains("NoAcknowledgement", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Zombie_OtherSideNeverAnswersTheClose_IsCutAndReplaced()
    {
        // The network is gone: no answer to a beat, none to the close.
        await using SourceRig rig = new();
        rig.Prepare = s => s.AnswersClose = rig.Connections > 0;
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync(IntervalMs);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs / 2));
        await socket.NextSentAsync(1);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs));
        await rig.Time.PassAsync(rig.Options.CloseTimeout);
        await rig.PassBackOffAsync(0.5);
        Assert.True(socket.Aborted);
        await rig.NextConnectionAsync();
    }

    [Fact]
    public async Task BeatAskedFor_IsSentAtOnceAndNeedsNoAnswerOfItsOwn()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync(IntervalMs);
        socket.Say("""{"op":1,"d":null}""");
        await socket.NextSentAsync(1);
        Assert.Equal(TimeSpan.Zero, socket.Sent[^1].At);

        // The next regular beat is due right behind it: there was no time for an answer.
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs / 2));
        await socket.NextSentAsync(1);
        await AcknowledgeAsync(rig, socket);
        socket.Say("""{"op":1,"d":null}""");
        await socket.NextSentAsync(1);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs));
        await socket.NextSentAsync(1);
        Assert.True(rig.Source.Health.Ready);
        Assert.Equal(1, rig.Connections);
    }

    [Fact]
    public async Task BeatsAskedForWithoutEnd_StayWithinTheLimitAndLeaveRoomForOurs()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync(IntervalMs);
        int asked = 0;
        await Eventually.TrueAsync(() =>
        {
            socket.Say("""{"op":1,"d":null}""");
            return ++asked >= 400;
        });
        socket.Interaction(9);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs / 2));
        await Eventually.TrueAsync(() => socket.Sent[^1].At > TimeSpan.Zero);
        Assert.InRange(socket.Sent.Count, 3, 101);
    }

    [Fact]
    public async Task Handler_ThatBlocks_DoesNotHoldUpHeartbeats()
    {
        // Seen in other clients: work in a handler costs the connection.
        using var release = new ManualResetEventSlim();
        await using SourceRig rig = new();
        rig.Receive = _ =>
        {
            release.Wait(TimeSpan.FromSeconds(20));
            return true;
        };
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync(IntervalMs);
        socket.Interaction(2);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs / 2));
        await socket.NextSentAsync(1);
        release.Set();
        await AcknowledgeAsync(rig, socket);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs));
        await socket.NextSentAsync(1);
        Assert.True(rig.Source.Health.Ready);
    }

    [Fact]
    public async Task Health_NoAnswers_LastSignAges()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync(IntervalMs);
        await rig.Time.PassAsync(TimeSpan.FromMilliseconds(IntervalMs / 2));
        await socket.NextSentAsync(1);
        Assert.Equal(IntervalMs / 2, rig.Source.Health.SinceLastSign!.Value.TotalMilliseconds, 5.0);
        await AcknowledgeAsync(rig, socket);
        Assert.Equal(TimeSpan.Zero, rig.Source.Health.SinceLastSign);
    }

    private static async Task AcknowledgeAsync(SourceRig rig, FakeSocket socket)
    {
        rig.Time.Advance(TimeSpan.FromMilliseconds(1));
        socket.Acknowledge();
        await Eventually.TrueAsync(() => rig.Source.Health.SinceLastSign == TimeSpan.Zero);
    }
}
