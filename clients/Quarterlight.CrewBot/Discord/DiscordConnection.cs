using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Quarterlight.Discord;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Rest;
using Quarterlight.Discord.Signed;

namespace Quarterlight.CrewBot.Discord;

/// <summary>The platform: a way in, the way out, and the registration of commands. The only place that knows which implementation is in use.</summary>
internal sealed class DiscordConnection : IAsyncDisposable
{
    private readonly RestClient client;
    private readonly AttachmentFetcher files;
    private readonly GatewaySource? gateway;

    /// <summary>A connection; nothing is sent yet.</summary>
    /// <param name="settings">Which way in.</param>
    /// <param name="secrets">Token and keys.</param>
    /// <param name="seed">Seeds the jitter of waits; replicas want different ones.</param>
    /// <param name="time">Clock.</param>
    /// <param name="logs">Logs.</param>
    public DiscordConnection(ServeSettings settings, ServeSecrets secrets, int seed, TimeProvider time, ILoggerFactory logs)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(secrets);
        var options = new RestOptions { BotToken = secrets.Token, JitterSeed = seed };
        client = new RestClient(secrets.Api is { } api ? options with { BaseAddress = api } : options, time, logs.CreateLogger<RestClient>());
        files = new AttachmentFetcher(new AttachmentOptions { LoopbackTestHost = secrets.FileHost }, time, logs.CreateLogger<AttachmentFetcher>());
        Responder = new RestResponder(client, files);
        Registry = new RestRegistry(client);
        if (settings.Way == DiscordWay.Signed)
        {
            var signed = new SignedSource(new InteractionSignature(secrets.PublicKey!, time), time, logs.CreateLogger<SignedSource>());
            (Source, Handle) = (signed, signed.HandleAsync);
        }
        else
        {
            var reader = new GatewayInfoReader(client);
#pragma warning disable CA5394 // Waits are spread with it; nothing secret depends on it.
            var random = new Random(seed);
            gateway = new GatewaySource(
                new GatewayOptions { Token = secrets.Token },
                reader.ReadAsync,
                new FileIdentifyLedger(Path.Combine(settings.DataFolder, "identifies")),
                () => new ClientGatewaySocket(),
                time,
                random.NextDouble,
                logs.CreateLogger<GatewaySource>());
#pragma warning restore CA5394
            Source = gateway;
        }
    }

    public IInteractionSource Source { get; }

    public IInteractionResponder Responder { get; }

    public ICommandRegistry Registry { get; }

    /// <summary>Takes a signed request; null for the other way.</summary>
    public Func<HttpContext, Task>? Handle { get; }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (gateway is not null)
        {
            await gateway.DisposeAsync().ConfigureAwait(false);
        }

        files.Dispose();
        client.Dispose();
    }
}
