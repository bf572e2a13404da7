using System.Buffers;
using System.Text.Json;

namespace Quarterlight.Discord.Gateway;

/// <summary>Writes the three frames we ever send (Identify, Resume and Heartbeat structures).</summary>
internal static class GatewayWriter
{
    private const string Client = "quarterlight";

    /// <summary>Starts a session.</summary>
    public static ReadOnlyMemory<byte> Identify(GatewayOptions options) => Write(GatewayOpcode.Identify, json =>
    {
        json.WriteStartObject("d");
        json.WriteString("token", options.Token);
        json.WriteNumber("intents", options.Intents);
        json.WriteStartObject("properties");
        json.WriteString("os", OperatingSystem.IsWindows() ? "windows" : OperatingSystem.IsMacOS() ? "macos" : "linux");
        json.WriteString("browser", Client);
        json.WriteString("device", Client);
        json.WriteEndObject();
        json.WriteStartArray("shard");
        json.WriteNumberValue(options.ShardId);
        json.WriteNumberValue(options.ShardCount);
        json.WriteEndArray();
        json.WriteEndObject();
    });

    /// <summary>Goes on with a session.</summary>
    public static ReadOnlyMemory<byte> Resume(GatewayOptions options, GatewaySession session) => Write(GatewayOpcode.Resume, json =>
    {
        json.WriteStartObject("d");
        json.WriteString("token", options.Token);
        json.WriteString("session_id", session.Id);
        json.WriteNumber("seq", session.Sequence ?? 0);
        json.WriteEndObject();
    });

    /// <summary>Says that we are there, and how far we have read.</summary>
    public static ReadOnlyMemory<byte> Heartbeat(long? sequence) => Write(GatewayOpcode.Heartbeat, json =>
    {
        if (sequence is { } reached)
        {
            json.WriteNumber("d", reached);
        }
        else
        {
            json.WriteNull("d");
        }
    });

    private static ReadOnlyMemory<byte> Write(int opcode, Action<Utf8JsonWriter> data)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteNumber("op", opcode);
            data(json);
            json.WriteEndObject();
        }

        return buffer.WrittenMemory;
    }
}
