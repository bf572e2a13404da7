using System.Buffers;
using System.IO.Pipelines;
using Quarterlight.Planner.Errors;

namespace Quarterlight.Planner.Upload;

/// <summary>
/// The body of an HTTP upload. A read that is given up is ended by the pipe's own means and waited for on disposal: the server cannot clear away a
/// body that somebody still reads.
/// </summary>
/// <param name="body">As the server gives it.</param>
internal sealed class BodyStream(PipeReader body) : UploadStream
{
    private static readonly TimeSpan s_farewell = TimeSpan.FromSeconds(5);

    private readonly SemaphoreSlim _idle = new(1);

    /// <inheritdoc/>
    public override async ValueTask DisposeAsync()
    {
        await _idle.WaitAsync(s_farewell).ConfigureAwait(false);
        await base.DisposeAsync().ConfigureAwait(false);
    }

    /// <inheritdoc/>
    protected override async ValueTask<int> NextAsync(Memory<byte> buffer, CancellationToken cancellation)
    {
        await _idle.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            using CancellationTokenRegistration givingUp = cancellation.Register(body.CancelPendingRead);
            ReadResult read = await body.ReadAsync(CancellationToken.None).ConfigureAwait(false);
            if (read.IsCanceled)
            {
                body.AdvanceTo(read.Buffer.Start);
                throw new OperationCanceledException(cancellation);
            }

            int count = (int)Math.Min(read.Buffer.Length, buffer.Length);
            ReadOnlySequence<byte> taken = read.Buffer.Slice(0, count);
            taken.CopyTo(buffer.Span);
            body.AdvanceTo(taken.End);
            return count;
        }
        catch (IOException)
        {
            // What the server throws when the connection is gone.
            throw Refusals.GaveUp();
        }
        finally
        {
            _idle.Release();
        }
    }
}
