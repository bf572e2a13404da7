namespace Quarterlight.Discord.Gateway;

/// <summary>One WebSocket connection, used once. One sends and one receives at a time; <see cref="Abort"/> may come from anywhere.</summary>
public interface IGatewaySocket : IDisposable
{
    /// <summary>Opens it.</summary>
    Task ConnectAsync(Uri address, CancellationToken cancellation);

    /// <summary>Sends one text frame. Cancelling may leave the connection of no use.</summary>
    ValueTask SendAsync(ReadOnlyMemory<byte> utf8, CancellationToken cancellation);

    /// <summary>Receives the next part of a frame.</summary>
    ValueTask<SocketRead> ReceiveAsync(Memory<byte> buffer, CancellationToken cancellation);

    /// <summary>Sends the close frame and does not wait for the other side's.</summary>
    Task CloseAsync(int code, CancellationToken cancellation);

    /// <summary>Cuts it at once; what waits on it fails.</summary>
    void Abort();
}

/// <summary>What a read of a socket brought.</summary>
public enum SocketReadKind
{
    /// <summary>Part of a text frame.</summary>
    Text,

    /// <summary>Part of a binary frame, which nobody asked for.</summary>
    Binary,

    /// <summary>The other side closed.</summary>
    Closed,
}

/// <summary>One read of a socket.</summary>
/// <param name="Kind">What came.</param>
/// <param name="ByteCount">Bytes put into the buffer.</param>
/// <param name="EndOfFrame">True when the frame is whole.</param>
/// <param name="CloseCode">With <see cref="SocketReadKind.Closed"/>: the code, null when there was none.</param>
public readonly record struct SocketRead(SocketReadKind Kind, int ByteCount, bool EndOfFrame, int? CloseCode = null);
