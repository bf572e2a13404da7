using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>What follows from each close of the other side (Gateway Close Event Codes).</summary>
public sealed class CloseCodeTests
{
    [Theory]
    [InlineData(null)]
    [InlineData(1001)]
    [InlineData(1006)]
    [InlineData(1011)]
    [InlineData(4000)]
    [InlineData(4001)]
    [InlineData(4002)]
    [InlineData(4005)]
    [InlineData(4008)]
    public async Task Close_SessionStays_IsResumed(int? code)
    {
        await using SourceRig rig = new SourceRig().Start();
        (await rig.ConnectAsync()).Close(code);
        await rig.PassBackOffAsync(0.5);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(6);
    }

    [Theory]
    [InlineData(1000)]
    [InlineData(4003)]
    [InlineData(4007)]
    [InlineData(4009)]
    public async Task Close_SessionIsOver_IsIdentifiedAnew(int code)
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        rig.Time.Advance(TimeSpan.FromSeconds(10));
        socket.Close(code);
        await rig.PassBackOffAsync(0.5);
        FakeSocket second = await rig.NextConnectionAsync();
        Assert.Equal("gateway.example.test", second.Address!.Host);
        second.Hello();
        await second.NextSentAsync(2);
    }

    [Theory]
    [InlineData(4004, DiscordFault.BadToken, "token")]
    [InlineData(4010, DiscordFault.BadIdentify, "shard")]
    [InlineData(4011, DiscordFault.BadIdentify, "shards")]
    [InlineData(4012, DiscordFault.BadIdentify, "version")]
    [InlineData(4013, DiscordFault.BadIdentify, "intents")]
    [InlineData(4014, DiscordFault.BadIdentify, "intents")]
    public async Task Close_TryingAgainWouldNotHelp_StopsWithOneSentence(int code, DiscordFault fault, string word)
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Hello();
        await socket.NextSentAsync(2);
        socket.Close(code);
        DiscordException stopped = await Assert.ThrowsAsync<DiscordException>(() => Eventually.EndsAsync(rig.Running));
        Assert.Equal((fault, (int?)code), (stopped.Fault, stopped.Code));
        Assert.Contains(word, stopped.Message, StringComparison.Ordinal);
        Assert.Equal(1, stopped.Message.Count(c => c == '.'));
        Assert.DoesNotContain('\n', stopped.Message);
        Assert.Equal(1, rig.Connections);
        Assert.Equal((false, "stopped"), (rig.Source.Health.Ready, rig.Source.Health.Detail));
    }

    [Fact]
    public void Fault_EveryCodeThatStops_HasASentenceOfItsOwn()
    {
        int[] stopping = [.. Enumerable.Range(4000, 100).Where(c => CloseCodes.Next(c) == NextStep.Stop)];
        Assert.Equal([4004, 4010, 4011, 4012, 4013, 4014], stopping);
        Assert.Equal(stopping.Length, stopping.Select(c => CloseCodes.Fault(c).Message).Distinct().Count());
    }
}
