using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>The end is in order where it can be, and never takes longer than it may. Other clients hang here for hours.</summary>
public sealed class ShutdownTests
{
    [Fact]
    public async Task Cancel_Connected_ClosesWith1000()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        await rig.CancelAsync();
        await Eventually.EndsAsync(rig.Running);
        Assert.Equal(1000, socket.CloseSent);
        Assert.True(socket.Disposed);
        Assert.Equal((false, "stopped"), (rig.Source.Health.Ready, rig.Source.Health.Detail));
        Assert.Empty(rig.Time.Waiting);
    }

    [Fact]
    public async Task Cancel_OtherSideDoesNotAnswer_IsCutInTime()
    {
        await using SourceRig rig = new() { Prepare = s => s.AnswersClose = false };
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync();
        await rig.CancelAsync();
        await Eventually.TrueAsync(() => socket.CloseSent == 1000);
        Assert.False(rig.Running.IsCompleted);
        await rig.Time.PassAsync(rig.Options.CloseTimeout);
        await Eventually.EndsAsync(rig.Running);
        Assert.True(socket.Aborted);
    }

    [Fact]
    public async Task Cancel_FrameIsStuck_IsCutInTime()
    {
        await using SourceRig rig = new() { Prepare = s => s.NeverSends = true };
        rig.Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Hello(600_000);
        await Eventually.TrueAsync(() => rig.Ledger.Kept.Count == 1);
        await rig.CancelAsync();
        await rig.Time.PassAsync(rig.Options.CloseTimeout);
        await Eventually.TrueAsync(() => socket.Aborted);
        await rig.Time.PassAsync(rig.Options.CloseTimeout);
        await Eventually.EndsAsync(rig.Running);
        Assert.Null(socket.CloseSent);
    }

    [Fact]
    public async Task Cancel_WhileOpening_Ends()
    {
        await using SourceRig rig = new() { Prepare = s => s.NeverOpens = true };
        rig.Start();
        await rig.NextConnectionAsync();
        await rig.CancelAsync();
        await Eventually.EndsAsync(rig.Running);
    }

    [Fact]
    public async Task Cancel_WhileWaiting_Ends()
    {
        await using SourceRig rig = new() { Prepare = s => s.RefusesToOpen = true };
        rig.Start();
        await Eventually.TrueAsync(() => rig.Source.Health.Detail == "waiting to connect again");
        await rig.CancelAsync();
        await Eventually.EndsAsync(rig.Running);
    }

    [Fact]
    public async Task Cancel_WhileHeldBack_Ends()
    {
        await using SourceRig rig = new() { Find = () => Task.FromResult(SourceRig.Info(0)) };
        rig.Start();
        await Eventually.TrueAsync(() => rig.Time.Waiting.Count == 1);
        await rig.CancelAsync();
        await Eventually.EndsAsync(rig.Running);
    }

    [Fact]
    public async Task Dispose_Connected_StopsIt()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        await Eventually.EndsAsync(rig.Source.DisposeAsync().AsTask());
        await Eventually.EndsAsync(rig.Running);
        Assert.Equal(1000, socket.CloseSent);
        await Eventually.EndsAsync(rig.Source.DisposeAsync().AsTask());
    }

    [Fact]
    public async Task Dispose_NeverRun_Ends()
    {
        await using SourceRig rig = new();
        var source = new GatewaySource(
            rig.Options, _ => rig.Find(), rig.Ledger, () => new FakeSocket(rig.Time), rig.Time, () => 0.5, Microsoft.Extensions.Logging.Abstractions.NullLogger<GatewaySource>.Instance);
        await Eventually.EndsAsync(source.DisposeAsync().AsTask());
    }

    [Fact]
    public async Task Dispose_WaitedForInAHandler_DoesNotLockUp()
    {
        // The handler waits for a supervisor that waits for the handler.
        await using SourceRig rig = new();
        rig.Receive = _ =>
        {
#pragma warning disable xUnit1031 // Blocking is the point.
            rig.Source.DisposeAsync().AsTask().Wait(TimeSpan.FromSeconds(20));
#pragma warning restore xUnit1031
            return true;
        };
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Interaction(2);
        await Eventually.TrueAsync(() => socket.CloseSent == 1000);
        await Eventually.TrueAsync(
            () =>
            {
                rig.Time.Advance(TimeSpan.FromMilliseconds(100));
                return rig.Running.IsCompleted;
            });
        Assert.InRange(rig.Time.Passed.TotalSeconds, 0, 15);
    }

    [Fact]
    public async Task Cancel_HandlerHoldsTheLoop_EndsInTime()
    {
        using var release = new ManualResetEventSlim();
        await using SourceRig rig = new();
        rig.Receive = _ =>
        {
            release.Wait(TimeSpan.FromSeconds(20));
            return true;
        };
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Interaction(2);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        await rig.CancelAsync();
        await rig.Time.PassAsync(rig.Options.CloseTimeout);
        await rig.Time.PassAsync(rig.Options.CloseTimeout);
        await Eventually.EndsAsync(rig.Running);
        release.Set();
    }
}
