using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Recording;

namespace Quarterlight.Emulator.Tests;

/// <summary>Sessions of the gateway: what a well-behaved client gets (Gateway, Connection Lifecycle).</summary>
public sealed class SessionTests : IAsyncLifetime
{
    private EmulatedPlatform platform = null!;
    private ApiClient api = null!;

    public async ValueTask InitializeAsync()
    {
        platform = await EmulatedPlatform.StartAsync(StillClock.Options, TestContext.Current.CancellationToken);
        api = new ApiClient(platform);
        await api.CallAsync("PUT", api.Commands, """[{"name":"help","description":"x"}]""");
    }

    public async ValueTask DisposeAsync()
    {
        api.Dispose();
        await platform.DisposeAsync();
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    public async Task Guilds_ComeOnlyWithTheirIntent(int intents, bool come)
    {
        using GatewayClient client = await GatewayClient.ConnectAsync(platform);
        await client.SendAsync(GatewayClient.Identify(platform, "intents", intents));
        await client.UntilAsync(f => (string?)f["t"] == "READY");
        platform.Crew.Slash("help");
        JsonNode next = await client.UntilAsync(f => (int)f["op"]! == 0);
        Assert.Equal(come ? "GUILD_CREATE" : "INTERACTION_CREATE", (string?)next["t"]);
        Assert.Equal(2, (int)next["s"]!);
    }

    [Fact]
    public async Task Resume_BehindACut_ReplaysTheGapInOrder()
    {
        (GatewayClient first, string session) = await GatewayClient.IdentifyAsync(platform);
        platform.Gateway.DropClients();
        await Assert.ThrowsAnyAsync<Exception>(first.ClosedAsync);
        await platform.UntilAsync(() => platform.Gateway.Connected == 0, "the cut", TestContext.Current.CancellationToken);
        SentInteraction[] missed = [platform.Crew.Slash("help"), platform.Crew.Slash("help")];
        using GatewayClient second = await GatewayClient.ConnectAsync(platform, url: platform.ResumeUrl);
        await second.SendAsync(GatewayClient.Resume(platform.Token, session, 1));
        var seen = new List<string?>();
        await second.UntilAsync(f =>
        {
            seen.Add((int)f["op"]! == 0 ? $"{f["s"]} {f["t"]} {f["d"]!["id"]}" : null);
            return (string?)f["t"] == "RESUMED";
        });
        Assert.Equal([$"2 INTERACTION_CREATE {missed[0].Id}", $"3 INTERACTION_CREATE {missed[1].Id}", "4 RESUMED "], seen.Where(s => s is not null));
        first.Dispose();
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Cut_WhileEventsAreOnTheirWay_LeavesNoConnectionBehind(bool invalid)
    {
        for (int round = 0; round < 8; round++)
        {
            (GatewayClient client, _) = await GatewayClient.IdentifyAsync(platform);
            using (client)
            {
                Task reading = Task.Run(client.ClosedAsync, TestContext.Current.CancellationToken);
                for (int i = 0; i < 50; i++)
                {
                    platform.Crew.Slash("help");
                }

                if (invalid)
                {
                    platform.Gateway.Invalidate(resumable: false);
                }

                platform.Gateway.DropClients();
                await platform.UntilAsync(() => platform.Gateway.Connected == 0, $"the end of connection {round}", TestContext.Current.CancellationToken, TimeSpan.FromSeconds(5));
                await Assert.ThrowsAnyAsync<Exception>(() => reading);
            }
        }
    }

    [Theory]
    [InlineData(1000, false)]
    [InlineData(1001, false)]
    [InlineData(4000, true)]
    public async Task Close_ByTheClient_EndsTheSessionOrNot(int code, bool resumable)
    {
        (GatewayClient first, string session) = await GatewayClient.IdentifyAsync(platform);
        await first.CloseAsync(code);
        await platform.UntilAsync(() => platform.Gateway.Connected == 0, "the close", TestContext.Current.CancellationToken);
        using GatewayClient second = await GatewayClient.ConnectAsync(platform, url: platform.ResumeUrl);
        await second.SendAsync(GatewayClient.Resume(platform.Token, session, 1));
        JsonNode next = await second.UntilAsync(f => (int)f["op"]! is 0 or 9);
        Assert.Equal(resumable ? "RESUMED" : null, (string?)next["t"]);
        if (!resumable)
        {
            Assert.False((bool)next["d"]!);
        }

        first.Dispose();
    }

    [Fact]
    public async Task Identify_TooSoonAfterAnother_IsSentBack()
    {
        await using EmulatedPlatform strict = await EmulatedPlatform.StartAsync(new PlatformOptions { IdentifyWindow = TimeSpan.FromSeconds(5) }, TestContext.Current.CancellationToken);
        (GatewayClient first, _) = await GatewayClient.IdentifyAsync(strict);
        using GatewayClient second = await GatewayClient.ConnectAsync(strict);
        await second.SendAsync(GatewayClient.Identify(strict));
        Assert.False((bool)(await second.UntilAsync(f => (int)f["op"]! == 9))["d"]!);
        Assert.Equal(1, strict.Gateway.Identified);
        first.Dispose();
    }

    [Fact]
    public async Task Orders_OfTheTest_ReachTheClient()
    {
        (GatewayClient client, _) = await GatewayClient.IdentifyAsync(platform);
        platform.Gateway.RequestHeartbeat();
        await client.UntilAsync(f => (int)f["op"]! == 1);
        platform.Gateway.RequestReconnect();
        await client.UntilAsync(f => (int)f["op"]! == 7);
        platform.Gateway.Invalidate(true);
        Assert.True((bool)(await client.UntilAsync(f => (int)f["op"]! == 9))["d"]!);
        await client.SendAsync("""{"op":1,"d":1}""");
        await client.UntilAsync(f => (int)f["op"]! == 11);
        SentInteraction asked = platform.Crew.Slash("help");
        asked.DeliverAgain();
        for (int i = 0; i < 2; i++)
        {
            JsonNode delivered = await client.UntilAsync(f => (string?)f["t"] == "INTERACTION_CREATE");
            Assert.Equal(asked.Id.ToString(System.Globalization.CultureInfo.InvariantCulture), (string?)delivered["d"]!["id"]);
        }

        platform.Gateway.CloseClients(4009);
        Assert.Equal(4009, await client.ClosedAsync());
        client.Dispose();
    }

    [Fact]
    public async Task Starts_AreCounted()
    {
        (GatewayClient client, _) = await GatewayClient.IdentifyAsync(platform);
        ApiResult info = await api.CallAsync("GET", "/gateway/bot");
        Assert.Equal(999, (int)info.Json!["session_start_limit"]!["remaining"]!);
        Assert.Equal(platform.GatewayUrl, (string?)info.Json["url"]);
        client.Dispose();
    }
    [Fact]
    public async Task Drop_OnAFrame_LosesItUntilTheResume()
    {
        (GatewayClient first, string session) = await GatewayClient.IdentifyAsync(platform);
        platform.Gateway.DropOnceOn(f => f is { Kind: FrameKind.Sent, Event: "INTERACTION_CREATE" });
        SentInteraction asked = platform.Crew.Slash("help");
        await Assert.ThrowsAnyAsync<Exception>(() => first.UntilAsync(f => (string?)f["t"] == "INTERACTION_CREATE"));
        using GatewayClient second = await GatewayClient.ConnectAsync(platform, url: platform.ResumeUrl);
        await second.SendAsync(GatewayClient.Resume(platform.Token, session, 1));
        JsonNode replayed = await second.UntilAsync(f => (string?)f["t"] == "INTERACTION_CREATE");
        Assert.Equal(asked.Token, (string?)replayed["d"]!["token"]);
        first.Dispose();
    }

    [Fact]
    public async Task Dump_HoldsBodiesAndFramesByKind()
    {
        (GatewayClient client, _) = await GatewayClient.IdentifyAsync(platform);
        SentInteraction asked = platform.Crew.Slash("help");
        await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":4,"data":{"content":"x"}}""");
        string[] kinds = [.. platform.Recording.DumpLines().Select(l => (string)JsonNode.Parse(l)!["kind"]!)];
        Assert.Equal(["commands", "callback", "identify", "in:command", "in:ready", "in:interaction"], kinds);
        client.Dispose();
    }
}
