using System.Text.Json;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Recording;
using Quarterlight.Chat.Emulator.Rest;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Control;

/// <summary>Takes orders written as JSON objects {"do": ...}: what the C# driver offers, for other languages.</summary>
internal sealed class ControlDesk(EmulatedPlatform platform)
{
    private readonly Dictionary<string, VisibleMessage> posted = [];

    /// <summary>Where the emulator listens, and what a bot needs.</summary>
    public JsonObject Info() => new()
    {
        ["address"] = platform.Address.ToString().TrimEnd('/'),
        ["api"] = new Uri(platform.Address, "/api").ToString(),
        ["cdn"] = platform.FileHost.ToString(),
        ["gateway"] = platform.GatewayUrl,
        ["token"] = platform.Token,
        ["applicationId"] = WorldJson.Text(platform.ApplicationId),
        ["guildId"] = WorldJson.Text(platform.Crew.Channel.Guild!.Id),
        ["publicKey"] = platform.PublicKey,
    };

    /// <summary>Carries an order out: {"ok":true, ...} or {"ok":false,"problem":...}.</summary>
    public async Task<JsonObject> DoAsync(string line, CancellationToken cancellation)
    {
        try
        {
            using var document = JsonDocument.Parse(line);
            JsonObject result = await DoAsync(document.RootElement, cancellation).ConfigureAwait(false);
            result["ok"] = true;
            return result;
        }
        catch (Exception problem) when (problem is JsonException or ArgumentException or InvalidOperationException or TimeoutException or FormatException)
        {
            return new JsonObject { ["ok"] = false, ["problem"] = problem.Message };
        }
    }

    private async Task<JsonObject> DoAsync(JsonElement order, CancellationToken cancellation)
    {
        UserInChannel crew = platform.Crew;
        switch (order.Text("do"))
        {
            case "info": return Info();
            case "slash": return Sent(crew.Slash(order.Text("command")!, Options(order)));
            case "type": return Sent(crew.Type(order.Text("command")!, order.Text("option")!, order.Text("text") ?? "", Options(order)));
            case "press": return Sent(crew.Press(Message(order), order.Text("button")!));
            case "forge": return Sent(crew.PressForged(Message(order), order.Text("customId")!));
            case "submit": return Submit(order);
            case "post": return Post(order);
            case "menu": return Sent(crew.Menu(order.Text("command")!, posted[order.Text("message")!]));
            case "again": return Sent(Again(Interaction(order)));
            case "state": return State(Interaction(order));
            case "wait":
                await WaitAsync(order, cancellation).ConfigureAwait(false);
                return State(Interaction(order));
            case "gateway": return Gateway(order);
            case "waitGateway":
                await WaitGatewayAsync(order, cancellation).ConfigureAwait(false);
                return GatewayState();
            case "fault": return Fault(order);
            case "clearFaults":
                platform.Faults.Clear();
                return [];
            case "advance":
                platform.Clock.Advance(TimeSpan.FromMilliseconds(order.Whole("ms") ?? 0));
                return [];
            case "endpoint":
                await platform.Endpoint.SetAsync(new Uri(order.Text("url")!), cancellation).ConfigureAwait(false);
                return [];
            case "requests": return new JsonObject { ["requests"] = new JsonArray([.. platform.Recording.Requests.Select(r => (JsonNode)RecordingJson.Of(r))]) };
            case "frames": return new JsonObject { ["frames"] = new JsonArray([.. platform.Recording.Frames.Select(f => (JsonNode)RecordingJson.Of(f))]) };
            case "unknownRoutes": return new JsonObject { ["routes"] = new JsonArray([.. platform.Recording.UnknownRoutes.Select(r => (JsonNode)$"{r.Method} {r.Path}")]) };
            case "dump": return new JsonObject { ["lines"] = new JsonArray([.. platform.Recording.DumpLines().Select(l => (JsonNode)l)]) };
            case { } other: throw new ArgumentException($"There is no order {other}.", nameof(order));
            default: throw new ArgumentException("An order has a field \"do\".", nameof(order));
        }
    }

    private static JsonObject Sent(SentInteraction sent) => new() { ["interaction"] = WorldJson.Text(sent.Id) };

    private static SentInteraction Again(SentInteraction sent)
    {
        sent.DeliverAgain();
        return sent;
    }

    private static (string Name, object Value)[] Options(JsonElement order) => [.. order.List("options").Select(o => (o.Text("name")!, Value(o)))];

    private static object Value(JsonElement option) => option.Field("file") is { } file ? File(file) : option.Field("value") switch
    {
        { ValueKind: JsonValueKind.String } v => v.GetString()!,
        { ValueKind: JsonValueKind.True or JsonValueKind.False } v => v.GetBoolean(),
        { ValueKind: JsonValueKind.Number } v => v.TryGetInt64(out long whole) ? whole : v.GetDouble(),
        _ => throw new ArgumentException("An option has a value or a file.", nameof(option)),
    };

    private static EmulatedFile File(JsonElement file) =>
        new(file.Text("name")!, file.Text("contentType") ?? "application/octet-stream", Convert.FromBase64String(file.Text("base64") ?? ""));

    private SentInteraction Interaction(JsonElement order) => platform.Interactions.FirstOrDefault(i => WorldJson.Text(i.Id) == order.Text("interaction"))
        ?? throw new ArgumentException("There is no such interaction.", nameof(order));

    private VisibleMessage Message(JsonElement order)
    {
        string? id = order.Text("message");
        return platform.Interactions.SelectMany(i => i.Readable).FirstOrDefault(m => WorldJson.Text(m.Id) == id) ?? throw new ArgumentException($"There is no message {id}.", nameof(order));
    }

    private JsonObject Submit(JsonElement order)
    {
        SentInteraction opened = Interaction(order);
        OpenedForm form = opened.Form ?? throw new InvalidOperationException("No form was opened.");
        var values = new Dictionary<string, object>();
        foreach ((string name, object value) in Options(order))
        {
            values[name] = value;
        }

        return Sent(platform.Crew.Submit(form, values, opened));
    }

    private JsonObject Post(JsonElement order)
    {
        VisibleMessage message = platform.Crew.Post(order.Text("content") ?? "", [.. order.List("files").Select(File)]);
        string id = WorldJson.Text(message.Id);
        posted[id] = message;
        return new JsonObject { ["message"] = id };
    }

    private async Task WaitAsync(JsonElement order, CancellationToken cancellation)
    {
        SentInteraction sent = Interaction(order);
        int count = (int)(order.Whole("count") ?? 1);
        await sent.UntilAsync(
            i => order.Text("for") switch
            {
                "answer" => i.FirstAnswer is not null,
                "messages" => i.Readable.Count >= count,
                "followUps" => i.Later.Count >= count,
                "choices" => i.Choices is not null,
                "form" => i.Form is not null,
                "edits" => (i.First?.Edits ?? 0) >= count,
                _ => throw new ArgumentException("Wait for answer, messages, followUps, edits, choices or form.", nameof(order)),
            },
            cancellation,
            Within(order)).ConfigureAwait(false);
    }

    private static JsonObject State(SentInteraction sent) => RecordingJson.Of(sent);

    private JsonObject Gateway(JsonElement order)
    {
        bool value = order.Flag("value");
        switch (order.Text("act"))
        {
            case "reconnect": platform.Gateway.RequestReconnect(); break;
            case "heartbeat": platform.Gateway.RequestHeartbeat(); break;
            case "invalidate": platform.Gateway.Invalidate(value); break;
            case "drop": platform.Gateway.DropClients(); break;
            case "close": platform.Gateway.CloseClients((int)(order.Whole("code") ?? 4000)); break;
            case "acknowledge": platform.Gateway.AcknowledgesHeartbeats = value; break;
            case "forget": platform.Gateway.ForgetSessions(); break;
            case "connections": platform.Gateway.TakesConnections = value; break;
            case "state": break;
            default: throw new ArgumentException("The gateway knows reconnect, heartbeat, invalidate, drop, close, acknowledge, forget, connections and state.", nameof(order));
        }

        return GatewayState();
    }

    private JsonObject GatewayState() => new()
    {
        ["identified"] = platform.Gateway.Identified,
        ["resumed"] = platform.Gateway.Resumed,
        ["connected"] = platform.Gateway.Connected,
        ["liveSessions"] = platform.Gateway.LiveSessions,
        ["heartbeats"] = platform.Recording.Frames.Count(f => f is { Kind: FrameKind.Received, Op: 1 }),
        ["closed"] = platform.Recording.Frames.Count(f => f.Kind == FrameKind.Closed),
    };

    private Task WaitGatewayAsync(JsonElement order, CancellationToken cancellation) => platform.UntilAsync(
        () =>
        {
            JsonObject state = GatewayState();
            return state.All(s => order.Whole(s.Key) is not { } least || (int)s.Value! >= least)
                && (order.Whole("connectedExactly") is not { } exact || platform.Gateway.Connected == exact);
        },
        $"the gateway to be as in {order}",
        cancellation,
        Within(order));

    private JsonObject Fault(JsonElement order)
    {
        platform.Faults.Add(new FaultRule(Enum.Parse<FaultKind>(order.Text("kind")!))
        {
            Method = order.Text("method"),
            Path = order.Text("path"),
            Times = (int?)order.Whole("times") ?? 1,
            After = (int)(order.Whole("after") ?? 0),
            Status = (int)(order.Whole("status") ?? 500),
            RetryAfter = TimeSpan.FromMilliseconds(order.Whole("retryAfterMs") ?? 200),
            Scope = Enum.Parse<LimitScope>(order.Text("scope") ?? nameof(LimitScope.User)),
            Delay = TimeSpan.FromMilliseconds(order.Whole("delayMs") ?? 500),
        });
        return [];
    }

    private static TimeSpan Within(JsonElement order) => TimeSpan.FromMilliseconds(order.Whole("withinMs") ?? 10_000);
}
