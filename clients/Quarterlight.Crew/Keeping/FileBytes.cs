namespace Quarterlight.Crew.Keeping;

/// <summary>Reads a small attachment whole, and never more of it than may be.</summary>
internal static class FileBytes
{
    /// <summary>The bytes; null when the file could not be read, and one byte more than allowed when it is larger.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public static async Task<byte[]?> ReadAsync(CrewAttachment file, int most, CancellationToken cancellation)
    {
        if (file.ByteCount > most)
        {
            return new byte[most + 1];
        }

        try
        {
            Stream stream = await file.OpenAsync(cancellation).ConfigureAwait(false);
            await using (stream.ConfigureAwait(false))
            {
                byte[] bytes = new byte[most + 1];
                int count = await stream.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, cancellation).ConfigureAwait(false);
                return bytes[..count];
            }
        }
        catch (Exception e) when (e is not OperationCanceledException || !cancellation.IsCancellationRequested)
        {
            // What a transport's stream throws is not known here, and none of it may reach the crew.
            return null;
        }
    }
}
