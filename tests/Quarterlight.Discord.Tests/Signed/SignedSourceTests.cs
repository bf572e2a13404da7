using System.Collections.Concurrent;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NSec.Cryptography;
using Quarterlight.Discord.Signed;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.Signed;

/// <summary>Interactions as signed requests, over a real server on this machine.</summary>
public sealed class SignedSourceTests : IAsyncLifetime
{
    private const string Ping = """{"id":"1","application_id":"5","type":1,"token":"t","version":1}""";

    private readonly FakeTimeProvider time = new(DateTimeOffset.FromUnixTimeSeconds(1_900_000_000));
    private readonly Key key = Key.Create(SignatureAlgorithm.Ed25519);
    private readonly ConcurrentQueue<(LogLevel Level, string Text)> logged = new();
    private readonly ConcurrentQueue<Interaction> received = new();
    private readonly CancellationTokenSource stop = new();
    private readonly HttpClient client = new();
    private SignedSource source = null!;
    private WebApplication server = null!;
    private Task running = Task.CompletedTask;
    private bool takes = true;

    public async ValueTask InitializeAsync()
    {
        source = new SignedSource(new InteractionSignature(Convert.ToHexString(key.PublicKey.Export(KeyBlobFormat.RawPublicKey)), time), time, new ListLogger<SignedSource>(logged));
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrel().UseUrls("http://127.0.0.1:0");
        server = builder.Build();
        server.MapPost("/interactions", source.HandleAsync);
        await server.StartAsync(TestContext.Current.CancellationToken);
        client.BaseAddress = new Uri(server.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
        running = source.RunAsync(
            i =>
            {
                received.Enqueue(i);
                return takes;
            },
            stop.Token);
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await Eventually.EndsAsync(running);
        await server.DisposeAsync();
        client.Dispose();
        key.Dispose();
        stop.Dispose();
        Assert.All(logged, l => Assert.DoesNotContain("secret", l.Text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ping_Signed_IsAnswered()
    {
        using HttpResponseMessage answer = await PostAsync(Ping);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("""{"type":1}""", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Empty(received);
    }

    [Fact]
    public async Task Interaction_Signed_IsHandedOnAndAccepted()
    {
        using HttpResponseMessage answer = await PostAsync(InteractionJson.Button(55));
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal(55UL, Assert.Single(received).Ticket.InteractionId);
    }

    [Fact]
    public async Task Interaction_NotTaken_SaysSo()
    {
        takes = false;
        using HttpResponseMessage answer = await PostAsync(InteractionJson.Button());
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
    }

    [Fact]
    public async Task Stopped_TakesNothing()
    {
        Assert.Equal(new SourceHealth(true, "taking requests", null), source.Health);
        await stop.CancelAsync();
        await Eventually.EndsAsync(running);
        Assert.False(source.Health.Ready);
        using HttpResponseMessage answer = await PostAsync(InteractionJson.Button());
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.Empty(received);
    }

    [Fact]
    public async Task Refusals_WhateverIsWrong_LookTheSame()
    {
        string good = Sign("1900000000", Ping);
        (string? Signature, string? Stamp)[] wrong =
        [
            (null, "1900000000"), (good, null), ("00", "1900000000"), (good, "soon"), (good, "1900000001"), (Sign("1899999000", Ping), "1899999000"),
            (new string('0', 128), "1900000000"),
        ];
        var shapes = new HashSet<string>();
        foreach ((string? signature, string? stamp) in wrong)
        {
            using HttpResponseMessage answer = await PostAsync(Ping, signature, stamp);
            string headers = string.Join(";", answer.Headers.Concat(answer.Content.Headers).Where(h => h.Key != "Date").Select(h => $"{h.Key}={string.Join(",", h.Value)}").Order());
            shapes.Add($"{(int)answer.StatusCode}|{headers}|{await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
        }

        Assert.StartsWith("401|", Assert.Single(shapes), StringComparison.Ordinal);
        Assert.Equal(wrong.Length, logged.Count(l => l.Text.StartsWith("A signed request was refused", StringComparison.Ordinal)));
        Assert.Empty(received);
    }

    [Fact]
    public async Task Header_GivenTwice_IsRefused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/interactions") { Content = new StringContent(Ping) };
        request.Headers.Add("X-Signature-Ed25519", [Sign("1900000000", Ping), Sign("1900000000", Ping)]);
        request.Headers.Add("X-Signature-Timestamp", "1900000000");
        using HttpResponseMessage answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task Body_Unreadable_IsABadRequest()
    {
        using HttpResponseMessage answer = await PostAsync("""{"secret":1}""");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(logged, l => l.Text == "An interaction could not be read: NoTicket");
    }

    [Theory]
    [InlineData(256 * 1024, false, HttpStatusCode.OK)]
    [InlineData((256 * 1024) + 1, false, HttpStatusCode.RequestEntityTooLarge)]
    [InlineData(256 * 1024, true, HttpStatusCode.OK)]
    [InlineData((256 * 1024) + 1, true, HttpStatusCode.RequestEntityTooLarge)]
    public async Task Body_AboveTheCap_IsRefused(int bytes, bool chunked, HttpStatusCode status)
    {
        string body = Ping + new string(' ', bytes - Ping.Length);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/interactions") { Content = new StringContent(body, Encoding.ASCII, "application/json") };
        request.Headers.TransferEncodingChunked = chunked;
        request.Headers.Add("X-Signature-Ed25519", Sign("1900000000", body));
        request.Headers.Add("X-Signature-Timestamp", "1900000000");
        using HttpResponseMessage answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(status, answer.StatusCode);
    }

    private async Task<HttpResponseMessage> PostAsync(string body) => await PostAsync(body, Sign("1900000000", body), "1900000000");

    private async Task<HttpResponseMessage> PostAsync(string body, string? signature, string? stamp)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/interactions") { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        if (signature is not null)
        {
            request.Headers.Add("X-Signature-Ed25519", signature);
        }

        if (stamp is not null)
        {
            request.Headers.Add("X-Signature-Timestamp", stamp);
        }

        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private string Sign(string stamp, string body) =>
        Convert.ToHexString(SignatureAlgorithm.Ed25519.Sign(key, [.. Encoding.UTF8.GetBytes(stamp), .. Encoding.UTF8.GetBytes(body)]));
}
