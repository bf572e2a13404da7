using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using NSec.Cryptography;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;

namespace Quarterlight.Emulator.Tests;

/// <summary>Signed HTTP delivery against an endpoint that checks, and one that does not (Interactions Overview, Validating Security Request Headers).</summary>
public sealed class EndpointTests : IAsyncLifetime
{
    private EmulatedPlatform platform = null!;
    private WebApplication app = null!;
    private bool checks = true;
    private string answer = """{"type":4,"data":{"content":"done","flags":64}}""";
    private Uri url = null!;

    public async ValueTask InitializeAsync()
    {
        platform = await EmulatedPlatform.StartAsync(StillClock.Options, TestContext.Current.CancellationToken);
        using var api = new ApiClient(platform);
        await api.CallAsync("PUT", api.Commands, """[{"name":"help","description":"x"}]""");
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        app = builder.Build();
        app.Run(AnswerAsync);
        await app.StartAsync(TestContext.Current.CancellationToken);
        url = new Uri(app.Urls.Single());
    }

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        await platform.DisposeAsync();
    }

    [Fact]
    public async Task Endpoint_ThatChecks_IsSetAndAnswersInline()
    {
        await platform.Endpoint.SetAsync(url, TestContext.Current.CancellationToken);
        SentInteraction asked = platform.Crew.Slash("help");
        VisibleMessage seen = await asked.MessageAsync(TestContext.Current.CancellationToken);
        Assert.Equal(("done", true), (seen.Content, seen.IsPrivate));
        Assert.Equal(0, platform.Gateway.Identified);
    }

    [Fact]
    public async Task Endpoint_ThatTakesBadSignatures_IsNotSet()
    {
        checks = false;
        await Assert.ThrowsAsync<InvalidOperationException>(() => platform.Endpoint.SetAsync(url, TestContext.Current.CancellationToken));
        Assert.Null(platform.Endpoint.Url);
    }

    [Theory]
    [InlineData(SignatureFlaw.OtherBody)]
    [InlineData(SignatureFlaw.OtherTimestamp)]
    [InlineData(SignatureFlaw.OtherKey)]
    [InlineData(SignatureFlaw.Unreadable)]
    [InlineData(SignatureFlaw.NoSignature)]
    [InlineData(SignatureFlaw.NoTimestamp)]
    public async Task Flaw_OfASignature_DoesNotVerify(SignatureFlaw flaw) =>
        Assert.Equal(401, (await platform.Endpoint.PingAsync(url, flaw, TestContext.Current.CancellationToken)).Status);

    [Fact]
    public async Task Inline_AnswerThatIsWrong_IsNoAnswer()
    {
        answer = """{"type":7,"data":{"content":"x"}}""";
        await platform.Endpoint.SetAsync(url, TestContext.Current.CancellationToken);
        SentInteraction asked = platform.Crew.Slash("help");
        await platform.UntilAsync(() => platform.Endpoint.Answers.Count == 1, "an answer", TestContext.Current.CancellationToken);
        Assert.Null(asked.FirstAnswer);
    }

    private async Task AnswerAsync(HttpContext http)
    {
        using var body = new MemoryStream();
        await http.Request.Body.CopyToAsync(body, http.RequestAborted);
        byte[] signed = [.. System.Text.Encoding.ASCII.GetBytes(http.Request.Headers["X-Signature-Timestamp"].ToString()), .. body.ToArray()];
        if (checks && !Verifies(http.Request.Headers["X-Signature-Ed25519"].ToString(), signed))
        {
            http.Response.StatusCode = 401;
            return;
        }

        http.Response.ContentType = "application/json";
        bool ping = System.Text.Json.Nodes.JsonNode.Parse(body.ToArray())!["type"]!.GetValue<int>() == 1;
        await http.Response.WriteAsync(ping ? """{"type":1}""" : answer, http.RequestAborted);
    }

    private bool Verifies(string signature, byte[] signed)
    {
        try
        {
            var key = PublicKey.Import(SignatureAlgorithm.Ed25519, Convert.FromHexString(platform.PublicKey), KeyBlobFormat.RawPublicKey);
            return SignatureAlgorithm.Ed25519.Verify(key, signed, Convert.FromHexString(signature));
        }
        catch (FormatException)
        {
            return false;
        }
    }
}
