using Grpc.Core;
using Quarterlight.Planner.Errors;
using Quarterlight.V1;

namespace Quarterlight.Planner.Upload;

/// <summary>
/// The pieces of a gRPC upload behind its header, as one stream. A piece is taken when it is asked for, so a judging that is busy slows its caller
/// down by HTTP/2's flow control, and one piece is in memory at a time.
/// </summary>
/// <param name="requests">The messages behind the header.</param>
internal sealed class PieceStream(IAsyncStreamReader<JudgeClipRequest> requests) : UploadStream
{
    /// <summary>Most bytes of a piece.</summary>
    public const int MostBytes = 1024 * 1024;

    private const string Rule = "A piece has 1 to 1048576 bytes of the file; 65536 is a good size";

    private ReadOnlyMemory<byte> _piece;
    private bool _ended;

    /// <inheritdoc/>
    protected override async ValueTask<int> NextAsync(Memory<byte> buffer, CancellationToken cancellation)
    {
        while (_piece.IsEmpty)
        {
            if (_ended || !await requests.MoveNext(cancellation).ConfigureAwait(false))
            {
                _ended = true;
                return 0;
            }

            _piece = PieceOf(requests.Current);
        }

        int count = Math.Min(buffer.Length, _piece.Length);
        _piece[..count].CopyTo(buffer);
        _piece = _piece[count..];
        return count;
    }

    private static ReadOnlyMemory<byte> PieceOf(JudgeClipRequest request) => request.PartCase switch
    {
        JudgeClipRequest.PartOneofCase.Header => throw Refusals.Invalid("header", "a second header came", "Send the header first and once, then pieces"),
        JudgeClipRequest.PartOneofCase.None => throw Refusals.Invalid("piece", "the message holds no piece", Rule),
        _ when request.Piece.IsEmpty => throw Refusals.Invalid("piece", "the piece is empty", Rule),
        _ when request.Piece.Length > MostBytes => throw Refusals.Invalid("piece", $"the piece has {request.Piece.Length} bytes", Rule),
        _ => request.Piece.Memory,
    };
}
