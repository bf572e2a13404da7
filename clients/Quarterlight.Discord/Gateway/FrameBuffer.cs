using System.Buffers;

namespace Quarterlight.Discord.Gateway;

/// <summary>Puts frames together in one pooled buffer that grows as needed. What it hands out is valid until the next read.</summary>
internal sealed class FrameBuffer(int mostBytes) : IDisposable
{
    // A large frame is rare: its buffer goes back.
    private const int UsualBytes = 16 * 1024;

    private byte[] rented = ArrayPool<byte>.Shared.Rent(UsualBytes);

    /// <summary>What came.</summary>
    /// <param name="Utf8">The frame; empty when it was too large or no text.</param>
    /// <param name="Closed">True when the other side closed.</param>
    /// <param name="CloseCode">With which code; null for none.</param>
    internal readonly record struct Frame(ReadOnlyMemory<byte> Utf8, bool Closed, int? CloseCode);

    /// <summary>Reads the next frame.</summary>
    public async ValueTask<Frame> ReadAsync(IGatewaySocket socket, CancellationToken cancellation)
    {
        if (rented.Length > UsualBytes)
        {
            Replace(UsualBytes, 0);
        }

        int length = 0;
        bool usable = true;
        while (true)
        {
            SocketRead read = await socket.ReceiveAsync(rented.AsMemory(length), cancellation).ConfigureAwait(false);
            if (read.Kind == SocketReadKind.Closed)
            {
                return new Frame(default, true, read.CloseCode);
            }

            usable &= read.Kind == SocketReadKind.Text && length + read.ByteCount <= mostBytes;
            length = usable ? length + read.ByteCount : 0;
            if (read.EndOfFrame)
            {
                return new Frame(rented.AsMemory(0, length), false, null);
            }

            if (length == rented.Length)
            {
                Replace(rented.Length * 2, length);
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose() => ArrayPool<byte>.Shared.Return(rented, clearArray: true);

    // Cleared on the way back: frames hold tokens of interactions.
    private void Replace(int size, int kept)
    {
        byte[] larger = ArrayPool<byte>.Shared.Rent(size);
        rented.AsSpan(0, kept).CopyTo(larger);
        ArrayPool<byte>.Shared.Return(rented, clearArray: true);
        rented = larger;
    }
}
