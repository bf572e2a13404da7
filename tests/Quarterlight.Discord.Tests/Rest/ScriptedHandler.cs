using System.Net;
using System.Text;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>A request as it would have gone onto the wire.</summary>
internal sealed record SentRequest(string Method, string Path, string? Authorization, string? UserAgent, string? ContentType, byte[] Body, TimeSpan At)
{
    public string Text => Encoding.UTF8.GetString(Body);
}

/// <summary>Stands where the network would be: notes each request and answers as the test says.</summary>
internal sealed class ScriptedHandler(Func<TimeSpan> now, Func<SentRequest, int, CancellationToken, Task<HttpResponseMessage>> answer) : HttpMessageHandler
{
    private readonly Lock gate = new();
    private readonly List<SentRequest> sent = [];

    public IReadOnlyList<SentRequest> Sent
    {
        get
        {
            lock (gate)
            {
                return [.. sent];
            }
        }
    }

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        byte[] body = request.Content is { } content ? await content.ReadAsByteArrayAsync(cancellationToken) : [];
        var noted = new SentRequest(
            request.Method.Method,
            request.RequestUri!.PathAndQuery,
            request.Headers.Authorization?.ToString(),
            request.Headers.UserAgent.ToString(),
            request.Content?.Headers.ContentType?.ToString(),
            body,
            now());
        int number;
        lock (gate)
        {
            sent.Add(noted);
            number = sent.Count;
        }

        return await answer(noted, number, cancellationToken);
    }

    /// <summary>An answer with JSON.</summary>
    public static HttpResponseMessage Json(int status, string json, params (string Name, string Value)[] headers)
    {
        var response = new HttpResponseMessage((HttpStatusCode)status) { Content = new StringContent(json, Encoding.UTF8, "application/json") };
        foreach ((string name, string value) in headers)
        {
            response.Headers.TryAddWithoutValidation(name, value);
        }

        return response;
    }

    /// <summary>An answer without a body.</summary>
    public static HttpResponseMessage Empty(int status, params (string Name, string Value)[] headers)
    {
        HttpResponseMessage response = Json(status, "", headers);
        response.Content = new ByteArrayContent([]);
        return response;
    }

    /// <summary>A refusal with the platform's code.</summary>
    public static HttpResponseMessage Error(int status, int code) => Json(status, $$"""{"message":"no","code":{{code}}}""");

    /// <summary>A 429.</summary>
    public static HttpResponseMessage Limited(double seconds, string scope = "user", bool global = false) => Json(
        429, FormattableString.Invariant($$"""{"message":"slow down","retry_after":{{seconds}},"global":{{(global ? "true" : "false")}}}"""), ("X-RateLimit-Scope", scope), ("Retry-After", "1"));

    /// <summary>Headers of a bucket.</summary>
    public static (string Name, string Value)[] Bucket(string name, int limit, int remaining, double resetAfter) =>
    [
        ("X-RateLimit-Bucket", name),
        ("X-RateLimit-Limit", FormattableString.Invariant($"{limit}")),
        ("X-RateLimit-Remaining", FormattableString.Invariant($"{remaining}")),
        ("X-RateLimit-Reset-After", FormattableString.Invariant($"{resetAfter}")),
    ];
}
