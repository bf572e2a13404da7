using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Quarterlight.Chat.Emulator;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Support;

/// <summary>The gateway source with the real socket and the real REST client against the emulated platform.</summary>
internal sealed class EmulatedRun : IAsyncDisposable
{
    private static readonly CommandDefinition[] Commands = [new("plan", "Plans", CommandKind.Slash, [new("scene", "Scene", CommandOptionKind.Text) { Autocomplete = true }])];

    private readonly CancellationTokenSource stop = new();
    private readonly RestClient rest;

    private EmulatedRun(EmulatedPlatform platform, string? token)
    {
        Platform = platform;
        var random = new Random(3);
        rest = new RestClient(
            new RestOptions { BaseAddress = platform.ApiBase, BotToken = platform.Token }, TimeProvider.System, NullLogger<RestClient>.Instance);
        Source = new GatewaySource(
            new GatewayOptions
            {
                Token = token ?? platform.Token,
                FirstBackOff = TimeSpan.FromMilliseconds(50),
                IdentifySpacing = TimeSpan.FromMilliseconds(100),
            },
            new GatewayInfoReader(rest).ReadAsync, new MemoryLedger(), () => new ClientGatewaySocket(), TimeProvider.System,
            () =>
            {
                lock (random)
                {
                    return random.NextDouble();
                }
            },
            new ListLogger<GatewaySource>(Logged));
    }

    public EmulatedPlatform Platform { get; }

    public GatewaySource Source { get; }

    public Task Running { get; private set; } = Task.CompletedTask;

    public ConcurrentQueue<Interaction> Received { get; } = new();

    public ConcurrentQueue<(LogLevel Level, string Text)> Logged { get; } = new();

    public static async Task<EmulatedRun> StartAsync(PlatformOptions? options = null, string? token = null)
    {
        EmulatedPlatform platform = await EmulatedPlatform.StartAsync(options, TestContext.Current.CancellationToken);
        var run = new EmulatedRun(platform, token);
        await new RestRegistry(run.rest, platform.ApplicationId).RegisterAsync(Commands, null, TestContext.Current.CancellationToken);
        run.Running = run.Source.RunAsync(
            i =>
            {
                run.Received.Enqueue(i);
                return true;
            },
            run.stop.Token);
        return run;
    }

    /// <summary>Waits until a number of interactions were received.</summary>
    public Task ReceivedAsync(int count) => Eventually.TrueAsync(() => Received.Count >= count, () => $"{Received.Count} were received");

    public async Task StopAsync()
    {
        await stop.CancelAsync();
        await Eventually.EndsAsync(Running);
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await Eventually.TrueAsync(() => Running.IsCompleted);
        Assert.All(Logged, l => Assert.DoesNotContain(Platform.Token, l.Text, StringComparison.Ordinal));
        rest.Dispose();
        stop.Dispose();
        await Platform.DisposeAsync();
    }
}
