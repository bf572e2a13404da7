using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Discord.Rest;
using Quarterlight.Discord.Signed;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.Signed;

/// <summary>The second way in as the emulated platform uses it: it must be let in, and its bad signatures must not.</summary>
public sealed class EmulatedEndpointTests
{
    [Fact]
    public async Task Endpoint_IsAcceptedAndInteractionsArrive()
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: cancellation);
        var source = new SignedSource(new InteractionSignature(platform.PublicKey, platform.Clock), TimeProvider.System, NullLogger<SignedSource>.Instance);
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrel().UseUrls("http://127.0.0.1:0");
        await using WebApplication server = builder.Build();
        server.MapPost("/interactions", source.HandleAsync);
        await server.StartAsync(cancellation);
        var url = new Uri(server.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single() + "/interactions");
        using var rest = new RestClient(new RestOptions { BaseAddress = platform.ApiBase, BotToken = platform.Token }, TimeProvider.System, NullLogger<RestClient>.Instance);
        await new RestRegistry(rest, platform.ApplicationId)
            .RegisterAsync([new CommandDefinition("help", "Helps", CommandKind.Slash, [])], null, cancellation);

        await platform.Endpoint.SetAsync(url, cancellation);
        var received = new System.Collections.Concurrent.ConcurrentQueue<Interaction>();
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        Task running = source.RunAsync(
            i =>
            {
                received.Enqueue(i);
                return true;
            },
            stop.Token);
        SentInteraction asked = platform.Crew.Slash("help");
        await Eventually.TrueAsync(() => platform.Endpoint.Answers.Count == 1);
        Assert.Equal(202, platform.Endpoint.Answers[0].Status);
        Assert.Equal(asked.Id, Assert.Single(received).Ticket.InteractionId);
        foreach (SignatureFlaw flaw in Enum.GetValues<SignatureFlaw>().Where(f => f != SignatureFlaw.None))
        {
            Assert.Equal(401, (await platform.Endpoint.PostAsync(url, asked.Json, flaw, cancellation)).Status);
        }

        Assert.Single(received);
        await stop.CancelAsync();
        await Eventually.EndsAsync(running);
    }
}
