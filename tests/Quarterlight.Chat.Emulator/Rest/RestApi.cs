using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Quarterlight.Chat.Emulator.Recording;

namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>Takes a request to the API through its stages: record, faults, User-Agent, version, route, token, limits, body, work.</summary>
internal sealed partial class RestApi(EmulatedPlatform platform)
{
    private const int ReadAtMostFactor = 4;
    private readonly RouteTable routes = new ApiRoutes(platform).Table();

    /// <summary>Answers a request below /api.</summary>
    public async Task HandleAsync(HttpContext http)
    {
        RecordedRequest record = Record(platform.Recording, http, out string path);
        FaultRule? fault = platform.Faults.Choose(record.Method, path);
        record.Fault = fault?.Name;
        if (fault is not null && await FaultPlayer.BeforeAsync(fault, http, record).ConfigureAwait(false))
        {
            return;
        }

        ApiAnswer answer = await AnswerAsync(http, path, record).ConfigureAwait(false);
        if (fault is { Kind: FaultKind.CutAfter })
        {
            http.Abort();
            return;
        }

        await WriteAsync(http, fault is { Kind: FaultKind.ErrorAfter } ? ApiAnswer.Error(500, 0, "500: Internal Server Error") : answer, record).ConfigureAwait(false);
    }

    /// <summary>Writes down a request.</summary>
    public static RecordedRequest Record(PlatformRecording recording, HttpContext http, out string path)
    {
        string target = http.Features.Get<IHttpRequestFeature>()!.RawTarget;
        string[] halves = target.Split('?', 2);
        path = halves[0];
        return recording.Add(new RecordedRequest
        {
            Method = http.Request.Method,
            Path = halves[0],
            Query = halves.Length > 1 ? halves[1] : "",
            Headers = http.Request.Headers.ToDictionary(h => h.Key, h => h.Value.ToString(), StringComparer.OrdinalIgnoreCase),
        });
    }

    private async Task<ApiAnswer> AnswerAsync(HttpContext http, string path, RecordedRequest record)
    {
        // Without such a User-Agent the network in front of the platform may block (API reference, User Agent).
        if (!UserAgent().IsMatch(http.Request.Headers.UserAgent.ToString()))
        {
            return new ApiAnswer(403, null);
        }

        // Without a version it is version 6, which is gone (API reference, API Versioning).
        if (!path.StartsWith("/api/v10/", StringComparison.Ordinal) && !path.StartsWith("/api/v9/", StringComparison.Ordinal))
        {
            return ApiAnswer.Error(400, 50041, "Invalid API version provided");
        }

        string below = path[path.IndexOf('/', "/api/v".Length)..];
        if (routes.Find(record.Method, below, out bool otherMethod) is not var (route, values))
        {
            return otherMethod ? ApiAnswer.Error(405, 0, "405: Method Not Allowed") : ApiAnswer.Error(404, 0, "404: Not Found");
        }

        record.Route = route.Name;
        if (route.NeedsBot && (platform.Gateway.TokenWasReset || http.Request.Headers.Authorization.ToString() != $"Bot {platform.Options.Token}"))
        {
            return ApiAnswer.Error(401, 0, "401: Unauthorized");
        }

        LimitState limit = platform.RateLimits.Take(route.Name, About(values), route.CountsGlobally);
        foreach ((string name, string value) in limit.Headers(TimeProvider.System.GetUtcNow()))
        {
            http.Response.Headers[name] = value;
        }

        if (limit.Refused)
        {
            return FaultPlayer.Limited(http, limit.Reset, limit.Global ? LimitScope.Global : LimitScope.User);
        }

        if (await ReadAsync(http).ConfigureAwait(false) is not { } bytes)
        {
            return ApiAnswer.Error(413, 40005, "Request entity too large");
        }

        RequestBody body = await RequestBody.ReadAsync(bytes, http.Request.ContentType, http.RequestAborted).ConfigureAwait(false);
        record.Parts = body.Parts;
        record.Json = body.Json?.GetRawText();
        record.JsonKind = body.Json is null ? null : route.BodyKind;
        return body.Refusal ?? platform.Locked(() => route.Answer(new ApiCall(values, name => http.Request.Query[name], body)));
    }

    // Reads the whole body; null when it is above the limit. A little too much is read to its end, so that the client gets to read the answer.
    private async Task<byte[]?> ReadAsync(HttpContext http)
    {
        long limit = platform.Options.RequestLimitBytes;
        using var all = new MemoryStream();
        byte[] chunk = new byte[81_920];
        long read = 0;
        while (await http.Request.Body.ReadAsync(chunk, http.RequestAborted).ConfigureAwait(false) is > 0 and var count)
        {
            read += count;
            if (read <= limit)
            {
                all.Write(chunk, 0, count);
            }
            else if (read > limit * ReadAtMostFactor)
            {
                break;
            }
        }

        return read > limit ? null : all.ToArray();
    }

    private static async Task WriteAsync(HttpContext http, ApiAnswer answer, RecordedRequest record)
    {
        record.Status = answer.Status;
        record.ErrorCode = answer.ErrorCode;
        record.Answer = answer.Body?.ToJsonString();
        http.Response.StatusCode = answer.Status;
        if (record.Answer is { } json)
        {
            http.Response.ContentType = "application/json";
            await http.Response.Body.WriteAsync(Encoding.UTF8.GetBytes(json), http.RequestAborted).ConfigureAwait(false);
        }
        else if (answer.Status == 403)
        {
            http.Response.ContentType = "text/html";
            await http.Response.WriteAsync("<html><body>error code: 1010</body></html>", http.RequestAborted).ConfigureAwait(false);
        }
    }

    // The id a bucket is about: webhook with token, interaction with token, guild, else the application.
    private static string About(Dictionary<string, string> values) => string.Join(
        ' ', ((string[])["guild", "app", "id", "token"]).Select(n => values.GetValueOrDefault(n)).Where(v => v is not null));

    [GeneratedRegex(@"^DiscordBot \([^ ,]+, ?[^)]+\)", RegexOptions.CultureInvariant)]
    private static partial Regex UserAgent();
}
