using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.Recording;

namespace Quarterlight.Chat.Emulator.Gateway;

/// <summary>One socket: reads frames, holds the client to the rules of frames, and hands them to the gateway.</summary>
internal sealed class GatewayConnection(int number, WebSocket socket, EmulatedPlatform platform) : IDisposable
{
    private const int MostFrameBytes = 4096;
    private const int FrameWindowSeconds = 60;
    private static readonly TimeSpan CloseWait = TimeSpan.FromSeconds(2);
    private readonly Channel<(string? Text, Action? Sent, int Close, string Reason)> outbox = Channel.CreateUnbounded<(string?, Action?, int, string)>();
    private readonly CancellationTokenSource ended = new();
    private readonly Queue<long> frames = [];
    private long lastBeat = TimeProvider.System.GetTimestamp();
    private bool closing;
    private bool byPlatform;

    /// <summary>The session it carries; null before IDENTIFY or RESUME.</summary>
    public GatewaySession? Session { get; set; }

    /// <summary>Its number, counted from 1.</summary>
    public int Number => number;

    /// <summary>Puts a frame in line.</summary>
    public void Send(string text, Action? sent = null) => outbox.Writer.TryWrite((text, sent, 0, ""));

    /// <summary>Puts a frame in line.</summary>
    public void Send(int op, JsonNode? data) => Send(new JsonObject { ["t"] = null, ["s"] = null, ["op"] = op, ["d"] = data }.ToJsonString());

    /// <summary>Closes behind the frames in line.</summary>
    public void Close(int code, string reason)
    {
        closing = true;
        outbox.Writer.TryWrite((null, null, code, reason));
    }

    /// <summary>Cuts the connection without a close frame.</summary>
    public void Abort()
    {
        byPlatform = true;
        socket.Abort();
        try
        {
            // Not here and now: whoever calls may hold the platform's lock.
            _ = ended.CancelAsync();
        }
        catch (ObjectDisposedException)
        {
            // Over already.
        }
    }

    /// <inheritdoc/>
    public void Dispose() => ended.Dispose();

    /// <summary>Runs until the connection is over; gives the client's close code, or null when it broke or we closed.</summary>
    public async Task<int?> RunAsync(TimeSpan heartbeatInterval, CancellationToken stopping)
    {
        using var over = CancellationTokenSource.CreateLinkedTokenSource(ended.Token, stopping);
        Task sending = SendAllAsync(over.Token);
        Task watching = WatchAsync(heartbeatInterval, over.Token);
        int? code = null;
        try
        {
            code = await ReceiveAllAsync(over.Token).ConfigureAwait(false);
        }
        catch (Exception problem) when (problem is WebSocketException or OperationCanceledException or IOException)
        {
            socket.Abort();
        }

        await ended.CancelAsync().ConfigureAwait(false);
        await Task.WhenAll(sending, watching).ConfigureAwait(false);
        if (!byPlatform)
        {
            platform.Recording.Add(new RecordedFrame { Connection = number, Kind = FrameKind.Closed, CloseCode = code });
        }
        else if (!closing)
        {
            platform.Recording.Add(new RecordedFrame { Connection = number, Kind = FrameKind.Closed, ByPlatform = true });
        }

        return byPlatform ? null : code;
    }

    private async Task<int?> ReceiveAllAsync(CancellationToken cancellation)
    {
        byte[] buffer = new byte[MostFrameBytes + 1];
        while (true)
        {
            int length = 0;
            ValueWebSocketReceiveResult result;
            do
            {
                result = await socket.ReceiveAsync(buffer.AsMemory(Math.Min(length, MostFrameBytes)), cancellation).ConfigureAwait(false);
                length += result.Count;
            }
            while (!result.EndOfMessage);

            if (result.MessageType == WebSocketMessageType.Close)
            {
                await AnswerCloseAsync(cancellation).ConfigureAwait(false);
                return (int?)socket.CloseStatus;
            }

            if (!closing)
            {
                Take(result.MessageType, buffer.AsSpan(0, Math.Min(length, buffer.Length)), length);
            }
        }
    }

    private void Take(WebSocketMessageType type, ReadOnlySpan<byte> bytes, int length)
    {
        long now = TimeProvider.System.GetTimestamp();
        frames.Enqueue(now);
        while (TimeProvider.System.GetElapsedTime(frames.Peek(), now).TotalSeconds > FrameWindowSeconds)
        {
            frames.Dequeue();
        }

        if (frames.Count > platform.Options.FramesPerMinute)
        {
            Close(CloseCodes.RateLimited, "Rate limited.");
            return;
        }

        if (length > MostFrameBytes || type != WebSocketMessageType.Text || Read(bytes) is not { } frame)
        {
            platform.Recording.Add(new RecordedFrame { Connection = number, Kind = FrameKind.Received, Text = null });
            Close(CloseCodes.DecodeError, "Error while decoding payload.");
            return;
        }

        JsonElement data = frame.Field("d") ?? default;
        long? op = frame.Whole("op");
        platform.Recording.Add(new RecordedFrame { Connection = number, Kind = FrameKind.Received, Op = (int?)op, Text = frame.GetRawText() });
        if (op is Opcodes.Heartbeat)
        {
            lastBeat = now;
        }

        platform.Gateway.Take(this, op, data);
    }

    private static JsonElement? Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var reader = new Utf8JsonReader(bytes);
            using var document = JsonDocument.ParseValue(ref reader);
            return document.RootElement is { ValueKind: JsonValueKind.Object } root && reader.BytesConsumed == bytes.Length ? root.Clone() : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private async Task SendAllAsync(CancellationToken cancellation)
    {
        try
        {
            await foreach ((string? text, Action? sent, int close, string reason) in outbox.Reader.ReadAllAsync(cancellation).ConfigureAwait(false))
            {
                if (text is null)
                {
                    byPlatform = true;
                    platform.Recording.Add(new RecordedFrame { Connection = number, Kind = FrameKind.Closed, CloseCode = close, ByPlatform = true });
                    await socket.CloseOutputAsync((WebSocketCloseStatus)close, reason, cancellation).ConfigureAwait(false);
                    ended.CancelAfter(CloseWait);
                    return;
                }

                platform.Gateway.Note(this, text);
                await socket.SendAsync(Encoding.UTF8.GetBytes(text), WebSocketMessageType.Text, endOfMessage: true, cancellation).ConfigureAwait(false);
                sent?.Invoke();
            }
        }
        catch (Exception problem) when (problem is WebSocketException or OperationCanceledException or IOException or ObjectDisposedException)
        {
            // The connection is over; the receiving side says how.
        }
    }

    private async Task WatchAsync(TimeSpan interval, CancellationToken cancellation)
    {
        try
        {
            using var timer = new PeriodicTimer(interval / 4);
            while (await timer.WaitForNextTickAsync(cancellation).ConfigureAwait(false))
            {
                if (TimeProvider.System.GetElapsedTime(lastBeat) > 2 * interval)
                {
                    Close(CloseCodes.UnknownError, "No heartbeat.");
                    return;
                }
            }
        }
        catch (OperationCanceledException)
        {
            // The connection is over.
        }
    }

    private async Task AnswerCloseAsync(CancellationToken cancellation)
    {
        if (socket.State == WebSocketState.CloseReceived)
        {
            await socket.CloseOutputAsync(socket.CloseStatus ?? WebSocketCloseStatus.NormalClosure, null, cancellation).ConfigureAwait(false);
        }
    }
}
