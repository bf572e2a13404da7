using System.Diagnostics;
using System.Diagnostics.Metrics;
using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Logging;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>No token, no address of a file and nothing that users wrote gets into logs, traces, figures or exceptions.</summary>
public sealed class RestSecretTests
{
    private const string UserText = "user-text-SECRET-3";
    private const string Query = "?ex=1&is=2&hm=query-SECRET-4";

    [Fact]
    public async Task Everything_GoesWrong_NoSecretIsTold()
    {
        List<string> told = [];
        using var listener = new ActivityListener
        {
            ShouldListenTo = _ => true,
            Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllDataAndRecorded,
            ActivityStopped = a => Tell(told, $"{a.Source.Name} {a.DisplayName} {a.StatusDescription} {string.Join(' ', a.TagObjects)} {string.Join(' ', a.Events.SelectMany(e => e.Tags))}"),
        };
        ActivitySource.AddActivityListener(listener);
        using var meters = new MeterListener { InstrumentPublished = (instrument, l) => l.EnableMeasurementEvents(instrument) };
        meters.SetMeasurementEventCallback<long>((instrument, _, tags, _) => Tell(told, $"{instrument.Name} {string.Join(' ', tags.ToArray())}"));
        meters.SetMeasurementEventCallback<double>((instrument, _, tags, _) => Tell(told, $"{instrument.Name} {string.Join(' ', tags.ToArray())}"));
        meters.Start();

        // A real socket and the real handlers: what the runtime itself would tell is looked at, too.
        await using var server = await HostileServer.StartAsync(
            """{"message":"user-text-SECRET-3","code":50035,"errors":{"data":{"content":{"_errors":[{"code":"BASE_TYPE_MAX_LENGTH","message":"user-text-SECRET-3"}]},"user-text-SECRET-3 ":{"_errors":[{"code":"user text"}]}}}}""");
        var log = new CapturedLog();
        using var client = new RestClient(
            new RestOptions { BaseAddress = new Uri(server.Address, "/api/v10"), BotToken = RestRig.BotToken, TryTimeout = TimeSpan.FromSeconds(1) }, TimeProvider.System, log, RestTry.MakeHandler());
        using var files = new AttachmentFetcher(new AttachmentOptions { LoopbackTestHost = server.Address, FirstByte = TimeSpan.FromMilliseconds(300) }, TimeProvider.System, new Logger(log));
        var responder = new RestResponder(client, files);
        var ticket = new InteractionTicket(10, 20, RestRig.InteractionToken);
        var message = new OutgoingMessage { Content = UserText, Files = [new OutgoingFile("a.txt", "text/plain", "user-text-SECRET-3"u8.ToArray(), UserText)] };
        var attachment = new DiscordAttachment(5, $"{UserText}.wav", 100, $"{server.Address}attachments/1/5/{UserText}.wav{Query}");
        foreach (int status in (int[])[400, 401, 403, 404, 413, 429, 500, 302, -1, -2])
        {
            server.Status = status;
            using var one = new RestClient(
                new RestOptions { BaseAddress = new Uri(server.Address, "/api/v10"), BotToken = RestRig.BotToken, TryTimeout = TimeSpan.FromMilliseconds(300) }, TimeProvider.System, log, RestTry.MakeHandler());
            var each = new RestResponder(one, files);
            foreach (Func<Task> act in (Func<Task>[])
            [
                () => each.ReplyAsync(ticket, message, RestRig.Stop),
                () => each.EditFirstAsync(ticket, message, RestRig.Stop),
                () => each.FollowUpAsync(ticket, message, RestRig.Stop),
                () => new RestRegistry(one, 10).RegisterAsync([], null, RestRig.Stop),
                () => each.OpenAttachmentAsync(attachment, 1000, RestRig.Stop),
                () => each.OpenAttachmentAsync(attachment with { Url = $"https://elsewhere.example/{Query}" }, 1000, RestRig.Stop),
            ])
            {
                DiscordException fault = await Assert.ThrowsAsync<DiscordException>(act);
                Tell(told, fault.ToString());
            }
        }

        await server.DisposeAsync();
        Tell(told, (await Assert.ThrowsAsync<DiscordException>(() => responder.DeferAsync(ticket, true, RestRig.Stop))).ToString());
        told.AddRange(log.Lines.Select(l => l.Text));
        Assert.Contains(told, t => t.Contains("BASE_TYPE_MAX_LENGTH", StringComparison.Ordinal));
        Assert.Contains(told, t => t.Contains("/webhooks/{id}/{token}", StringComparison.Ordinal));
        Assert.Contains(told, t => t.StartsWith("Quarterlight.Discord.Rest", StringComparison.Ordinal));
        Assert.DoesNotContain(told, t => t.Contains("SECRET", StringComparison.Ordinal));
    }

    private static void Tell(List<string> told, string text)
    {
        lock (told)
        {
            told.Add(text);
        }
    }

    private sealed class Logger(CapturedLog log) : ILogger<AttachmentFetcher>
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            log.Log(logLevel, eventId, state, exception, formatter);
    }

    /// <summary>Answers everything with one status; -1 cuts the connection, -2 hangs.</summary>
    private sealed class HostileServer : IAsyncDisposable
    {
        private readonly TcpListener listener = new(IPAddress.Loopback, 0);
        private readonly CancellationTokenSource stop = new();
        private readonly string body;
        private Task loop = Task.CompletedTask;

        private HostileServer(string body) => this.body = body;

        public int Status { get; set; } = 400;

        public Uri Address { get; private set; } = null!;

        public static Task<HostileServer> StartAsync(string body)
        {
            var server = new HostileServer(body);
            server.listener.Start();
            server.Address = new Uri($"http://127.0.0.1:{((IPEndPoint)server.listener.LocalEndpoint).Port}/");
            server.loop = server.AcceptAsync();
            return Task.FromResult(server);
        }

        public async ValueTask DisposeAsync()
        {
            if (!stop.IsCancellationRequested)
            {
                await stop.CancelAsync();
                listener.Stop();
                await loop;
            }
        }

        private async Task AcceptAsync()
        {
            try
            {
                while (true)
                {
                    TcpClient client = await listener.AcceptTcpClientAsync(stop.Token);
                    _ = ServeAsync(client);
                }
            }
            catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
            {
            }
        }

        private async Task ServeAsync(TcpClient client)
        {
            using (client)
            {
                try
                {
                    NetworkStream stream = client.GetStream();
                    byte[] buffer = new byte[64 * 1024];
                    _ = await stream.ReadAsync(buffer, stop.Token);
                    if (Status == -2)
                    {
                        await Task.Delay(Timeout.Infinite, stop.Token);
                    }

                    if (Status == -1)
                    {
                        return;
                    }

                    string head = $"HTTP/1.1 {Status} X\r\nContent-Type: application/json\r\nLocation: http://elsewhere.example/{RestRig.InteractionToken}\r\nRetry-After: 3600\r\nContent-Length: {body.Length}\r\nConnection: close\r\n\r\n";
                    await stream.WriteAsync(System.Text.Encoding.ASCII.GetBytes(head + body), stop.Token);
                    client.Client.Shutdown(SocketShutdown.Send);
                    while (await stream.ReadAsync(buffer, stop.Token) > 0)
                    {
                    }
                }
                catch (Exception e) when (e is OperationCanceledException or IOException or SocketException)
                {
                }
            }
        }
    }
}
