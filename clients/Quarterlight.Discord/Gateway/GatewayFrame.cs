using System.Text.Json;

namespace Quarterlight.Discord.Gateway;

/// <summary>Operations of the gateway we speak (Gateway Opcodes).</summary>
internal static class GatewayOpcode
{
    public const int Dispatch = 0;
    public const int Heartbeat = 1;
    public const int Identify = 2;
    public const int Resume = 6;
    public const int Reconnect = 7;
    public const int InvalidSession = 9;
    public const int Hello = 10;
    public const int HeartbeatAck = 11;
}

/// <summary>Events we act on.</summary>
internal enum GatewayEvent
{
    Other,
    Ready,
    Resumed,
    InteractionCreate,
}

/// <summary>A frame as received: what stands around the data is read, the data itself is only found. Valid while the buffer is.</summary>
internal readonly struct GatewayFrame
{
    private GatewayFrame(int opcode, long? sequence, GatewayEvent name, ReadOnlyMemory<byte> data)
    {
        Opcode = opcode;
        Sequence = sequence;
        Event = name;
        Data = data;
    }

    /// <summary>Operation.</summary>
    public int Opcode { get; }

    /// <summary>Sequence number; null outside <see cref="GatewayOpcode.Dispatch"/>.</summary>
    public long? Sequence { get; }

    /// <summary>Name of the event.</summary>
    public GatewayEvent Event { get; }

    /// <summary>JSON of the data; empty when there is none.</summary>
    public ReadOnlyMemory<byte> Data { get; }

    /// <summary>Reads a frame; false when it is none.</summary>
    public static bool TryRead(ReadOnlyMemory<byte> utf8, out GatewayFrame frame)
    {
        frame = default;
        try
        {
            return TryReadObject(utf8, out frame);
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static bool TryReadObject(ReadOnlyMemory<byte> utf8, out GatewayFrame frame)
    {
        frame = default;
        var reader = new Utf8JsonReader(utf8.Span);
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
        {
            return false;
        }

        int? opcode = null;
        long? sequence = null;
        GatewayEvent name = GatewayEvent.Other;
        ReadOnlyMemory<byte> data = default;
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            if (reader.ValueTextEquals("op"u8))
            {
                reader.Read();
                opcode = reader.TokenType == JsonTokenType.Number && reader.TryGetInt32(out int number) ? number : null;
            }
            else if (reader.ValueTextEquals("s"u8))
            {
                reader.Read();
                sequence = reader.TokenType == JsonTokenType.Number && reader.TryGetInt64(out long number) ? number : null;
            }
            else if (reader.ValueTextEquals("t"u8))
            {
                reader.Read();
                name = reader.TokenType == JsonTokenType.String ? NameOf(ref reader) : GatewayEvent.Other;
            }
            else if (reader.ValueTextEquals("d"u8))
            {
                reader.Read();
                int start = (int)reader.TokenStartIndex;
                reader.Skip();
                data = utf8[start..(int)reader.BytesConsumed];
                continue;
            }
            else
            {
                reader.Read();
            }

            reader.Skip();
        }

        // Nothing but the object: a second read throws when something follows.
        if (opcode is not { } read || reader.Read())
        {
            return false;
        }

        frame = new GatewayFrame(read, sequence, name, data);
        return true;
    }

    private static GatewayEvent NameOf(ref Utf8JsonReader reader) =>
        reader.ValueTextEquals("INTERACTION_CREATE"u8) ? GatewayEvent.InteractionCreate
        : reader.ValueTextEquals("READY"u8) ? GatewayEvent.Ready
        : reader.ValueTextEquals("RESUMED"u8) ? GatewayEvent.Resumed
        : GatewayEvent.Other;
}
