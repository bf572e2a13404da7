using System.Net.WebSockets;

namespace Quarterlight.Discord.Gateway;

/// <summary>A socket of the base library.</summary>
public sealed class ClientGatewaySocket : IGatewaySocket
{
    private readonly ClientWebSocket socket = new();

    /// <inheritdoc/>
    public Task ConnectAsync(Uri address, CancellationToken cancellation)
    {
        // The gateway has its own heartbeat; a second one would only hide a connection that no longer answers.
        socket.Options.KeepAliveInterval = TimeSpan.Zero;
        return socket.ConnectAsync(address, cancellation);
    }

    /// <inheritdoc/>
    public ValueTask SendAsync(ReadOnlyMemory<byte> utf8, CancellationToken cancellation) =>
        socket.SendAsync(utf8, WebSocketMessageType.Text, endOfMessage: true, cancellation);

    /// <inheritdoc/>
    public async ValueTask<SocketRead> ReceiveAsync(Memory<byte> buffer, CancellationToken cancellation)
    {
        ValueWebSocketReceiveResult read = await socket.ReceiveAsync(buffer, cancellation).ConfigureAwait(false);
        return read.MessageType switch
        {
            WebSocketMessageType.Close => new SocketRead(SocketReadKind.Closed, 0, true, CloseCode()),
            WebSocketMessageType.Text => new SocketRead(SocketReadKind.Text, read.Count, read.EndOfMessage),
            _ => new SocketRead(SocketReadKind.Binary, read.Count, read.EndOfMessage),
        };
    }

    /// <inheritdoc/>
    public Task CloseAsync(int code, CancellationToken cancellation) => socket.State is WebSocketState.Open or WebSocketState.CloseReceived
        ? socket.CloseOutputAsync((WebSocketCloseStatus)code, null, cancellation)
        : Task.CompletedTask;

    /// <inheritdoc/>
    public void Abort() => socket.Abort();

    /// <inheritdoc/>
    public void Dispose() => socket.Dispose();

    // The base library reports a close frame without a code as 1000 without a description, so the two cannot be told apart. Taken as "no code": a
    // resume that was in vain costs seconds, a session given up costs what happened meanwhile.
    private int? CloseCode() => socket.CloseStatus switch
    {
        null or WebSocketCloseStatus.Empty => null,
        WebSocketCloseStatus.NormalClosure when string.IsNullOrEmpty(socket.CloseStatusDescription) => null,
        var status => (int)status,
    };
}
