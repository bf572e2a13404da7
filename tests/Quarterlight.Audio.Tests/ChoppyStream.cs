using Quarterlight.Fuzz;

namespace Quarterlight.Audio.Tests;

/// <summary>Hands bytes out in pieces of given sizes, now and then on another thread.</summary>
internal sealed class ChoppyStream(byte[] bytes, params int[] pieces) : PieceStream(bytes, pieces)
{
    private int _turn;

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        if (++_turn % 7 == 3)
        {
            await Task.Yield();
        }

        return await base.ReadAsync(buffer, cancellationToken);
    }
}
