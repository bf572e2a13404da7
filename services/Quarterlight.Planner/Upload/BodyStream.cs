namespace Quarterlight.Planner.Upload;

/// <summary>The body of an HTTP upload.</summary>
/// <param name="body">As the server gives it.</param>
internal sealed class BodyStream(Stream body) : UploadStream
{
    /// <inheritdoc/>
    protected override ValueTask<int> NextAsync(Memory<byte> buffer, CancellationToken cancellation) => body.ReadAsync(buffer, cancellation);
}
