using System.Text.Json;

namespace Quarterlight.Discord.Gateway;

/// <summary>Reads the two frames that start a connection (Hello and Ready structures).</summary>
internal static class GatewayGreeting
{
    // A beat less often than this would notice a dead connection too late to be of use.
    private const int MostIntervalMs = 10 * 60 * 1000;

    /// <summary>Time between heartbeats; null when it cannot be read.</summary>
    public static TimeSpan? ReadInterval(ReadOnlyMemory<byte> data) => Read(data, json =>
        json.Number("heartbeat_interval") is { } ms and > 0 ? TimeSpan.FromMilliseconds(Math.Min(ms, MostIntervalMs)) : (TimeSpan?)null);

    /// <summary>The session; null when it cannot be read.</summary>
    public static GatewaySession? ReadSession(ReadOnlyMemory<byte> data) => Read(data, json => json.Text("session_id") is { Length: > 0 } id
        ? new GatewaySession(id, Uri.TryCreate(json.Text("resume_gateway_url"), UriKind.Absolute, out Uri? address) ? address : null, null)
        : null);

    private static T? Read<T>(ReadOnlyMemory<byte> data, Func<JsonElement, T?> read)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(data);
            return document.RootElement.ValueKind == JsonValueKind.Object ? read(document.RootElement) : default;
        }
        catch (Exception unreadable) when (unreadable is JsonException or InvalidOperationException)
        {
            return default;
        }
    }
}
