using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>A REST client on a clock of the test's own, with a script in place of the network.</summary>
internal sealed class RestRig : IDisposable
{
    public const string BotToken = "bot-token-SECRET-1";
    public const string InteractionToken = "interaction-token-SECRET-2";

    private readonly long start;

    public RestRig(Func<SentRequest, int, CancellationToken, Task<HttpResponseMessage>> answer, RestOptions? options = null)
    {
        start = Time.GetTimestamp();
        Handler = new ScriptedHandler(() => Now, answer);
        Client = new RestClient((options ?? new RestOptions()) with { BotToken = BotToken }, Time, Log, Handler);
        Files = new AttachmentFetcher(new AttachmentOptions(), Time, Log, new ScriptedHandler(() => Now, (_, _, _) => throw new InvalidOperationException()));
        Responder = new RestResponder(Client, Files);
    }

    public RestRig(Func<SentRequest, int, HttpResponseMessage> answer, RestOptions? options = null)
        : this((request, number, _) => Task.FromResult(answer(request, number)), options)
    {
    }

    public FakeTimeProvider Time { get; } = new();

    public ScriptedHandler Handler { get; }

    public RestClient Client { get; }

    public AttachmentFetcher Files { get; }

    public RestResponder Responder { get; }

    public CapturedLog Log { get; } = new();

    public TimeSpan Now => Time.GetElapsedTime(start);

    public IReadOnlyList<SentRequest> Sent => Handler.Sent;

    public static CancellationToken Stop => TestContext.Current.CancellationToken;

    public InteractionTicket Ticket(ulong id = 20) => new(10, id, $"{InteractionToken}-{id}") { ReceivedTimestamp = Time.GetTimestamp() };

    /// <summary>Lets time pass in small steps until the work is over.</summary>
    public async Task<T> RunAsync<T>(Task<T> work, int stepMilliseconds = 10)
    {
        await PassAsync(work, stepMilliseconds);
        return await work;
    }

    /// <summary>Lets time pass in small steps until the work is over.</summary>
    public async Task RunAsync(Task work, int stepMilliseconds = 10)
    {
        await PassAsync(work, stepMilliseconds);
        await work;
    }

    /// <summary>The fault the work ends with.</summary>
    public async Task<DiscordException> FaultAsync(Task work, int stepMilliseconds = 10)
    {
        await PassAsync(work, stepMilliseconds);
        return await Assert.ThrowsAsync<DiscordException>(() => work);
    }

    public Task<RestAnswer> ReadCommandsAsync(ulong? guild = null) =>
        Client.SendAsync(new RestCall(RestRoute.Commands(HttpMethod.Get, 10, guild)), Stop);

    public void Dispose()
    {
        Client.Dispose();
        Files.Dispose();
    }

    private async Task PassAsync(Task work, int stepMilliseconds)
    {
        long begun = TimeProvider.System.GetTimestamp();
        while (!work.IsCompleted)
        {
            Assert.True(TimeProvider.System.GetElapsedTime(begun) < TimeSpan.FromSeconds(60), "the work does not end");

            // Work goes on while it can; only when it has had its chance does time pass.
            for (int i = 0; i < 20 && !work.IsCompleted; i++)
            {
                await Task.Yield();
            }

            await Task.WhenAny(work, Task.Delay(1, Stop));
            Time.Advance(TimeSpan.FromMilliseconds(stepMilliseconds));
        }
    }
}

/// <summary>Keeps what is logged.</summary>
internal sealed class CapturedLog : ILogger
{
    private readonly Lock gate = new();
    private readonly List<(LogLevel Level, int Id, string Text)> lines = [];

    public IReadOnlyList<(LogLevel Level, int Id, string Text)> Lines
    {
        get
        {
            lock (gate)
            {
                return [.. lines];
            }
        }
    }

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        string values = state is IEnumerable<KeyValuePair<string, object?>> pairs ? string.Join(' ', pairs.Select(p => p.Value)) : "";
        lock (gate)
        {
            lines.Add((logLevel, eventId.Id, $"{formatter(state, exception)} {values} {exception}"));
        }
    }
}
