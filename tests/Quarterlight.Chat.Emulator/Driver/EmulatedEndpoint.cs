using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using NSec.Cryptography;
using Quarterlight.Chat.Emulator.Rest;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>What is wrong with a signature.</summary>
public enum SignatureFlaw
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>It belongs to another text.</summary>
    OtherBody,

    /// <summary>It belongs to another time.</summary>
    OtherTimestamp,

    /// <summary>It was made with another key.</summary>
    OtherKey,

    /// <summary>It is no hex.</summary>
    Unreadable,

    /// <summary>Its header is missing.</summary>
    NoSignature,

    /// <summary>The header with the time is missing.</summary>
    NoTimestamp,

    /// <summary>It is right, but ten minutes old.</summary>
    Old,
}

/// <summary>What an endpoint answered.</summary>
/// <param name="Status">HTTP status; 0 when it could not be reached or took more than three seconds.</param>
/// <param name="ContentType">Its media type; null for none.</param>
/// <param name="Body">Its body.</param>
public sealed record EndpointAnswer(int Status, string? ContentType, string Body);

/// <summary>
/// The other way in: interactions as signed HTTP requests (Interactions Overview, Setting Up an Endpoint). While a URL is set nothing is delivered over the
/// gateway.
/// </summary>
public sealed class EmulatedEndpoint : IDisposable
{
    private static readonly TimeSpan OldAge = TimeSpan.FromMinutes(10);
    private readonly EmulatedPlatform platform;
    private readonly Key key;
    private readonly Key otherKey;
    private readonly HttpClient http = new() { Timeout = TimeSpan.FromSeconds(3) };
    private readonly List<EndpointAnswer> answers = [];

    internal EmulatedEndpoint(EmulatedPlatform platform, byte[] seed, byte[] otherSeed)
    {
        this.platform = platform;
        key = Key.Import(SignatureAlgorithm.Ed25519, seed, KeyBlobFormat.RawPrivateKey);
        otherKey = Key.Import(SignatureAlgorithm.Ed25519, otherSeed, KeyBlobFormat.RawPrivateKey);
        PublicKey = Convert.ToHexStringLower(key.PublicKey.Export(KeyBlobFormat.RawPublicKey));
    }

    /// <summary>The application's public key, hex.</summary>
    public string PublicKey { get; }

    /// <summary>Where interactions go; null for the gateway.</summary>
    public Uri? Url { get; private set; }

    /// <summary>Answers to interactions so far.</summary>
    public IReadOnlyList<EndpointAnswer> Answers => platform.Locked(() => answers.ToArray());

    /// <summary>Sets the URL as the platform does: a good PING must be answered with type 1, one with a bad signature with 401.</summary>
    /// <param name="url">The URL.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="InvalidOperationException">The endpoint did not pass, and is not set.</exception>
    public async Task SetAsync(Uri url, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(url);
        EndpointAnswer good = await PingAsync(url, SignatureFlaw.None, cancellation).ConfigureAwait(false);
        if (good.Status != 200 || good.ContentType?.StartsWith("application/json", StringComparison.Ordinal) != true || (int?)JsonNode.Parse(good.Body)?["type"] != 1)
        {
            throw new InvalidOperationException($"The endpoint did not answer PING: {good}");
        }

        EndpointAnswer bad = await PingAsync(url, SignatureFlaw.OtherBody, cancellation).ConfigureAwait(false);
        Url = bad.Status == 401 ? url : throw new InvalidOperationException($"The endpoint took a bad signature: {bad}");
    }

    /// <summary>Back to the gateway.</summary>
    public void Remove() => Url = null;

    /// <summary>Sends a PING.</summary>
    /// <param name="url">Where to.</param>
    /// <param name="flaw">What is wrong with the signature.</param>
    /// <param name="cancellation">Gives up.</param>
    public Task<EndpointAnswer> PingAsync(Uri url, SignatureFlaw flaw, CancellationToken cancellation) => PostAsync(
        url,
        new JsonObject { ["id"] = WorldJson.Text(platform.Ids.Next()), ["application_id"] = WorldJson.Text(platform.ApplicationId), ["type"] = 1, ["token"] = platform.NewToken(), ["version"] = 1 }.ToJsonString(),
        flaw,
        cancellation);

    /// <summary>Posts a text with a signature.</summary>
    /// <param name="url">Where to.</param>
    /// <param name="json">The text.</param>
    /// <param name="flaw">What is wrong with the signature.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<EndpointAnswer> PostAsync(Uri url, string json, SignatureFlaw flaw, CancellationToken cancellation)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, url) { Content = new StringContent(json, Encoding.UTF8, "application/json") };
        request.Headers.TryAddWithoutValidation("User-Agent", "Discord-Interactions/1.0 (+https://discord.com)");
        DateTimeOffset moment = platform.Clock.GetUtcNow() - (flaw == SignatureFlaw.Old ? OldAge : TimeSpan.Zero);
        string time = moment.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);
        if (flaw != SignatureFlaw.NoSignature)
        {
            request.Headers.TryAddWithoutValidation("X-Signature-Ed25519", Sign(time, json, flaw));
        }

        if (flaw != SignatureFlaw.NoTimestamp)
        {
            request.Headers.TryAddWithoutValidation("X-Signature-Timestamp", time);
        }

        try
        {
            using HttpResponseMessage response = await http.SendAsync(request, cancellation).ConfigureAwait(false);
            string body = await response.Content.ReadAsStringAsync(cancellation).ConfigureAwait(false);
            return new EndpointAnswer((int)response.StatusCode, response.Content.Headers.ContentType?.ToString(), body);
        }
        catch (Exception problem) when (problem is HttpRequestException || (problem is TaskCanceledException && !cancellation.IsCancellationRequested))
        {
            return new EndpointAnswer(0, null, problem.Message);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        http.Dispose();
        key.Dispose();
        otherKey.Dispose();
    }

    internal async Task DeliverAsync(SentInteraction interaction, CancellationToken cancellation)
    {
        interaction.Delivered();
        EndpointAnswer answer = await PostAsync(Url!, interaction.Json, SignatureFlaw.None, cancellation).ConfigureAwait(false);
        platform.Locked(() => answers.Add(answer));
        if (answer is { Status: 200, Body.Length: > 0 })
        {
            RequestBody body = await RequestBody.ReadAsync(Encoding.UTF8.GetBytes(answer.Body), answer.ContentType, cancellation).ConfigureAwait(false);
            if (body.Json is { } json)
            {
                platform.Recording.Received("callback", json.GetRawText());
            }

            platform.Locked(() => body.Refusal ?? platform.Desk.First(interaction, body));
        }

        platform.Changes.Raise();
    }

    private string Sign(string time, string json, SignatureFlaw flaw)
    {
        if (flaw == SignatureFlaw.Unreadable)
        {
            return "this is no hex";
        }

        string signedTime = flaw == SignatureFlaw.OtherTimestamp ? "1700000000" : time;
        string signedText = flaw == SignatureFlaw.OtherBody ? json + " " : json;
        Key with = flaw == SignatureFlaw.OtherKey ? otherKey : key;
        return Convert.ToHexStringLower(SignatureAlgorithm.Ed25519.Sign(with, Encoding.UTF8.GetBytes(signedTime + signedText)));
    }
}
