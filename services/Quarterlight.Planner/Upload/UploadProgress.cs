using Quarterlight.V1;

namespace Quarterlight.Planner.Upload;

/// <summary>Tells a caller how far the reading is, at most four times a second.</summary>
/// <param name="bytes">The upload.</param>
/// <param name="expectedBytes">Bytes of the file, when known.</param>
/// <param name="send">Sends to the caller; null tells nobody.</param>
/// <param name="time">The clock.</param>
internal sealed class UploadProgress(UploadStream bytes, long? expectedBytes, Func<ClipProgress, CancellationToken, Task>? send, TimeProvider time)
{
    private static readonly TimeSpan s_between = TimeSpan.FromMilliseconds(250);

    private long _told = time.GetTimestamp();

    /// <summary>Seconds of sound judged so far.</summary>
    public double JudgedSeconds { get; set; }

    /// <summary>Tells it when it is time to.</summary>
    public ValueTask TellAsync(CancellationToken cancellation) =>
        send is null || time.GetElapsedTime(_told) < s_between ? ValueTask.CompletedTask : TellNowAsync(cancellation);

    /// <summary>Tells it now.</summary>
    public async ValueTask TellNowAsync(CancellationToken cancellation)
    {
        if (send is null)
        {
            return;
        }

        _told = time.GetTimestamp();
        var progress = new ClipProgress { ByteCount = bytes.ByteCount, JudgedS = JudgedSeconds };
        if (expectedBytes is > 0 and { } expected)
        {
            progress.Fraction = Math.Min(1, (double)bytes.ByteCount / expected);
        }

        await send(progress, cancellation).ConfigureAwait(false);
    }
}
