using System.Net.WebSockets;
using System.Text;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator;

namespace Quarterlight.Emulator.Tests;

/// <summary>A gateway client that sends what it is told, right or wrong.</summary>
internal sealed class GatewayClient : IDisposable
{
    private readonly ClientWebSocket socket = new();

    private GatewayClient()
    {
    }

    /// <summary>Connects; does not wait for HELLO.</summary>
    public static async Task<GatewayClient> ConnectAsync(EmulatedPlatform platform, string query = "v=10&encoding=json", string? url = null)
    {
        var client = new GatewayClient();
        await client.socket.ConnectAsync(new Uri($"{url ?? platform.GatewayUrl}?{query}"), TestContext.Current.CancellationToken);
        return client;
    }

    /// <summary>Connects, identifies and reads up to READY.</summary>
    public static async Task<(GatewayClient Client, string SessionId)> IdentifyAsync(EmulatedPlatform platform)
    {
        GatewayClient client = await ConnectAsync(platform);
        await client.SendAsync(Identify(platform));
        JsonNode ready = await client.UntilAsync(f => (string?)f["t"] == "READY");
        return (client, (string)ready["d"]!["session_id"]!);
    }

    /// <summary>An IDENTIFY, with one field put in place of the right one.</summary>
    public static string Identify(EmulatedPlatform platform, string? field = null, JsonNode? value = null)
    {
        var data = new JsonObject
        {
            ["token"] = platform.Token,
            ["intents"] = 0,
            ["properties"] = new JsonObject { ["os"] = "linux", ["browser"] = "test", ["device"] = "test" },
        };
        if (field is not null)
        {
            data[field] = value;
        }

        return new JsonObject { ["op"] = 2, ["d"] = data }.ToJsonString();
    }

    /// <summary>A RESUME.</summary>
    public static string Resume(string token, string session, int? sequence) =>
        new JsonObject { ["op"] = 6, ["d"] = new JsonObject { ["token"] = token, ["session_id"] = session, ["seq"] = sequence } }.ToJsonString();

    public Task SendAsync(string text, WebSocketMessageType type = WebSocketMessageType.Text) =>
        socket.SendAsync(Encoding.UTF8.GetBytes(text), type, endOfMessage: true, TestContext.Current.CancellationToken);

    /// <summary>Reads frames up to the first that fits.</summary>
    public async Task<JsonNode> UntilAsync(Func<JsonNode, bool> fits)
    {
        while (true)
        {
            JsonNode frame = await ReadAsync() ?? throw new InvalidOperationException($"closed with {(int?)socket.CloseStatus}");
            if (fits(frame))
            {
                return frame;
            }
        }
    }

    /// <summary>Reads up to the end and gives its code.</summary>
    public async Task<int?> ClosedAsync()
    {
        while (await ReadAsync() is not null)
        {
        }

        return (int?)socket.CloseStatus;
    }

    public Task CloseAsync(int code) => socket.CloseAsync((WebSocketCloseStatus)code, null, TestContext.Current.CancellationToken);

    public void Dispose() => socket.Dispose();

    private async Task<JsonNode?> ReadAsync()
    {
        using var text = new MemoryStream();
        byte[] buffer = new byte[16_384];
        WebSocketReceiveResult result;
        do
        {
            result = await socket.ReceiveAsync(buffer, TestContext.Current.CancellationToken);
            if (result.MessageType == WebSocketMessageType.Close)
            {
                return null;
            }

            text.Write(buffer, 0, result.Count);
        }
        while (!result.EndOfMessage);

        return JsonNode.Parse(text.ToArray());
    }
}
