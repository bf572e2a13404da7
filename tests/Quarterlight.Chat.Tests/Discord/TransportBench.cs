using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Keeping;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The transport between a platform, a desk and a clock of the test's own.</summary>
internal sealed class TransportBench : IAsyncDisposable
{
    public const ulong Guild = 77;
    public const ulong Channel = 88;
    public const ulong User = 99;
    public const string TokenText = "a-token-nobody-may-see";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly CancellationTokenSource stop = new();
    private readonly CrewBotMeters meters = new();
    private readonly DiscordTransport transport;
    private readonly string folder = Directory.CreateTempSubdirectory("quarterlight-transport-").FullName;
    private Func<Interaction, bool>? receive;
    private ulong next = 1000;

    private TransportBench(DiscordTransportOptions options, FakeSource source)
    {
        Ledger = new PendingLedger(folder, Time);
        Team = new CrewTeam("bot-77", Desk, Conversations);
        transport = new DiscordTransport(new DiscordTransportParts
        {
            Source = source,
            Responder = Platform,
            Teams = new RecentTeams(g => Team with { Id = $"bot-{g}" }),
            Commands = Commands,
            Ledger = Ledger,
            Users = new UserHash("a secret of the test"),
            Meters = meters,
            Log = Log,
            Time = Time,
        }, options);
        Run = transport.RunAsync(stop.Token);
    }

    public static IReadOnlyList<CrewCommand> Commands { get; } =
    [
        new CrewCommand("plan", "Where the microphones go.", [new CrewOption("scene", "Scene.", CrewOptionKind.Scene)]),
        new CrewCommand("clip", "Judges a clip.", [new CrewOption("file", "Sound file.", CrewOptionKind.File) { Required = true }]) { Private = true, MessageMenuName = "Judge this clip" },
        new CrewCommand("scene new", "A new scene.", []) { OpensForm = true, Changes = true },
        new CrewCommand("scene list", "All scenes.", []),
        new CrewCommand("settings show", "The team's settings.", []),
    ];

    public FakePlatform Platform { get; } = new();

    public FakeDesk Desk { get; } = new();

    public ManualTime Time { get; } = new();

    public RecentConversations Conversations { get; } = new();

    public PendingLedger Ledger { get; }

    public ListLog Log { get; } = new();

    public CrewTeam Team { get; }

    public Task Run { get; }

    public string LedgerFolder => folder;

    public int Waiting => transport.Waiting;

    public static async Task<TransportBench> StartAsync(DiscordTransportOptions? options = null)
    {
        var source = new FakeSource();
        var bench = new TransportBench(options ?? new DiscordTransportOptions(), source);
        bench.receive = await source.Running.WaitAsync(Patience, TestContext.Current.CancellationToken);
        return bench;
    }

    public bool Receive(Interaction interaction) => receive!(interaction);

    /// <summary>A command as it would arrive now.</summary>
    public Interaction Command(string name, string? sub = null, params CommandOptionValue[] options) => Any(InteractionKind.Command) with
    {
        Command = new CommandData { Name = name, Kind = CommandKind.Slash, Subcommand = sub, Options = options },
    };

    public Interaction Any(InteractionKind kind)
    {
        ulong id = Interlocked.Increment(ref next);
        return new Interaction
        {
            Ticket = new InteractionTicket(1, id, TokenText),
            Kind = kind,
            GuildId = Guild,
            ChannelId = Channel,
            UserId = User,
            ReceivedTimestamp = Time.GetTimestamp(),
        };
    }

    /// <summary>Sends a command and waits for the answer to stand there.</summary>
    public async Task<OutgoingMessage> AnswerToAsync(Interaction interaction)
    {
        Assert.True(Receive(interaction));
        await UntilAsync(() => Platform.Shown(interaction.Ticket.InteractionId).Count > 0, "an answer");
        return Assert.Single(Platform.Shown(interaction.Ticket.InteractionId));
    }

    /// <summary>Waits for something that happens without the clock.</summary>
    public static async Task UntilAsync(Func<bool> condition, string what)
    {
        long start = TimeProvider.System.GetTimestamp();
        while (!condition())
        {
            Assert.True(TimeProvider.System.GetElapsedTime(start) < Patience, $"Waited in vain for {what}.");
            await Task.Delay(2, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Moves the clock in steps until something holds.</summary>
    public Task MoveUntilAsync(Func<bool> condition, TimeSpan step, string what) => UntilAsync(() =>
    {
        if (condition())
        {
            return true;
        }

        Time.Advance(step);
        return false;
    }, what);

    /// <summary>Waits until an interaction has its line in the audit.</summary>
    public Task EndedAsync(int count = 1) => UntilAsync(() => Log.Lines.Count(l => l.Contains("end after", StringComparison.Ordinal)) >= count, "the end");

    public void Stop() => stop.Cancel();

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await MoveUntilAsync(() => Run.IsCompleted, TimeSpan.FromSeconds(1), "the transport to stop");
        transport.Dispose();
        meters.Dispose();
        stop.Dispose();
        Directory.Delete(folder, recursive: true);
    }
}

/// <summary>Keeps what was logged.</summary>
internal sealed class ListLog : ILogger
{
    private readonly ConcurrentQueue<string> lines = new();

    public IReadOnlyList<string> Lines => [.. lines];

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        lines.Enqueue($"{logLevel} {eventId.Id} {formatter(state, exception)} {exception}");
}
