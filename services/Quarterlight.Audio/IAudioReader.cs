namespace Quarterlight.Audio;

/// <summary>The samples of a file, from first to last. One caller at a time.</summary>
public interface IAudioReader : IAsyncDisposable
{
    /// <summary>What the file says about its sound.</summary>
    AudioFormat Format { get; }

    /// <summary>
    /// What a recorder wrote beside the sound; null when absent. Some files hold it behind the sound: it is complete once
    /// <see cref="ReadAsync"/> has returned 0.
    /// </summary>
    AudioMetadata? Metadata { get; }

    /// <summary>
    /// What was odd but could be read past: sentences without final stop, at most a few dozen. Complete once <see cref="ReadAsync"/>
    /// has returned 0.
    /// </summary>
    IReadOnlyList<string> Remarks { get; }

    /// <summary>Frames handed out so far.</summary>
    long FramesRead { get; }

    /// <summary>Reads the next frames.</summary>
    /// <param name="interleaved">
    /// Where to: frame after frame, one value a channel, nominal full scale 1.0 (floating-point files may go beyond). Must hold at
    /// least one frame; what is beyond whole frames is left alone.
    /// </param>
    /// <param name="cancellation">Gives up; the reader cannot be used afterwards.</param>
    /// <returns>Frames written, 1 or more; 0 at the end.</returns>
    /// <exception cref="AudioFaultException">The file is wrong or past a limit.</exception>
    /// <exception cref="ArgumentException">The buffer holds less than one frame.</exception>
    ValueTask<int> ReadAsync(Memory<float> interleaved, CancellationToken cancellation);
}
