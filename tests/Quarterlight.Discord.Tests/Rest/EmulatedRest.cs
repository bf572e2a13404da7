using Microsoft.Extensions.Logging.Abstractions;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>The client over real sockets against the emulated platform.</summary>
internal sealed class EmulatedRest : IAsyncDisposable
{
    private EmulatedRest(EmulatedPlatform platform, RestOptions options)
    {
        Platform = platform;
        Client = new RestClient(
            options with { BaseAddress = platform.ApiBase, BotToken = platform.Token }, TimeProvider.System, NullLogger<RestClient>.Instance);
        Files = new AttachmentFetcher(new AttachmentOptions { LoopbackTestHost = platform.Address }, TimeProvider.System, NullLogger<AttachmentFetcher>.Instance);
        Responder = new RestResponder(Client, Files);
        Registry = new RestRegistry(Client);
    }

    public static readonly CommandDefinition[] Commands =
    [
        new("why", "Why a site is good or not", CommandKind.Slash,
        [
            new CommandOptionDefinition("site", "The site", CommandOptionKind.Text) { Required = true, Autocomplete = true, MostCharacters = 100 },
            new CommandOptionDefinition("talker", "Who", CommandOptionKind.Text) { Choices = [new OutgoingChoice("Driver", "driver")] },
        ]),
        new("clip", "Judge a clip", CommandKind.Slash, [new CommandOptionDefinition("file", "The clip", CommandOptionKind.File) { Required = true }]),
        new("scene", "Scenes", CommandKind.Slash,
        [
            new CommandOptionDefinition("new", "A new one", CommandOptionKind.Subcommand),
            new CommandOptionDefinition("speed", "Its speed", CommandOptionKind.Subcommand)
            {
                Options = [new CommandOptionDefinition("speed", "Speed", CommandOptionKind.Number) { Least = 0, Most = 160 }],
            },
        ]) { DefaultMemberPermissions = 32 },
        new("Judge this clip", "", CommandKind.Message, []),
    ];

    public EmulatedPlatform Platform { get; }

    public RestClient Client { get; }

    public AttachmentFetcher Files { get; }

    public RestResponder Responder { get; }

    public RestRegistry Registry { get; }

    public static async Task<EmulatedRest> StartAsync(RestOptions? options = null, PlatformOptions? platform = null)
    {
        var rest = new EmulatedRest(await EmulatedPlatform.StartAsync(platform, RestRig.Stop), options ?? new RestOptions());
        Assert.True(await rest.Registry.RegisterAsync(Commands, null, RestRig.Stop));
        return rest;
    }

    /// <summary>A crew member asks, and the way in hands it on.</summary>
    public (SentInteraction Asked, InteractionTicket Ticket) Ask()
    {
        SentInteraction asked = Platform.Crew.Slash("why", ("site", "visor clip"));
        return (asked, Ticket(asked));
    }

    public InteractionTicket Ticket(SentInteraction asked) =>
        new(Platform.ApplicationId, asked.Id, asked.Token) { ReceivedTimestamp = TimeProvider.System.GetTimestamp() };

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        Files.Dispose();
        await Platform.DisposeAsync();
    }
}
