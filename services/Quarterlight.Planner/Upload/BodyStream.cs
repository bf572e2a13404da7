using Quarterlight.Planner.Errors;

namespace Quarterlight.Planner.Upload;

/// <summary>The body of an HTTP upload.</summary>
/// <param name="body">As the server gives it.</param>
internal sealed class BodyStream(Stream body) : UploadStream
{
    /// <inheritdoc/>
    protected override async ValueTask<int> NextAsync(Memory<byte> buffer, CancellationToken cancellation)
    {
        try
        {
            return await body.ReadAsync(buffer, cancellation).ConfigureAwait(false);
        }
        catch (IOException)
        {
            // What the server throws when the connection is gone.
            throw Refusals.GaveUp();
        }
    }
}
