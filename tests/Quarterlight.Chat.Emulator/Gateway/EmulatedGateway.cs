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

/// <summary>The gateway (Gateway and Gateway Events references): sessions, and what tests can make it do.</summary>
public sealed class EmulatedGateway
{
    private const long GuildsIntent = 1;
    private const long PrivilegedBits = (1 << 1) | (1 << 8) | (1 << 15);

    // Bits 0 to 16, 20, 21, 24 and 25 are given out (Gateway, List of Intents).
    private const long KnownBits = ((1 << 17) - 1) | (1 << 20) | (1 << 21) | (1 << 24) | (1 << 25);
    private readonly EmulatedPlatform platform;
    private readonly Dictionary<string, GatewaySession> sessions = [];
    private readonly HashSet<GatewayConnection> connections = [];
    private readonly Queue<long> identifies = [];
    private Func<RecordedFrame, bool>? dropOn;
    private int opened;

    internal EmulatedGateway(EmulatedPlatform platform)
    {
        this.platform = platform;
        SessionStartsLeft = platform.Options.SessionStarts;
    }

    /// <summary>Heartbeats are answered. False makes a client see a dead connection.</summary>
    public bool AcknowledgesHeartbeats { get; set; } = true;

    /// <summary>A connection gets HELLO. False leaves it waiting.</summary>
    public bool SaysHello { get; set; } = true;

    /// <summary>IDENTIFY and RESUME are answered. False leaves them waiting.</summary>
    public bool AnswersIdentify { get; set; } = true;

    /// <summary>New connections are taken. False answers the handshake with 503.</summary>
    public bool TakesConnections { get; set; } = true;

    /// <summary>Identifies left today (session_start_limit.remaining).</summary>
    public int SessionStartsLeft { get; set; }

    /// <summary>True once identifies were used up: the platform ends all sessions and resets the token (Gateway, Identifying).</summary>
    public bool TokenWasReset { get; private set; }

    /// <summary>Sessions started so far.</summary>
    public int Identified { get; private set; }

    /// <summary>Sessions taken up again so far.</summary>
    public int Resumed { get; private set; }

    /// <summary>Sessions that can still be used or resumed.</summary>
    public int LiveSessions => platform.Locked(() => sessions.Values.Count(s => s.Alive));

    /// <summary>Connections with a session on them.</summary>
    public int Connected => platform.Locked(() => connections.Count(c => c.Session is not null));

    /// <summary>Sends op 7: the client is to reconnect and resume.</summary>
    public void RequestReconnect() => Each(c => c.Send(Opcodes.Reconnect, null));

    /// <summary>Sends op 1: the client is to send a heartbeat at once.</summary>
    public void RequestHeartbeat() => Each(c => c.Send(Opcodes.Heartbeat, null));

    /// <summary>Sends op 9. When it is not resumable the sessions are gone.</summary>
    /// <param name="resumable">Value of d.</param>
    public void Invalidate(bool resumable) => Each(c =>
    {
        if (!resumable && c.Session is { } session)
        {
            session.Alive = false;
        }

        c.Send(Opcodes.InvalidSession, JsonValue.Create(resumable));
    });

    /// <summary>Closes all connections with a code.</summary>
    /// <param name="code">The code; 1000 and 1001 from here leave the session alive.</param>
    public void CloseClients(int code) => Each(c => c.Close(code, "emulated"));

    /// <summary>Cuts all connections, as a lost network does.</summary>
    public void DropClients() => Each(c => c.Abort());

    /// <summary>Cuts the connection on which the first frame that fits is about to be sent or was received, once.</summary>
    /// <param name="moment">Which frame.</param>
    public void DropOnceOn(Func<RecordedFrame, bool> moment) => dropOn = moment;

    /// <summary>Sends a text as it is, be it unreadable.</summary>
    /// <param name="text">The frame.</param>
    public void SendRaw(string text) => Each(c => c.Send(text));

    /// <summary>Sends an event to all sessions.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="json">Its data.</param>
    public void SendEvent(string name, string json) => Dispatch(null, name, JsonNode.Parse(json)!, null, everywhere: true);

    /// <summary>Forgets all sessions: the next RESUME gets op 9 with false.</summary>
    public void ForgetSessions() => platform.Locked(() =>
    {
        foreach (GatewaySession session in sessions.Values)
        {
            session.Alive = false;
        }

        return 0;
    });

    /// <summary>Waits until a number of clients are connected with a session.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="count">How many.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">There were not as many.</exception>
    public Task ConnectedAsync(CancellationToken cancellation, int count = 1, TimeSpan? within = null) =>
        platform.UntilAsync(() => Connected >= count, $"{count} connected clients (there are {Connected})", cancellation, within);

    /// <summary>Waits until sessions were resumed a number of times in all.</summary>
    /// <param name="times">How often.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">They were not.</exception>
    public Task ResumedAsync(int times, CancellationToken cancellation, TimeSpan? within = null) =>
        platform.UntilAsync(() => Resumed >= times, $"{times} resumes (there were {Resumed})", cancellation, within);

    /// <summary>Waits until sessions were started a number of times in all.</summary>
    /// <param name="times">How often.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">They were not.</exception>
    public Task IdentifiedAsync(int times, CancellationToken cancellation, TimeSpan? within = null) =>
        platform.UntilAsync(() => Identified >= times, $"{times} identifies (there were {Identified})", cancellation, within);

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
        Greet(connection, http.Request.Query);
        int? code = await connection.RunAsync(platform.Options.HeartbeatInterval, stopping).ConfigureAwait(false);
        platform.Locked(() =>
        {
            connections.Remove(connection);
            if (connection.Session is { } session && session.Connection == connection)
            {
                session.Connection = null;
                session.Alive &= code is not (CloseCodes.Normal or CloseCodes.GoingAway);
            }

            return 0;
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
        if (dropOn is { } moment && moment(record))
        {
            dropOn = null;
            to.Abort();
        }
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
        return pair.Count == 2 && pair[0].TryGetUInt64(out ulong shard) && pair[1].TryGetUInt64(out ulong shards) && shard < shards ? (shard, shards) : null;
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

    private void Each(Action<GatewayConnection> act)
    {
        foreach (GatewayConnection connection in platform.Locked(() => connections.ToArray()))
        {
            platform.Locked(() =>
            {
                act(connection);
                return 0;
            });
        }
    }
}
