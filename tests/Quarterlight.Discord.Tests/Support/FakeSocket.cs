using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Threading.Channels;
using Quarterlight.Discord.Gateway;

namespace Quarterlight.Discord.Tests.Support;

/// <summary>The platform's end of one connection, played by a test. Refuses what a real socket refuses: two senders or two receivers at once, use after the end.</summary>
internal sealed class FakeSocket(WatchedTime time) : IGatewaySocket
{
    private readonly Channel<(SocketReadKind Kind, byte[] Bytes, int? Code)> incoming = Channel.CreateUnbounded<(SocketReadKind, byte[], int?)>();
    private readonly TaskCompletionSource aborted = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly ConcurrentQueue<(TimeSpan At, string Json)> sent = new();
    private (SocketReadKind Kind, byte[] Bytes, int? Code)? half;
    private int halfRead;
    private int sending;
    private int receiving;
    private int read;

    public Uri? Address { get; private set; }

    /// <summary>True when opening never ends, never of itself.</summary>
    public bool NeverOpens { get; set; }

    /// <summary>True when opening fails.</summary>
    public bool RefusesToOpen { get; set; }

    /// <summary>True when what is sent never leaves.</summary>
    public bool NeverSends { get; set; }

    /// <summary>False when the other side never answers a close.</summary>
    public bool AnswersClose { get; set; } = true;

    /// <summary>Largest part handed out by one read.</summary>
    public int MostReadBytes { get; set; } = int.MaxValue;

    public int? CloseSent { get; private set; }

    public bool Aborted => aborted.Task.IsCompleted;

    public bool Disposed { get; private set; }

    /// <summary>What the client did that a real socket refuses.</summary>
    public ConcurrentQueue<string> Misuses { get; } = new();

    public IReadOnlyList<(TimeSpan At, string Json)> Sent => [.. sent];

    public async Task ConnectAsync(Uri address, CancellationToken cancellation)
    {
        Address = address;
        if (RefusesToOpen)
        {
            throw new HttpRequestException("refused");
        }

        if (NeverOpens)
        {
            await Task.Delay(Timeout.Infinite, cancellation);
        }
    }

    public async ValueTask SendAsync(ReadOnlyMemory<byte> utf8, CancellationToken cancellation)
    {
        if (Interlocked.Exchange(ref sending, 1) != 0)
        {
            Misuses.Enqueue("two frames sent at once");
        }

        if (CloseSent is not null || Disposed)
        {
            Misuses.Enqueue("sent after the end");
        }

        try
        {
            if (NeverSends)
            {
                await Task.Delay(Timeout.Infinite, cancellation).WaitAsync(cancellation);
            }

            sent.Enqueue((time.Passed, Encoding.UTF8.GetString(utf8.Span)));
        }
        finally
        {
            Volatile.Write(ref sending, 0);
        }
    }

    public async ValueTask<SocketRead> ReceiveAsync(Memory<byte> buffer, CancellationToken cancellation)
    {
        if (Interlocked.Exchange(ref receiving, 1) != 0)
        {
            Misuses.Enqueue("two reads at once");
        }

        try
        {
            half ??= await NextAsync(cancellation);
            (SocketReadKind kind, byte[] bytes, int? code) = half.Value;
            int count = Math.Min(Math.Min(buffer.Length, MostReadBytes), bytes.Length - halfRead);
            bytes.AsSpan(halfRead, count).CopyTo(buffer.Span);
            halfRead += count;
            bool end = halfRead == bytes.Length;
            if (end)
            {
                half = null;
                halfRead = 0;
            }

            return new SocketRead(kind, count, end, code);
        }
        finally
        {
            Volatile.Write(ref receiving, 0);
        }
    }

    public Task CloseAsync(int code, CancellationToken cancellation)
    {
        CloseSent = code;
        if (AnswersClose)
        {
            Close(code);
        }

        return Task.CompletedTask;
    }

    public void Abort()
    {
        aborted.TrySetResult();
        incoming.Writer.TryComplete(new IOException("aborted"));
    }

    public void Dispose()
    {
        Disposed = true;
        Abort();
    }

    // What the test does.

    public void Say(string json) => incoming.Writer.TryWrite((SocketReadKind.Text, Encoding.UTF8.GetBytes(json), null));

    public void SayBinary(int bytes) => incoming.Writer.TryWrite((SocketReadKind.Binary, new byte[bytes], null));

    public void Close(int? code) => incoming.Writer.TryWrite((SocketReadKind.Closed, [], code));

    public void Break() => incoming.Writer.TryComplete(new IOException("connection reset"));

    public void Hello(double intervalMs = 40_000) => Say(string.Create(CultureInfo.InvariantCulture, $$$"""{"op":10,"d":{"heartbeat_interval":{{{intervalMs}}}},"s":null,"t":null}"""));

    public void Acknowledge() => Say("""{"op":11}""");

    public void Ready(string session = "session-1", string? resume = "wss://resume.example.test/", int sequence = 1) =>
        Say($$$"""{"op":0,"t":"READY","s":{{{sequence}}},"d":{"v":10,"user":{"id":"1"},"guilds":[],"session_id":"{{{session}}}","resume_gateway_url":{{{(resume is null ? "null" : $"\"{resume}\"")}}},"application":{"id":"5","flags":0} } }""");

    public void Resumed(int sequence) => Say($$$"""{"op":0,"t":"RESUMED","s":{{{sequence}}},"d":{}}""");

    public void Interaction(int sequence, ulong id = 77) =>
        Say($$$"""{"op":0,"t":"INTERACTION_CREATE","s":{{{sequence}}},"d":{{{InteractionJson.Button(id)}}}}""");

    /// <summary>The next frame the client sent.</summary>
    public async Task<JsonElement> NextSentAsync()
    {
        await Eventually.TrueAsync(() => sent.Count > read, () => $"only {read} frames were sent");
        return JsonDocument.Parse(sent.ElementAt(read++).Json).RootElement;
    }

    /// <summary>The next frame the client sent, which must have this operation.</summary>
    public async Task<JsonElement> NextSentAsync(int opcode)
    {
        JsonElement frame = await NextSentAsync();
        Assert.Equal(opcode, frame.GetProperty("op").GetInt32());
        return frame;
    }

    private async Task<(SocketReadKind Kind, byte[] Bytes, int? Code)> NextAsync(CancellationToken cancellation)
    {
        try
        {
            return await incoming.Reader.ReadAsync(cancellation);
        }
        catch (ChannelClosedException closed)
        {
            throw closed.InnerException ?? closed;
        }
    }
}
