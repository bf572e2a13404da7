using System.Net.WebSockets;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.Recording;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Gateway;

/// <content>What clients get: the connection, IDENTIFY, RESUME and events.</content>
public sealed partial class EmulatedGateway
{
    private const long GuildsIntent = 1;
    private const long PrivilegedBits = (1 << 1) | (1 << 8) | (1 << 15);

    // Bits 0 to 16, 20, 21, 24 and 25 are given out (Gateway, List of Intents).
    private const long KnownBits = ((1 << 17) - 1) | (1 << 20) | (1 << 21) | (1 << 24) | (1 << 25);

    internal JsonObject StartInfo() => new()
    {
        ["url"] = platform.GatewayUrl,
        ["shards"] = 1,
        ["session_start_limit"] = new JsonObject
        {
            ["total"] = platform.Options.SessionStarts,
            ["remaining"] = SessionStartsLeft,
            ["reset_after"] = 14_400_000,
            ["max_concurrency"] = platform.Options.MaxConcurrency,
        },
    };

    internal async Task HandleAsync(HttpContext http, CancellationToken stopping)
    {
        if (!http.WebSockets.IsWebSocketRequest || !TakesConnections)
        {
            http.Response.StatusCode = TakesConnections ? 400 : 503;
            return;
        }

        using WebSocket socket = await http.WebSockets.AcceptWebSocketAsync().ConfigureAwait(false);
        using var connection = new GatewayConnection(Interlocked.Increment(ref opened), socket, platform);
        platform.Recording.Add(new RecordedFrame { Connection = connection.Number, Kind = FrameKind.Opened, Text = $"{http.Request.Path}{http.Request.QueryString}" });
        platform.Locked(() => connections.Add(connection));
        int? code = null;
        try
        {
            Greet(connection, http.Request.Query);
            code = await connection.RunAsync(platform.Options.HeartbeatInterval, stopping).ConfigureAwait(false);
        }
        finally
        {
            // Whatever ended it: one that stayed would count as connected for ever, and its session as in use.
            Forget(connection, code);
        }
    }

    private void Forget(GatewayConnection connection, int? code)
    {
        platform.Locked(() =>
        {
            connections.Remove(connection);
            if (connection.Session is { } session && session.Connection == connection)
            {
                session.Connection = null;
                session.Alive &= code is not (CloseCodes.Normal or CloseCodes.GoingAway);
            }
        });
        platform.Changes.Raise();
    }

    internal void Take(GatewayConnection from, long? op, JsonElement data) => platform.Locked(() =>
    {
        switch (op)
        {
            case Opcodes.Heartbeat when data.ValueKind is JsonValueKind.Undefined or JsonValueKind.Number:
                if (AcknowledgesHeartbeats)
                {
                    from.Send(Opcodes.HeartbeatAck, null);
                }

                break;
            case Opcodes.Heartbeat:
                from.Close(CloseCodes.DecodeError, "Error while decoding payload.");
                break;
            case Opcodes.Identify or Opcodes.Resume when from.Session is not null:
                from.Close(CloseCodes.AlreadyAuthenticated, "Already authenticated.");
                break;
            case Opcodes.Identify or Opcodes.Resume when !AnswersIdentify:
                break;
            case Opcodes.Identify:
                Identify(from, data);
                break;
            case Opcodes.Resume:
                Resume(from, data);
                break;
            case Opcodes.Presence or Opcodes.VoiceState or Opcodes.RequestMembers or Opcodes.RequestSounds or Opcodes.RequestChannelInfo:
                if (from.Session is null)
                {
                    from.Close(CloseCodes.NotAuthenticated, "Not authenticated.");
                }

                break;
            default:
                from.Close(CloseCodes.UnknownOpcode, "Unknown opcode.");
                break;
        }

        return 0;
    });

    internal void Note(GatewayConnection to, string text)
    {
        using JsonDocument? frame = Parse(text);
        JsonElement root = frame?.RootElement ?? default;
        var record = new RecordedFrame
        {
            Connection = to.Number,
            Kind = FrameKind.Sent,
            Op = (int?)root.Whole("op"),
            Event = root.Text("t"),
            Sequence = (int?)root.Whole("s"),
            Text = text,
        };
        platform.Recording.Add(record);
        DropIfTold(to, record);
    }

    internal bool DropIfTold(GatewayConnection on, RecordedFrame frame)
    {
        if (dropOn is not { } moment || !moment(frame))
        {
            return false;
        }

        dropOn = null;
        on.Abort();
        return true;
    }

    internal void Dispatch(ulong? guildId, string name, JsonNode data, Action? sent, bool everywhere = false) => platform.Locked(() =>
    {
        foreach (GatewaySession session in sessions.Values.Where(s => s.Alive && (everywhere || s.Covers(guildId))))
        {
            session.Dispatch(name, data, sent);
        }

        return 0;
    });

    internal void Stop()
    {
        foreach (GatewayConnection connection in platform.Locked(() => connections.ToArray()))
        {
            connection.Abort();
        }
    }

    private void Greet(GatewayConnection connection, IQueryCollection query)
    {
        if (query["v"] != "10" && query["v"] != "9")
        {
            connection.Close(CloseCodes.InvalidApiVersion, "Invalid API version.");
        }
        else if (query["encoding"] != "json" || query.ContainsKey("compress"))
        {
            connection.Close(CloseCodes.DecodeError, "This gateway speaks plain JSON only.");
        }
        else if (SaysHello)
        {
            connection.Send(Opcodes.Hello, new JsonObject { ["heartbeat_interval"] = (int)platform.Options.HeartbeatInterval.TotalMilliseconds });
        }
    }

    private void Identify(GatewayConnection from, JsonElement data)
    {
        if (data.Text("token") != platform.Options.Token || TokenWasReset)
        {
            from.Close(CloseCodes.AuthenticationFailed, "Authentication failed.");
            return;
        }

        JsonElement properties = data.Field("properties") ?? default;
        if (((string[])["os", "browser", "device"]).Any(n => properties.Text(n) is null))
        {
            from.Close(CloseCodes.DecodeError, "Error while decoding payload.");
            return;
        }

        if (data.Whole("intents") is not { } intents || intents < 0 || (intents & ~KnownBits) != 0)
        {
            from.Close(CloseCodes.InvalidIntents, "Invalid intent(s).");
            return;
        }

        if ((intents & PrivilegedBits & ~platform.Options.PrivilegedIntents) != 0)
        {
            from.Close(CloseCodes.DisallowedIntents, "Disallowed intent(s).");
            return;
        }

        if (Shard(data) is not var (shard, shards))
        {
            from.Close(CloseCodes.InvalidShard, "Invalid shard.");
            return;
        }

        if (SessionStartsLeft <= 0)
        {
            ResetToken();
        }
        else if (TooFast())
        {
            // More identifies than max_concurrency in five seconds (from memory: answered with op 9).
            from.Send(Opcodes.InvalidSession, false);
        }
        else
        {
            Start(from, intents, shard, shards);
        }
    }

    private void Start(GatewayConnection from, long intents, ulong shard, ulong shards)
    {
        SessionStartsLeft--;
        Identified++;
        string id = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{platform.Options.Seed} session {Identified}")))[..32];
        var session = new GatewaySession(id, intents, shard, shards, platform.Options.ReplayEvents) { Connection = from };
        from.Session = sessions[id] = session;
        EmulatedGuild[] guilds = [.. platform.Guilds.Where(g => session.Covers(g.Id))];
        var ready = new JsonObject
        {
            ["v"] = 10,
            ["user"] = platform.BotJson(),
            ["guilds"] = new JsonArray([.. guilds.Select(g => (JsonNode)new JsonObject { ["id"] = WorldJson.Text(g.Id), ["unavailable"] = true })]),
            ["session_id"] = id,
            ["resume_gateway_url"] = platform.ResumeUrl,
            ["shard"] = session.ShardJson,
            ["application"] = new JsonObject { ["id"] = WorldJson.Text(platform.ApplicationId), ["flags"] = 0, ["flags_new"] = "0" },
        };
        platform.Recording.Sent("in:ready", ready);
        session.Dispatch("READY", ready);
        foreach (EmulatedGuild guild in guilds.Where(_ => (intents & GuildsIntent) != 0))
        {
            JsonObject json = WorldJson.Guild(guild, platform.BotJson());
            platform.Recording.Sent("in:guild", json);
            session.Dispatch("GUILD_CREATE", json);
        }

        platform.Changes.Raise();
    }

    private void Resume(GatewayConnection from, JsonElement data)
    {
        if (data.Text("token") != platform.Options.Token || TokenWasReset)
        {
            from.Close(CloseCodes.AuthenticationFailed, "Authentication failed.");
            return;
        }

        if (!sessions.TryGetValue(data.Text("session_id") ?? "", out GatewaySession? session) || !session.Alive)
        {
            from.Send(Opcodes.InvalidSession, false);
            return;
        }

        if (data.Whole("seq") is not { } sequence || sequence < 0 || sequence > session.Sequence)
        {
            from.Close(CloseCodes.InvalidSeq, "Invalid seq.");
            return;
        }

        if (!session.CanReplay((int)sequence))
        {
            session.Alive = false;
            from.Send(Opcodes.InvalidSession, false);
            return;
        }

        session.Connection?.Abort();
        session.Connection = from;
        from.Session = session;
        foreach ((string missed, Action? sent) in session.After((int)sequence))
        {
            from.Send(missed, sent);
        }

        Resumed++;
        session.Dispatch("RESUMED", new JsonObject());
        platform.Changes.Raise();
    }

    private void ResetToken()
    {
        TokenWasReset = true;
        foreach (GatewayConnection connection in connections)
        {
            connection.Close(CloseCodes.AuthenticationFailed, "Authentication failed.");
        }

        foreach (GatewaySession session in sessions.Values)
        {
            session.Alive = false;
        }
    }

    private bool TooFast()
    {
        long now = TimeProvider.System.GetTimestamp();
        while (identifies.TryPeek(out long first) && TimeProvider.System.GetElapsedTime(first, now) >= platform.Options.IdentifyWindow)
        {
            identifies.Dequeue();
        }

        bool tooFast = identifies.Count >= platform.Options.MaxConcurrency;
        if (!tooFast)
        {
            identifies.Enqueue(now);
        }

        return tooFast;
    }

    private static (ulong Shard, ulong Shards)? Shard(JsonElement data)
    {
        if (data.Field("shard") is null)
        {
            return (0, 1);
        }

        IReadOnlyList<JsonElement> pair = data.List("shard");
        return pair.Count == 2 && pair.All(p => p.ValueKind == JsonValueKind.Number) && pair[0].TryGetUInt64(out ulong shard) && pair[1].TryGetUInt64(out ulong shards) && shard < shards ? (shard, shards) : null;
    }

    private static JsonDocument? Parse(string text)
    {
        try
        {
            return JsonDocument.Parse(text);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
