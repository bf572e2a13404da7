using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>Whatever is waited for has an end.</summary>
public sealed class TimeoutTests
{
    [Fact]
    public async Task Find_NeverAnswers_IsAskedAgain()
    {
        await using SourceRig rig = new() { Find = () => new TaskCompletionSource<GatewayInfo>().Task };
        rig.Start();
        await rig.Time.PassAsync(rig.Options.FindTimeout);
        await rig.Time.PassAsync(TimeSpan.FromSeconds(0.5));
        await Eventually.TrueAsync(() => rig.Finds == 2);
    }

    [Fact]
    public async Task Find_Fails_IsAskedAgainAtAGrowingDistance()
    {
        await using SourceRig rig = new() { Find = () => throw new HttpRequestException("secret address") };
        rig.Start();
        foreach (double wait in new[] { 0.5, 1, 2, 4 })
        {
            await rig.Time.PassAsync(TimeSpan.FromSeconds(wait));
        }

        rig.Find = () => Task.FromResult(SourceRig.Info());
        await rig.Time.PassAsync(TimeSpan.FromSeconds(8));
        await rig.ConnectAsync();
    }

    [Fact]
    public async Task Find_TokenRefused_Stops()
    {
        await using SourceRig rig = new() { Find = () => throw new DiscordException(DiscordFault.BadToken, "The bot token was refused.", 401) };
        rig.Start();
        Assert.Equal(DiscordFault.BadToken, (await Assert.ThrowsAsync<DiscordException>(() => Eventually.EndsAsync(rig.Running))).Fault);
        Assert.Equal(1, rig.Finds);
    }

    [Theory]
    [InlineData("ws://gateway.example.test")]
    [InlineData("http://gateway.example.test")]
    public async Task Find_AddressInTheClear_StopsBeforeTheTokenGoesThere(string address)
    {
        await using SourceRig rig = new() { Find = () => Task.FromResult(SourceRig.Info(address: address)) };
        rig.Start();
        Assert.Equal(DiscordFault.Refused, (await Assert.ThrowsAsync<DiscordException>(() => Eventually.EndsAsync(rig.Running))).Fault);
        Assert.Equal(0, rig.Connections);
    }

    [Fact]
    public async Task Connection_NeverOpens_IsGivenUp()
    {
        await using SourceRig rig = new();
        rig.Prepare = s => s.NeverOpens = rig.Connections == 0;
        rig.Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        await rig.Time.PassAsync(rig.Options.ConnectTimeout);
        await rig.PassBackOffAsync(0.5);
        Assert.True(socket.Disposed);
        await rig.ConnectAsync();
    }

    [Fact]
    public async Task Hello_NeverComes_IsGivenUp()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        await rig.Time.PassAsync(rig.Options.HelloTimeout);
        await rig.PassBackOffAsync(0.5);
        Assert.Equal(4000, socket.CloseSent);
        Assert.Empty(socket.Sent);
        await rig.ConnectAsync();
    }

    [Fact]
    public async Task Ready_NeverComes_IsIdentifiedAnew()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Hello(600_000);
        await socket.NextSentAsync(2);
        await rig.Time.PassAsync(rig.Options.ReadyTimeout);
        await rig.PassBackOffAsync(0.5);
        await rig.ConnectAsync();
        Assert.Equal(2, rig.Ledger.Kept.Count);
    }

    [Fact]
    public async Task Resumed_NeverComes_IsTriedAgainThreeTimes()
    {
        await using SourceRig rig = new SourceRig().Start();
        (await rig.ConnectAsync(600_000)).Break();
        double wait = 0.5;
        for (int i = 0; i < 3; i++)
        {
            await rig.PassBackOffAsync(wait);
            wait *= 2;
            FakeSocket socket = await rig.NextConnectionAsync();
            socket.Hello(600_000);
            await socket.NextSentAsync(6);
            await rig.Time.PassAsync(rig.Options.ReadyTimeout);
        }

        await rig.PassBackOffAsync(wait);
        await rig.ConnectAsync();
    }

    [Fact]
    public async Task Frame_NeverLeaves_ConnectionIsReplaced()
    {
        await using SourceRig rig = new();
        rig.Prepare = s => s.NeverSends = rig.Connections == 0;
        rig.Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Hello(600_000);
        await rig.Time.PassAsync(rig.Options.SendTimeout);
        await rig.PassBackOffAsync(0.5);
        Assert.True(socket.Aborted);
        await rig.ConnectAsync();
    }
}
