using System.Text.Json;
using System.Text.Json.Nodes;

namespace Quarterlight.Chat.Emulator.Recording;

/// <summary>Everything that went over the wire. Lists are copies: they do not change while they are looked at.</summary>
public sealed class PlatformRecording
{
    private readonly Lock gate = new();
    private readonly List<RecordedRequest> requests = [];
    private readonly List<RecordedFrame> frames = [];
    private readonly List<(string Kind, string Json)> sent = [];
    private readonly long started = TimeProvider.System.GetTimestamp();
    private int number;

    /// <summary>Every HTTP request, in the order they came.</summary>
    public IReadOnlyList<RecordedRequest> Requests => Copy(requests);

    /// <summary>Every gateway event, in order.</summary>
    public IReadOnlyList<RecordedFrame> Frames => Copy(frames);

    /// <summary>Requests to the API that no route took.</summary>
    public IReadOnlyList<RecordedRequest> UnknownRoutes => [.. Requests.Where(r => r.Route is null && r.Fault is null)];

    /// <summary>Requests refused as the client's own mistake: 400, 401, 403 and 413.</summary>
    public IReadOnlyList<RecordedRequest> Refused => [.. Requests.Where(r => r.Status is 400 or 401 or 403 or 405 or 413 && r.Fault is null)];

    /// <summary>Answers that count towards the ban at 10,000 in ten minutes: 401, 403 and 429 without scope shared (Rate Limits, Invalid Request Limit).</summary>
    public int InvalidRequests => Requests.Count(r => r.Status is 401 or 403 or 429 && r.Fault != "shared 429");

    /// <summary>Writes one line {"kind","json"} for each body and frame a client sent and, under kinds that begin with "in:", for what the platform sent.</summary>
    /// <param name="path">File to write.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task DumpAsync(string path, CancellationToken cancellation = default) =>
        await File.WriteAllLinesAsync(path, DumpLines(), cancellation).ConfigureAwait(false);

    /// <summary>The lines of <see cref="DumpAsync"/>.</summary>
    public IReadOnlyList<string> DumpLines()
    {
        lock (gate)
        {
            IEnumerable<(string Kind, string Json)> received = requests.Where(r => r is { JsonKind: not null, Json: not null }).Select(r => (r.JsonKind!, r.Json!));
            IEnumerable<(string Kind, string Json)> spoken = frames.Where(f => f is { Kind: FrameKind.Received, Text: not null } && KindOf(f.Op) is not null)
                .Select(f => (KindOf(f.Op)!, f.Text!));
            return [.. received.Concat(spoken).Concat(sent).Select(Line)];
        }
    }

    internal RecordedRequest Add(RecordedRequest request)
    {
        lock (gate)
        {
            var numbered = new RecordedRequest
            {
                Number = ++number,
                At = TimeProvider.System.GetElapsedTime(started),
                Method = request.Method,
                Path = request.Path,
                Query = request.Query,
                Headers = request.Headers,
            };
            requests.Add(numbered);
            return numbered;
        }
    }

    internal void Add(RecordedFrame frame)
    {
        lock (gate)
        {
            frames.Add(frame with { Number = ++number, At = TimeProvider.System.GetElapsedTime(started) });
        }
    }

    internal void Sent(string kind, JsonNode json)
    {
        string text = json.ToJsonString();
        lock (gate)
        {
            sent.Add((kind, text));
        }
    }

    internal void Received(string kind, string json)
    {
        lock (gate)
        {
            sent.Add((kind, json));
        }
    }

    private static string? KindOf(int? op) => op switch { 1 => "heartbeat", 2 => "identify", 3 => "presence", 6 => "resume", _ => null };

    private static string Line((string Kind, string Json) entry) =>
        $$"""{"kind":{{JsonSerializer.Serialize(entry.Kind)}},"json":{{entry.Json.ReplaceLineEndings(" ")}}}""";

    private T[] Copy<T>(List<T> list)
    {
        lock (gate)
        {
            return [.. list];
        }
    }
}
