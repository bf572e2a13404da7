using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Cdn;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Gateway;
using Quarterlight.Chat.Emulator.Interactions;
using Quarterlight.Chat.Emulator.Recording;
using Quarterlight.Chat.Emulator.Rest;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator;

/// <summary>
/// An emulator of Discord's API, version 10, on the loopback address: REST, gateway and attachment host, as much as a bot with slash commands uses, with the
/// refusals and limits that are documented. Tests drive it as the crew does:
/// <code>
/// await using var platform = await EmulatedPlatform.StartAsync();
/// // point the bot at platform.ApiBase (…/api/v10), platform.FileHost and platform.Token, start it, then:
/// await platform.Gateway.ConnectedAsync(cancellation);
/// SentInteraction asked = platform.Crew.Slash("why", ("site", "visor clip"));
/// VisibleMessage answer = await asked.MessageAsync(cancellation);      // waits until it is no longer "thinking"
/// answer.Content; answer.IsPrivate; answer.Files[0].AltText; answer.Buttons; answer.Pings;
/// asked.AcknowledgedAfter;                                             // real time from delivery
/// SentInteraction next = platform.Crew.Press(answer, "Next best");     // label or id
/// SentInteraction typed = platform.Crew.Type("why", "site", "vis");    // await typed.ChoicesAsync(…)
/// SentInteraction form = platform.Crew.Slash("scene new");             // OpenedForm f = await form.FormAsync(…)
/// SentInteraction sent = platform.Crew.Submit(f, new Dictionary&lt;string, object&gt; { ["name"] = "12A" }, form);
/// VisibleMessage clip = platform.Crew.Post("take 3", new EmulatedFile("t3.wav", "audio/wav", bytes));
/// SentInteraction judged = platform.Crew.Menu("Judge this clip", clip);
/// asked.DeliverAgain();                                                // the same interaction a second time
/// platform.Gateway.DropClients();                                      // and RequestReconnect, Invalidate, CloseClients, AcknowledgesHeartbeats …
/// platform.Faults.Add(new FaultRule(FaultKind.CutAfter) { Method = "PATCH", Path = "/messages/@original$" });
/// platform.Clock.Advance(TimeSpan.FromMinutes(16));                    // the token is over
/// await platform.Endpoint.SetAsync(url, cancellation);                 // signed HTTP instead of the gateway
/// platform.Recording.Requests; platform.Recording.UnknownRoutes; await platform.Recording.DumpAsync("payloads.jsonl", cancellation);
/// </code>
/// All members may be used from any thread.
/// </summary>
public sealed class EmulatedPlatform : IAsyncDisposable
{
    private static readonly TimeSpan DefaultWait = TimeSpan.FromSeconds(10);
    private readonly Lock gate = new();
    private readonly List<EmulatedGuild> guilds = [];
    private readonly WebHost host;
    private readonly CancellationTokenSource stopping = new();
    private int tokens;

    private EmulatedPlatform(PlatformOptions options)
    {
        Options = options;
        Clock = new SkippableClock(options.Time);
        Ids = new Snowflakes(Clock);
        ApplicationId = Ids.Next();
        Faults = new FaultPlan(options.Seed);
        Files = new FileHost(Clock, options.LinkLife, Ids, Secret("links"));
        Commands = new CommandBook(Ids, ApplicationId);
        Desk = new InteractionDesk(this);
        Gateway = new EmulatedGateway(this);
        Endpoint = new EmulatedEndpoint(this, Secret("key"), Secret("another key"));
        host = new WebHost(this);
        Crew = In(AddChannel(AddGuild("Unit One"), "sound"), AddUser("boom.op"));
    }

    /// <summary>How it is set up.</summary>
    public PlatformOptions Options { get; }

    /// <summary>The clock of interactions and signed links.</summary>
    public SkippableClock Clock { get; }

    /// <summary>Where it listens, such as http://127.0.0.1:40123.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>Base of the API for a bot, with version and without slash at the end.</summary>
    public Uri ApiBase => new(Address, "/api/v10");

    /// <summary>Base of links to files.</summary>
    public Uri FileHost => new(Address, CdnEndpoint.Prefix);

    /// <summary>What GET /gateway/bot tells.</summary>
    public string GatewayUrl => $"ws://{Address.Authority}/gateway";

    /// <summary>What READY tells for RESUME.</summary>
    public string ResumeUrl => $"ws://{Address.Authority}/gateway/resume";

    /// <summary>The bot's token.</summary>
    public string Token => Options.Token;

    /// <summary>The application, which is the bot's account too.</summary>
    public ulong ApplicationId { get; }

    /// <summary>The application's public key for signed HTTP, hex.</summary>
    public string PublicKey => Endpoint.PublicKey;

    /// <summary>A user in a channel of a server: there from the start.</summary>
    public UserInChannel Crew { get; }

    /// <summary>Servers the bot is on.</summary>
    public IReadOnlyList<EmulatedGuild> Guilds => Locked(() => guilds.ToArray());

    /// <summary>The gateway.</summary>
    public EmulatedGateway Gateway { get; }

    /// <summary>Signed HTTP delivery.</summary>
    public EmulatedEndpoint Endpoint { get; }

    /// <summary>What is to go wrong over HTTP.</summary>
    public FaultPlan Faults { get; }

    /// <summary>Limits requests are held to.</summary>
    public RateLimits RateLimits { get; } = new();

    /// <summary>Everything that went over the wire.</summary>
    public PlatformRecording Recording { get; } = new();

    /// <summary>Everything users did so far.</summary>
    public IReadOnlyList<SentInteraction> Interactions => Locked(() => Desk.All.ToArray());

    internal Snowflakes Ids { get; }

    internal FileHost Files { get; }

    internal CommandBook Commands { get; }

    internal InteractionDesk Desk { get; }

    internal ChangeSignal Changes { get; } = new();

    internal CancellationToken Stopping => stopping.Token;

    /// <summary>Starts an emulator.</summary>
    /// <param name="options">How it is to be set up; null for the defaults.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<EmulatedPlatform> StartAsync(PlatformOptions? options = null, CancellationToken cancellation = default)
    {
        var platform = new EmulatedPlatform(options ?? new PlatformOptions());
        platform.Address = await platform.host.StartAsync(cancellation).ConfigureAwait(false);
        platform.Files.Base = platform.FileHost.ToString();
        return platform;
    }

    /// <summary>Adds a server the bot is on. Sessions hear of it when they start.</summary>
    /// <param name="name">Its name.</param>
    public EmulatedGuild AddGuild(string name)
    {
        var guild = new EmulatedGuild(Ids.Next(), name);
        Locked(() => guilds.Add(guild));
        return guild;
    }

    /// <summary>Adds a text channel to a server, or a private conversation with the bot.</summary>
    /// <param name="guild">The server; null for a private conversation.</param>
    /// <param name="name">Its name.</param>
    public EmulatedChannel AddChannel(EmulatedGuild? guild, string name)
    {
        var channel = new EmulatedChannel(Ids.Next(), name, guild);
        Locked(() => guild?.Add(channel));
        return channel;
    }

    /// <summary>Adds an account.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="locale">Language set in the app.</param>
    public EmulatedUser AddUser(string name, string locale = "en-US") => new(Ids.Next(), name) { Locale = locale };

    /// <summary>Somebody in a channel, to act there.</summary>
    /// <param name="channel">Where.</param>
    /// <param name="user">Who.</param>
    public UserInChannel In(EmulatedChannel channel, EmulatedUser user) => new(this, user, channel);

    /// <summary>Waits until something holds; asked after each change, and now and then.</summary>
    /// <param name="condition">What is to hold.</param>
    /// <param name="what">Name of it for the message of the exception.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">It did not.</exception>
    public async Task UntilAsync(Func<bool> condition, string what, CancellationToken cancellation, TimeSpan? within = null)
    {
        ArgumentNullException.ThrowIfNull(condition);
        long start = TimeProvider.System.GetTimestamp();
        while (true)
        {
            Task change = Changes.Next;
            if (condition())
            {
                return;
            }

            if (TimeProvider.System.GetElapsedTime(start) > (within ?? DefaultWait))
            {
                throw new TimeoutException($"Waited in vain for {what}. Refused so far: {string.Join("; ", Recording.Refused.TakeLast(5).Select(r => $"{r} {r.Answer}"))}");
            }

            await Task.WhenAny(change, Task.Delay(50, cancellation)).ConfigureAwait(false);
            cancellation.ThrowIfCancellationRequested();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await stopping.CancelAsync().ConfigureAwait(false);
        Gateway.Stop();
        await host.DisposeAsync().ConfigureAwait(false);
        Endpoint.Dispose();
        stopping.Dispose();
    }

    internal T Locked<T>(Func<T> act)
    {
        lock (gate)
        {
            return act();
        }
    }

    internal void Locked(Action act)
    {
        lock (gate)
        {
            act();
        }
    }

    internal void TakeControl(Func<Microsoft.AspNetCore.Http.HttpContext, Task<bool>> control) => host.Control = control;

    internal JsonObject BotJson() => WorldJson.Bot(ApplicationId, Options.BotName);

    internal string NewToken() => "aW50ZXJhY3Rpb24" + Convert.ToHexStringLower(Secret($"token {Interlocked.Increment(ref tokens)}"));

    internal SentInteraction Send(SentInteraction interaction, UserInChannel by, JsonObject data)
    {
        Locked(() => Desk.Add(interaction));
        JsonObject json = InteractionJson.Of(this, interaction, by, data);
        Recording.Sent("in:interaction", json);
        interaction.Json = json.ToJsonString();
        Deliver(interaction);
        return interaction;
    }

    internal void Deliver(SentInteraction interaction)
    {
        if (Endpoint.Url is not null)
        {
            _ = Task.Run(() => Endpoint.DeliverAsync(interaction, Stopping), Stopping);
        }
        else
        {
            Gateway.Dispatch(interaction.Channel.Guild?.Id, "INTERACTION_CREATE", JsonNode.Parse(interaction.Json)!, interaction.Delivered);
        }
    }

    private byte[] Secret(string name) => SHA256.HashData(Encoding.UTF8.GetBytes($"{Options.Seed} {name}"));
}
