using System.Text.Json.Nodes;

namespace Quarterlight.Chat.Emulator.Gateway;

/// <summary>A session: outlives its connections until it is ended. Used under the platform's lock.</summary>
internal sealed class GatewaySession(string id, long intents, ulong shard, ulong shards, int keep)
{
    private const int ShardShift = 22;
    private readonly Queue<(int Sequence, string Text, Action? Sent)> events = [];

    /// <summary>Its id.</summary>
    public string Id => id;

    /// <summary>Intents asked for.</summary>
    public long Intents => intents;

    /// <summary>Number of the last event.</summary>
    public int Sequence { get; private set; }

    /// <summary>False once it is ended: it cannot be resumed.</summary>
    public bool Alive { get; set; } = true;

    /// <summary>The connection it is on; null while there is none.</summary>
    public GatewayConnection? Connection { get; set; }

    /// <summary>Shard, as sent in READY.</summary>
    public JsonArray ShardJson => new((int)shard, (int)shards);

    /// <summary>True when events of this guild come here; private conversations come to shard 0 (Gateway, Sharding).</summary>
    public bool Covers(ulong? guildId) => (guildId is { } g ? (g >> ShardShift) % shards : 0) == shard;

    /// <summary>Sends an event, now or when the session is resumed.</summary>
    public void Dispatch(string name, JsonNode data, Action? sent = null)
    {
        string text = new JsonObject { ["t"] = name, ["s"] = ++Sequence, ["op"] = Opcodes.Dispatch, ["d"] = data.DeepClone() }.ToJsonString();
        events.Enqueue((Sequence, text, sent));
        while (events.Count > keep)
        {
            events.Dequeue();
        }

        Connection?.Send(text, sent);
    }

    /// <summary>True when everything after a sequence number is still kept.</summary>
    public bool CanReplay(int after) => after == Sequence || (events.TryPeek(out (int Sequence, string Text, Action? Sent) oldest) && oldest.Sequence <= after + 1);

    /// <summary>Events after a sequence number.</summary>
    public IReadOnlyList<(string Text, Action? Sent)> After(int sequence) => [.. events.Where(e => e.Sequence > sequence).Select(e => (e.Text, e.Sent))];
}
