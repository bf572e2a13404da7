using System.Buffers;
using NVorbis;
using Quarterlight.Audio.Wav;

namespace Quarterlight.Audio.Ogg;

/// <summary>Ogg Vorbis, decoded by the NVorbis package from pages that passed their checksum.</summary>
internal sealed class VorbisFileReader : ReaderBase
{
    private const int MostSamples = 16_384;
    private readonly ByteSource _bytes;
    private readonly OggPages _pages;
    private readonly PageStream _stream;
    private readonly VorbisReader _decoder;
    private readonly float[] _samples = ArrayPool<float>.Shared.Rent(MostSamples);

    private VorbisFileReader(ByteSource bytes, OggPages pages, PageStream stream, VorbisReader decoder, AudioFormat format, AudioLimits limits)
        : base(format, limits)
    {
        _bytes = bytes;
        _pages = pages;
        _stream = stream;
        _decoder = decoder;
    }

    /// <summary>Reads the headers.</summary>
    public static async ValueTask<VorbisFileReader> OpenAsync(ByteSource bytes, AudioLimits limits, CancellationToken cancellation)
    {
        VorbisFileReader? made = null;
        var early = new List<string>();
        var pages = new OggPages(bytes, r => Say(made, early, r));
        var stream = new PageStream(pages) { Cancellation = cancellation };
        VorbisReader? decoder = null;
        try
        {
            decoder = await PullAsync(stream, () => new VorbisReader(stream, closeOnDispose: false) { ClipSamples = false }, cancellation).ConfigureAwait(false);
            Faults.CheckShape(decoder.SampleRate, decoder.Channels, limits);
            made = new VorbisFileReader(bytes, pages, stream, decoder, new AudioFormat(decoder.SampleRate, decoder.Channels, SampleCoding.Vorbis, null, null), limits);
            early.ForEach(made.Remark);
            return made;
        }
        catch
        {
            decoder?.Dispose();
            pages.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    protected override async ValueTask<int> NextAsync(Memory<float> interleaved, CancellationToken cancellation)
    {
        _stream.Cancellation = cancellation;
        int most = Math.Min(interleaved.Length, MostSamples / Format.ChannelCount * Format.ChannelCount);
        int count = await PullAsync(_stream, () => _decoder.ReadSamples(_samples, 0, most), cancellation).ConfigureAwait(false);
        if (_decoder.Channels != Format.ChannelCount || _decoder.SampleRate != Format.SampleRateHz)
        {
            throw Faults.Corrupt("The Ogg file changes its rate or its channels on the way");
        }

        if (count == 0 && FramesRead == 0)
        {
            throw Faults.Empty("The file holds no samples");
        }

        _samples.AsSpan(0, count).CopyTo(interleaved.Span);
        if (SampleDecoder.Mend(interleaved.Span[..count]) > 0)
        {
            Remark("The file holds samples that are not numbers; they were read as silence");
        }

        return count / Format.ChannelCount;
    }

    /// <inheritdoc/>
    protected override ValueTask CloseAsync()
    {
        _decoder.Dispose();
        _stream.Dispose();
        _pages.Dispose();
        _bytes.Dispose();
        ArrayPool<float>.Shared.Return(_samples);
        return ValueTask.CompletedTask;
    }

    private static void Say(VorbisFileReader? reader, List<string> early, string remark)
    {
        if (reader is null)
        {
            early.Add(remark);
        }
        else
        {
            reader.Remark(remark);
        }
    }

    // The decoder waits for bytes where it stands: it gets a thread of the pool for as long as it does.
    private static async Task<T> PullAsync<T>(PageStream stream, Func<T> work, CancellationToken cancellation)
    {
        try
        {
            T result = await Task.Run(work, cancellation).ConfigureAwait(false);
            stream.ThrowFailure();
            return result;
        }
#pragma warning disable CA1031 // The decoder throws many kinds on damaged input; to the caller all of them are one fault.
        catch (Exception broken) when (broken is not (AudioFaultException or OperationCanceledException))
#pragma warning restore CA1031
        {
            stream.ThrowFailure();
            throw Faults.Corrupt("The Vorbis sound in the file cannot be decoded", broken);
        }
    }
}
