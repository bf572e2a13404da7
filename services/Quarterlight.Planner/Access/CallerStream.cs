using Grpc.Core;
using Quarterlight.Planner.Errors;

namespace Quarterlight.Planner.Access;

/// <summary>What a caller streams. A connection that is gone is the caller's end and no mistake of ours, also when the server notices it here first.</summary>
internal sealed class CallerStream<T>(IAsyncStreamReader<T> inner) : IAsyncStreamReader<T>
{
    /// <inheritdoc/>
    public T Current => inner.Current;

    /// <inheritdoc/>
    public async Task<bool> MoveNext(CancellationToken cancellationToken)
    {
        try
        {
            return await inner.MoveNext(cancellationToken).ConfigureAwait(false);
        }
        catch (IOException)
        {
            throw Refusals.GaveUp();
        }
    }
}
