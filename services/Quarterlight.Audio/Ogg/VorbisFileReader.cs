using System.Buffers;
using System.Buffers.Binary;
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
    private long? _start;

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
        VorbisReader? decoder = null;
        try
        {
            var stream = new PageStream(pages, await HeadAsync(pages, limits, cancellation).ConfigureAwait(false)) { Cancellation = cancellation };
            decoder = await PullAsync(stream, () => new VorbisReader(stream, closeOnDispose: false) { ClipSamples = false }, cancellation).ConfigureAwait(false);
            VorbisReader opened = decoder;
            stream.DecoderPosition = () => opened.SamplePosition;
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

        count = (int)Math.Min(count / Format.ChannelCount, FramesLeft()) * Format.ChannelCount;
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

    // Up to where the last page ends the sound, counted from the first frame read: a recording cut out of a longer one does not begin at 0.
    private long FramesLeft()
    {
        if (_stream.Last is not { End: >= 0 } last)
        {
            return long.MaxValue;
        }

        _start ??= last.Decoder - FramesRead;
        return Math.Max(0, last.End - _start.Value - FramesRead);
    }

    // The three header packets, looked through before the decoder believes them; returns the pages they came on.
    private static async ValueTask<ReadOnlyMemory<byte>> HeadAsync(OggPages pages, AudioLimits limits, CancellationToken cancellation)
    {
        const int HeaderPackets = 3;
        const int IdentificationBytes = 30;
        var taken = new ArrayBufferWriter<byte>(8192);
        pages.Witness = page => taken.Write(page.Span);
        var packets = new OggPackets(pages);
        for (int i = 0; i < HeaderPackets; i++)
        {
            if (!await packets.MoveAsync(cancellation).ConfigureAwait(false))
            {
                throw Faults.Truncated("The Ogg file ends before its sound begins");
            }

            ReadOnlySpan<byte> packet = packets.Packet.Span;
            if (i == 0)
            {
                if (packet.Length < IdentificationBytes)
                {
                    throw Faults.Corrupt("The head of the Vorbis file is broken");
                }

                Faults.CheckShape(BinaryPrimitives.ReadUInt32LittleEndian(packet[12..]), packet[11], limits);
            }
            else if (i == HeaderPackets - 1)
            {
                VorbisSetup.Check(packet);
            }
        }

        pages.Witness = null;

        // Sound begins on a page of its own (Vorbis I specification, A.2).
        return pages.IsLast ? throw Faults.Empty("The file holds no samples") : taken.WrittenMemory;
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
