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

    // 1005 means that the frame held no code.
    private int? CloseCode() => socket.CloseStatus is { } status and not WebSocketCloseStatus.Empty ? (int)status : null;
}
