using Quarterlight.Audio.Ffmpeg;
using Quarterlight.Audio.Mp3;
using Quarterlight.Audio.Ogg;
using Quarterlight.Audio.Wav;

namespace Quarterlight.Audio;

/// <summary>Opens uploaded sound files. The format is told by content, never by name.</summary>
public static class AudioReader
{
    /// <summary>Reads the head of a file and returns the reader of its samples.</summary>
    /// <param name="source">
    /// The bytes, read once from front to back and never sought; not closed. Pieces may be of any size. It must not be used by anyone
    /// else until the reader is disposed.
    /// </param>
    /// <param name="limits">Bounds of what is read.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="AudioFaultException">The file is not one that is read.</exception>
    public static async ValueTask<IAudioReader> OpenAsync(Stream source, AudioLimits limits, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(limits);
        var bytes = new ByteSource(source, limits);
        try
        {
            _ = await bytes.SeeAsync(ContentSniffer.WantedBytes, cancellation).ConfigureAwait(false);
            return ContentSniffer.Tell(bytes.Seen) switch
            {
                ContentKind.Wave => await WaveReader.OpenAsync(bytes, limits, cancellation).ConfigureAwait(false),
                ContentKind.OggVorbis => await VorbisFileReader.OpenAsync(bytes, limits, cancellation).ConfigureAwait(false),
                ContentKind.OggOpus => await OpusFileReader.OpenAsync(bytes, limits, cancellation).ConfigureAwait(false),
                ContentKind.Mp3 => await Mp3FileReader.OpenAsync(bytes, limits, cancellation).ConfigureAwait(false),
                ContentKind kind => await FfmpegReader.OpenAsync(bytes, kind, limits, cancellation).ConfigureAwait(false),
            };
        }
        catch
        {
            bytes.Dispose();
            throw;
        }
    }
}
