using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Quarterlight.Chat.Emulator;
using Quarterlight.CrewBot;
using Quarterlight.Telemetry;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The whole bot, run by its own command line against the emulated platform and a planner.</summary>
internal sealed class EmulatedBot : IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly string folder = Directory.CreateTempSubdirectory("quarterlight-bot-").FullName;
    private readonly StringWriter error = new();

    private EmulatedBot(EmulatedPlatform platform, string planner, string? token, string[] more, Setup setup)
    {
        HealthPort = FreePort();
        var surroundings = new CrewBotSurroundings
        {
            Input = TextReader.Null,
            Output = TextWriter.Null,
            Error = error,
            StartEmbedded = (_, _) => throw new InvalidOperationException("the test names a planner"),
            DefaultDataFolder = folder,
            Logging = b => Watch(b.SetMinimumLevel(setup.LowestLevel).AddProvider(new Provider(Log)), setup.Book),
            AddTelemetry = setup.AddTelemetry,
            Environment = name => name switch
            {
                "DISCORD_TOKEN" => token ?? platform.Token,
                "DISCORD_PUBLIC_KEY" => platform.PublicKey,
                "DISCORD_API_URL" => platform.ApiBase.ToString(),
                "DISCORD_FILE_HOSTS" => platform.Address.GetLeftPart(UriPartial.Authority),
                "QUARTERLIGHT_DELEGATE_KEY" => setup.DelegateKey,
                "OTEL_EXPORTER_OTLP_ENDPOINT" => setup.Collector?.ToString(),
                _ => null,
            },
        };
        Run = CrewBotProgram.RunAsync(["serve", .. more, "--server", planner, "--health-port", $"{HealthPort}"], surroundings, stop.Token);
    }

    public ListLog Log { get; } = new();

    public Task<int> Run { get; }

    public int HealthPort { get; }

    public string Error => error.ToString();

    public string DataFolder => folder;

    /// <summary>Starts a bot, and waits until it is connected and its commands are registered.</summary>
    public static Task<EmulatedBot> StartAsync(EmulatedPlatform platform, string planner, params string[] more) => StartAsync(platform, planner, new Setup(), more);

    /// <summary>The same with surroundings of its own.</summary>
    public static async Task<EmulatedBot> StartAsync(EmulatedPlatform platform, string planner, Setup setup, params string[] more)
    {
        var bot = new EmulatedBot(platform, planner, null, ["discord", .. more], setup);
        await platform.Gateway.ConnectedAsync(TestContext.Current.CancellationToken);
        await TransportBench.UntilAsync(() => bot.Log.Lines.Any(l => l.Contains("Commands registered", StringComparison.Ordinal)), "the commands");
        return bot;
    }

    public static EmulatedBot Start(EmulatedPlatform platform, string planner, string? token, params string[] more) => new(platform, planner, token, more, new Setup());

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public void Stop() => stop.Cancel();

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await Run.WaitAsync(TimeSpan.FromSeconds(40));
        stop.Dispose();
        await error.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    private static void Watch(ILoggingBuilder logging, ILoggerProvider? book)
    {
        if (book is not null)
        {
            logging.AddProvider(book);
        }
    }

    /// <summary>What a test may set up otherwise.</summary>
    public sealed record Setup
    {
        public LogLevel LowestLevel { get; init; } = LogLevel.Debug;

        public string? DelegateKey { get; init; }

        public Uri? Collector { get; init; }

        /// <summary>Who gets every line too; null for nobody.</summary>
        public ILoggerProvider? Book { get; init; }

        public Action<IServiceCollection, ILoggingBuilder, TelemetryOptions?, SecretRedactor> AddTelemetry { get; init; } = TelemetrySetup.Add;
    }

    private sealed class Provider(ListLog log) : ILoggerProvider
    {
        public ILogger CreateLogger(string categoryName) => log;

        public void Dispose()
        {
        }
    }
}
