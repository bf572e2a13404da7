namespace Quarterlight.Fuzz;

/// <summary>Hands out bytes in pieces of given sizes, again and again, at once and on the caller's thread; without sizes, as asked for. Cannot be sought.</summary>
internal class PieceStream(byte[] bytes, int[] pieces) : Stream
{
    private int _at;
    private int _turn;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        int piece = pieces.Length == 0 ? int.MaxValue : pieces[_turn++ % pieces.Length];
        int count = Math.Min(Math.Min(piece, buffer.Length), bytes.Length - _at);
        bytes.AsMemory(_at, count).CopyTo(buffer);
        _at += count;
        return new ValueTask<int>(count);
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException("Reads are asynchronous.");

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
