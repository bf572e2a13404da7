using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;
using Quarterlight.Discord.Gateway;

namespace Quarterlight.Discord.Tests.Support;

/// <summary>A gateway source with everything around it played by the test.</summary>
internal sealed class SourceRig : IAsyncDisposable
{
    public const string Token = "secret-bot-token";

    private readonly ConcurrentQueue<FakeSocket> sockets = new();
    private readonly CancellationTokenSource stop = new();
    private int taken;

    public SourceRig(Func<GatewayOptions>? options = null)
    {
        Options = options?.Invoke() ?? new GatewayOptions { Token = Token };
    }

    public GatewayOptions Options { get; }

    public WatchedTime Time { get; } = new();

    public MemoryLedger Ledger { get; init; } = new();

    /// <summary>Randomness; null for <see cref="Random"/>.</summary>
    public Func<double>? RandomSource { get; init; }

    /// <summary>What randomness gives.</summary>
    public double Random { get; set; } = 0.5;

    /// <summary>What the platform says about its gateway.</summary>
    public Func<Task<GatewayInfo>> Find { get; set; } = () => Task.FromResult(Info());

    /// <summary>How a new socket is.</summary>
    public Action<FakeSocket>? Prepare { get; set; }

    /// <summary>What happens with an interaction.</summary>
    public Func<Interaction, bool>? Receive { get; set; }

    public ConcurrentQueue<Interaction> Received { get; } = new();

    public ConcurrentQueue<(LogLevel Level, string Text)> Logged { get; } = new();

    public GatewaySource Source { get; private set; } = null!;

    public Task Running { get; private set; } = Task.CompletedTask;

    public int Finds { get; private set; }

    public int Connections => sockets.Count;

    public IReadOnlyList<FakeSocket> Sockets => [.. sockets];

    public static GatewayInfo Info(int remaining = 1000, double resetSeconds = 3600, string address = "wss://gateway.example.test", int total = 1000) =>
        new(new Uri(address), 1, total, remaining, TimeSpan.FromSeconds(resetSeconds), 1);

    public SourceRig Start()
    {
        Source = new GatewaySource(
            Options,
            _ =>
            {
                Finds++;
                return Find();
            },
            Ledger,
            () =>
            {
                var socket = new FakeSocket(Time);
                Prepare?.Invoke(socket);
                sockets.Enqueue(socket);
                return socket;
            },
            Time, RandomSource ?? (() => Random), new ListLogger<GatewaySource>(Logged));
        Running = Task.Run(() => Source.RunAsync(
            interaction =>
            {
                Received.Enqueue(interaction);
                return Receive?.Invoke(interaction) ?? true;
            },
            stop.Token));
        return this;
    }

    /// <summary>The next connection the client opened.</summary>
    public async Task<FakeSocket> NextConnectionAsync()
    {
        await Eventually.TrueAsync(() => sockets.Count > taken && sockets.ElementAt(taken).Address is not null, () => $"only {taken} connections were opened");
        return sockets.ElementAt(taken++);
    }

    /// <summary>A new session: connected, greeted, identified, ready.</summary>
    public async Task<FakeSocket> ConnectAsync(double intervalMs = 40_000, string? resume = "wss://resume.example.test/")
    {
        FakeSocket socket = await NextConnectionAsync();
        socket.Hello(intervalMs);
        await socket.NextSentAsync(2);
        socket.Ready(resume: resume);
        await Eventually.TrueAsync(() => Source.Health.Ready);
        return socket;
    }

    /// <summary>Lets the wait before the next connection pass.</summary>
    public async Task PassBackOffAsync(double seconds)
    {
        await Eventually.TrueAsync(() => Source.Health.Detail == "waiting to connect again", () => $"it is {Source.Health.Detail}");
        await Time.PassAsync(TimeSpan.FromSeconds(seconds));
    }

    /// <summary>Asks it to stop.</summary>
    public Task CancelAsync() => stop.CancelAsync();

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();

        // Nothing may hang, whatever a test left behind: closing is bounded by time alone.
        await Eventually.TrueAsync(
            () =>
            {
                Time.Advance(TimeSpan.FromSeconds(1));
                return Running.IsCompleted;
            },
            () => "the source did not stop");
        Assert.All(sockets, s => Assert.Empty(s.Misuses));
        Assert.All(Logged, l => Assert.DoesNotContain("secret", l.Text, StringComparison.Ordinal));
        Assert.All(Logged, l => Assert.DoesNotContain("session-", l.Text, StringComparison.Ordinal));
        stop.Dispose();
    }
}

/// <summary>Keeps times in memory.</summary>
internal sealed class MemoryLedger : IIdentifyLedger
{
    private IReadOnlyList<DateTimeOffset> kept = [];

    public IReadOnlyList<DateTimeOffset> Kept
    {
        get => Volatile.Read(ref kept);
        set => Volatile.Write(ref kept, value);
    }

    public bool Fails { get; init; }

    public Task<IReadOnlyList<DateTimeOffset>> ReadAsync(CancellationToken cancellation) => Fails ? throw new IOException("disk") : Task.FromResult(Kept);

    public Task WriteAsync(IReadOnlyList<DateTimeOffset> identifies, CancellationToken cancellation)
    {
        if (Fails)
        {
            throw new IOException("disk");
        }

        Kept = identifies;
        return Task.CompletedTask;
    }
}

/// <summary>Keeps what is logged.</summary>
internal sealed class ListLogger<T>(ConcurrentQueue<(LogLevel Level, string Text)> lines) : ILogger<T>
{
    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        lines.Enqueue((logLevel, formatter(state, exception) + exception));
}
