using System.Net.WebSockets;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator;

namespace Quarterlight.Emulator.Tests;

/// <summary>Mistakes of a gateway client, each refused with the close code that is documented (Opcodes and Status Codes, Gateway Close Event Codes).</summary>
public sealed class BadGatewayClientTests
{
    private const int GuildMembersIntent = 1 << 1;
    private const int MessageContentIntent = 1 << 15;

    public static TheoryData<string, int> Frames => new()
    {
        { "identify: wrong token", 4004 },
        { "identify: no token", 4004 },
        { "identify: no intents", 4013 },
        { "identify: intents as text", 4013 },
        { "identify: unknown intent bit", 4013 },
        { "identify: intent GUILD_MEMBERS not enabled", 4014 },
        { "identify: intent MESSAGE_CONTENT not enabled", 4014 },
        { "identify: no properties", 4002 },
        { "identify: shard outside", 4010 },
        { "identify: shard as text", 4010 },
        { "no JSON", 4002 },
        { "two JSON values", 4002 },
        { "a list", 4002 },
        { "binary frame", 4002 },
        { "frame of 5000 bytes", 4002 },
        { "presence before identify", 4003 },
        { "members before identify", 4003 },
        { "opcode 99", 4001 },
        { "opcode 0", 4001 },
        { "no opcode", 4001 },
        { "heartbeat with text", 4002 },
        { "resume: wrong token", 4004 },
    };

    [Theory]
    [MemberData(nameof(Frames))]
    public async Task FirstFrame_Mistaken_IsClosed(string mistake, int code)
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: TestContext.Current.CancellationToken);
        using GatewayClient client = await GatewayClient.ConnectAsync(platform);
        string frame = mistake switch
        {
            "identify: wrong token" => GatewayClient.Identify(platform, "token", "another"),
            "identify: no token" => GatewayClient.Identify(platform, "token"),
            "identify: no intents" => GatewayClient.Identify(platform, "intents"),
            "identify: intents as text" => GatewayClient.Identify(platform, "intents", "0"),
            "identify: unknown intent bit" => GatewayClient.Identify(platform, "intents", 1 << 30),
            "identify: intent GUILD_MEMBERS not enabled" => GatewayClient.Identify(platform, "intents", GuildMembersIntent),
            "identify: intent MESSAGE_CONTENT not enabled" => GatewayClient.Identify(platform, "intents", MessageContentIntent),
            "identify: no properties" => GatewayClient.Identify(platform, "properties"),
            "identify: shard outside" => GatewayClient.Identify(platform, "shard", new JsonArray(1, 1)),
            "identify: shard as text" => GatewayClient.Identify(platform, "shard", new JsonArray("0", "1")),
            "no JSON" => "hello",
            "two JSON values" => """{"op":1,"d":null}{"op":1,"d":null}""",
            "a list" => "[1]",
            "binary frame" => """{"op":1,"d":null}""",
            "frame of 5000 bytes" => $$"""{"op":1,"d":null,"x":"{{new string('x', 5000)}}"}""",
            "presence before identify" => """{"op":3,"d":{}}""",
            "members before identify" => """{"op":8,"d":{}}""",
            "opcode 99" => """{"op":99,"d":null}""",
            "opcode 0" => """{"op":0,"d":null}""",
            "no opcode" => """{"d":null}""",
            "heartbeat with text" => """{"op":1,"d":"1"}""",
            "resume: wrong token" => GatewayClient.Resume("another", "x", 1),
            _ => throw new ArgumentException(mistake, nameof(mistake)),
        };

        await client.SendAsync(frame, mistake == "binary frame" ? WebSocketMessageType.Binary : WebSocketMessageType.Text);

        Assert.Equal(code, await client.ClosedAsync());
    }

    [Theory]
    [InlineData("v=6&encoding=json", 4012)]
    [InlineData("encoding=json", 4012)]
    [InlineData("v=10&encoding=etf", 4002)]
    [InlineData("v=10&encoding=json&compress=zlib-stream", 4002)]
    public async Task Query_Mistaken_IsClosed(string query, int code)
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: TestContext.Current.CancellationToken);
        using GatewayClient client = await GatewayClient.ConnectAsync(platform, query);
        Assert.Equal(code, await client.ClosedAsync());
    }

    [Fact]
    public async Task Identify_Twice_IsClosed()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: TestContext.Current.CancellationToken);
        (GatewayClient client, _) = await GatewayClient.IdentifyAsync(platform);
        await client.SendAsync(GatewayClient.Identify(platform));
        Assert.Equal(4005, await client.ClosedAsync());
        client.Dispose();
    }

    [Fact]
    public async Task Resume_SequenceFromTheFuture_IsClosed()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: TestContext.Current.CancellationToken);
        (GatewayClient first, string session) = await GatewayClient.IdentifyAsync(platform);
        using GatewayClient second = await GatewayClient.ConnectAsync(platform, url: platform.ResumeUrl);
        await second.SendAsync(GatewayClient.Resume(platform.Token, session, 99));
        Assert.Equal(4007, await second.ClosedAsync());
        first.Dispose();
    }

    [Fact]
    public async Task Client_WithoutHeartbeats_IsClosed()
    {
        var options = new PlatformOptions { HeartbeatInterval = TimeSpan.FromSeconds(1) };
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(options, TestContext.Current.CancellationToken);
        (GatewayClient client, _) = await GatewayClient.IdentifyAsync(platform);
        Assert.Equal(4000, await client.ClosedAsync());
        client.Dispose();
    }

    [Fact]
    public async Task Frames_MoreThan120InAMinute_AreClosed()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: TestContext.Current.CancellationToken);
        using GatewayClient client = await GatewayClient.ConnectAsync(platform);
        for (int i = 0; i < 121; i++)
        {
            await client.SendAsync("""{"op":1,"d":null}""");
        }

        Assert.Equal(4008, await client.ClosedAsync());
        Assert.Equal(120, platform.Recording.Frames.Count(f => f.Op == 1));
    }

    [Fact]
    public async Task Identifies_UsedUp_ResetTheToken()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(new PlatformOptions { SessionStarts = 1 }, TestContext.Current.CancellationToken);
        (GatewayClient first, _) = await GatewayClient.IdentifyAsync(platform);
        using GatewayClient second = await GatewayClient.ConnectAsync(platform);
        await second.SendAsync(GatewayClient.Identify(platform));
        Assert.Equal(4004, await second.ClosedAsync());
        Assert.Equal(4004, await first.ClosedAsync());
        using var api = new ApiClient(platform);
        Assert.Equal(401, (await api.CallAsync("GET", "/gateway/bot")).Status);
        first.Dispose();
    }
}
