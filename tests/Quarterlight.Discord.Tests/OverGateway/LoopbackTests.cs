using System.Net.WebSockets;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>The real socket against a real server on this machine.</summary>
public sealed class LoopbackTests
{
    [Fact]
    public async Task Session_OverARealSocket_StartsResumesAndCloses()
    {
        var closes = new List<int?>();
        var operations = new List<int>();
        int connection = 0;
        await using WebApplication server = await ServeAsync(async socket =>
        {
            int number = Interlocked.Increment(ref connection);
            await SendAsync(socket, """{"op":10,"d":{"heartbeat_interval":45000}}""");
            operations.Add((await ReceiveAsync(socket))!.Value.GetProperty("op").GetInt32());
            if (number == 1)
            {
                await SendAsync(socket, """{"op":0,"t":"READY","s":1,"d":{"session_id":"session-1","resume_gateway_url":null}}""");
                await SendAsync(socket, $$$"""{"op":0,"t":"INTERACTION_CREATE","s":2,"d":{{{InteractionJson.Button(1)}}}}""");
                await SendAsync(socket, """{"op":7,"d":null}""");
            }
            else
            {
                await SendAsync(socket, $$$"""{"op":0,"t":"INTERACTION_CREATE","s":3,"d":{{{InteractionJson.Button(2)}}}}""");
                await SendAsync(socket, """{"op":0,"t":"RESUMED","s":4,"d":{}}""");
            }

            while (await ReceiveAsync(socket) is not null)
            {
                // Heartbeats.
            }

            closes.Add((int?)socket.CloseStatus);
            await socket.CloseOutputAsync(socket.CloseStatus ?? WebSocketCloseStatus.NormalClosure, null, CancellationToken.None);
        });
        var random = new Random(5);
        await using var source = new GatewaySource(
            new GatewayOptions { Token = SourceRig.Token, FirstBackOff = TimeSpan.FromMilliseconds(20) }, _ => Task.FromResult(SourceRig.Info(address: AddressOf(server).AbsoluteUri)), new MemoryLedger(),
            () => new ClientGatewaySocket(), TimeProvider.System, random.NextDouble, NullLogger<GatewaySource>.Instance);
        var received = new System.Collections.Concurrent.ConcurrentQueue<ulong>();
        using var stop = new CancellationTokenSource();
        Task running = source.RunAsync(
            i =>
            {
                received.Enqueue(i.Ticket.InteractionId);
                return true;
            },
            stop.Token);
        await Eventually.TrueAsync(() => received.Count == 2 && source.Health.Ready);
        await stop.CancelAsync();
        await Eventually.EndsAsync(running);
        await Eventually.TrueAsync(() => closes.Count == 2);
        Assert.Equal([1UL, 2UL], received);
        Assert.Equal([2, 6], operations);
        Assert.Equal([4000, 1000], closes);
    }

    [Theory]
    [InlineData(new byte[] { 0x88, 0x02, 0x0F, 0xA4 }, 4004)]
    [InlineData(new byte[] { 0x88, 0x05, 0x03, 0xE8, 0x65, 0x6E, 0x64 }, 1000)]
    [InlineData(new byte[] { 0x88, 0x02, 0x03, 0xE8 }, null)]
    [InlineData(new byte[] { 0x88, 0x00 }, null)]
    public async Task Close_AsItsBytesOnTheWire_GivesItsCode(byte[] closeFrame, int? expected)
    {
        await using WebApplication server = await ServeRawAsync(closeFrame);
        using var socket = new ClientGatewaySocket();
        await socket.ConnectAsync(AddressOf(server), TestContext.Current.CancellationToken);
        SocketRead read = await socket.ReceiveAsync(new byte[100], TestContext.Current.CancellationToken);
        Assert.Equal((SocketReadKind.Closed, expected), (read.Kind, read.CloseCode));
        await socket.CloseAsync(4000, TestContext.Current.CancellationToken);
        await socket.CloseAsync(4000, TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Connection_DropsWithoutClose_ReadFails()
    {
        await using WebApplication server = await ServeRawAsync([]);
        using var socket = new ClientGatewaySocket();
        await socket.ConnectAsync(AddressOf(server), TestContext.Current.CancellationToken);
        await Assert.ThrowsAsync<WebSocketException>(async () => await socket.ReceiveAsync(new byte[100], TestContext.Current.CancellationToken));
    }

    private static Uri AddressOf(WebApplication server) => new(
        server.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single().Replace("http", "ws", StringComparison.Ordinal));

    // Upgrades by hand (RFC 6455, section 4.2.2), sends these bytes and drops the connection.
    private static Task<WebApplication> ServeRawAsync(byte[] bytes) => StartAsync(app => app.Run(async context =>
    {
        string key = context.Request.Headers.SecWebSocketKey + "258EAFA5-E914-47DA-95CA-C5AB0DC85B11";
#pragma warning disable CA5350 // The protocol says so.
        context.Response.Headers.SecWebSocketAccept = Convert.ToBase64String(SHA1.HashData(Encoding.ASCII.GetBytes(key)));
#pragma warning restore CA5350
        context.Response.Headers.Upgrade = "websocket";
        await using Stream stream = await context.Features.GetRequiredFeature<IHttpUpgradeFeature>().UpgradeAsync();
        await stream.WriteAsync(bytes);
        await stream.FlushAsync();
    }));

    private static Task<WebApplication> ServeAsync(Func<WebSocket, Task> serve) => StartAsync(app =>
    {
        app.UseWebSockets();
        app.Run(async context =>
        {
            using WebSocket socket = await context.WebSockets.AcceptWebSocketAsync();
            await serve(socket);
        });
    });

    private static async Task<WebApplication> StartAsync(Action<WebApplication> configure)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrel().UseUrls("http://127.0.0.1:0");
        WebApplication app = builder.Build();
        configure(app);
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }

    private static Task SendAsync(WebSocket socket, string text) =>
        socket.SendAsync(Encoding.UTF8.GetBytes(text), WebSocketMessageType.Text, true, CancellationToken.None);

    private static async Task<JsonElement?> ReceiveAsync(WebSocket socket)
    {
        byte[] buffer = new byte[8192];
        WebSocketReceiveResult read = await socket.ReceiveAsync(buffer, CancellationToken.None);
        return read.MessageType == WebSocketMessageType.Close ? null : JsonDocument.Parse(buffer.AsMemory(0, read.Count)).RootElement;
    }
}
