using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;

namespace Quarterlight.Emulator.Tests;

/// <summary>What a call was answered with.</summary>
/// <param name="Status">HTTP status.</param>
/// <param name="Code">The platform's error code; 0 for none.</param>
/// <param name="Json">Body.</param>
/// <param name="Headers">Headers.</param>
internal sealed record ApiResult(int Status, int Code, JsonNode? Json, HttpResponseHeaders Headers)
{
    /// <summary>Paths of the fields that were refused.</summary>
    public IReadOnlyList<string> Fields => [.. Paths(Json?["errors"], "")];

    private static IEnumerable<string> Paths(JsonNode? node, string path) => node is not JsonObject o
        ? []
        : o.SelectMany(p => p.Key == "_errors" ? [path] : Paths(p.Value, path.Length == 0 ? p.Key : $"{path}.{p.Key}"));
}

/// <summary>A client that sends what it is told, right or wrong.</summary>
internal sealed class ApiClient(EmulatedPlatform platform) : IDisposable
{
    public const string UserAgent = "DiscordBot (https://example.org, 1.0)";
    private readonly HttpClient http = new();

    public string? Authorization { get; set; } = $"Bot {platform.Token}";

    public string? Agent { get; set; } = UserAgent;

    public string Version { get; set; } = "/v10";

    public string Commands => $"/applications/{platform.ApplicationId}/commands";

    public static string Callback(SentInteraction asked) => $"/interactions/{asked.Id}/{asked.Token}/callback";

    public string Webhook(SentInteraction asked, string rest = "") => $"/webhooks/{platform.ApplicationId}/{asked.Token}{rest}";

    public string Original(SentInteraction asked) => Webhook(asked, "/messages/@original");

    public Task<ApiResult> CallAsync(string method, string path, string? json = null, string contentType = "application/json") =>
        SendAsync(method, path, json is null ? null : new ByteArrayContent(Encoding.UTF8.GetBytes(json)) { Headers = { ContentType = new MediaTypeHeaderValue(contentType) } });

    public Task<ApiResult> FormAsync(string method, string path, string? json, params (string Part, string? FileName, byte[] Bytes)[] files)
    {
        var form = new MultipartFormDataContent();
        if (json is not null)
        {
            form.Add(new StringContent(json, Encoding.UTF8, "application/json"), "payload_json");
        }

        foreach ((string part, string? name, byte[] bytes) in files)
        {
            var content = new ByteArrayContent(bytes) { Headers = { ContentType = new MediaTypeHeaderValue("image/png") } };
            if (name is null)
            {
                form.Add(content, part);
            }
            else
            {
                form.Add(content, part, name);
            }
        }

        return SendAsync(method, path, form);
    }

    public void Dispose() => http.Dispose();

    private async Task<ApiResult> SendAsync(string method, string path, HttpContent? content)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), new Uri(platform.Address, $"/api{Version}{path}")) { Content = content };
        if (Agent is not null)
        {
            request.Headers.TryAddWithoutValidation("User-Agent", Agent);
        }

        if (Authorization is not null)
        {
            request.Headers.TryAddWithoutValidation("Authorization", Authorization);
        }

        using HttpResponseMessage response = await http.SendAsync(request, TestContext.Current.CancellationToken);
        string text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        JsonNode? json = response.Content.Headers.ContentType?.MediaType == "application/json" ? JsonNode.Parse(text) : null;
        return new ApiResult((int)response.StatusCode, json is JsonObject o && o["code"] is JsonValue v && v.GetValueKind() == JsonValueKind.Number ? (int)v : 0, json, response.Headers);
    }
}
