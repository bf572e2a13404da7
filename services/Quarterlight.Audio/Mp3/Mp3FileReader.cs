using System.Globalization;
using NLayer;
using Quarterlight.Audio.Wav;

namespace Quarterlight.Audio.Mp3;

/// <summary>MPEG layer III: an own walk over the frames, each decoded by the NLayer package.</summary>
internal sealed class Mp3FileReader : ReaderBase
{
    private const int MostPaddingBytes = 65_536;
    private readonly ByteSource _bytes;
    private readonly Mp3Header _first;
    private readonly Mp3Tag? _tag;
    private readonly MpegFrameDecoder _decoder = new();
    private readonly Mp3Frame _frame = new();
    private readonly float[] _pcm = new float[2 * 1152];
    private int _from;
    private int _to;
    private long _framesSeen;
    private long _skipFrames;
    private long _leftFrames;

    private Mp3FileReader(ByteSource bytes, Mp3Header first, Mp3Tag? tag, AudioFormat format, AudioLimits limits)
        : base(format, limits)
    {
        _bytes = bytes;
        _first = first;
        _tag = tag;
        _skipFrames = tag is { DelaySamples: > 0 } ? tag.DelaySamples + Mp3Tag.DecoderLag : 0;
        _leftFrames = tag is { DelaySamples: > 0 } && format.DeclaredFrameCount is { } count ? count : long.MaxValue;
    }

    /// <summary>Reads up to the first frame of sound.</summary>
    public static async ValueTask<Mp3FileReader> OpenAsync(ByteSource bytes, AudioLimits limits, CancellationToken cancellation)
    {
        await SkipId3Async(bytes, cancellation).ConfigureAwait(false);
        _ = await bytes.SeeAsync(Mp3Header.Bytes, cancellation).ConfigureAwait(false);
        Mp3Header first = Mp3Header.Read(bytes.Seen) ?? throw Faults.NotAudio("The file begins like an MP3, but no frame of sound follows");
        if (!await bytes.SeeAsync(first.FrameBytes, cancellation).ConfigureAwait(false))
        {
            throw Faults.Truncated("The MP3 file ends within its first frame");
        }

        // Four bytes are too few to tell sound from chance: the second frame must stand where the first says.
        if (await bytes.SeeAsync(first.FrameBytes + Mp3Header.Bytes, cancellation).ConfigureAwait(false)
            && Mp3Header.Read(bytes.Seen[first.FrameBytes..])?.Fits(first) != true)
        {
            throw Faults.NotAudio("The file begins like an MP3, but no second frame follows the first");
        }

        Faults.CheckShape(first.SampleRateHz, first.ChannelCount, limits);
        var tag = Mp3Tag.Read(first, bytes.Seen[..first.FrameBytes]);
        if (tag is not null)
        {
            bytes.Consume(first.FrameBytes);
        }

        long? count = tag?.FrameCount is { } frames ? Math.Max(0, ((long)frames * first.SampleCount) - tag.DelaySamples - tag.PaddingSamples) : null;
        var format = new AudioFormat(first.SampleRateHz, first.ChannelCount, SampleCoding.Mp3, null, count);
        return count > Faults.MostFrames(first.SampleRateHz, limits)
            ? throw Faults.TooLong(limits)
            : new Mp3FileReader(bytes, first, tag, format, limits);
    }

    /// <inheritdoc/>
    protected override async ValueTask<int> NextAsync(Memory<float> interleaved, CancellationToken cancellation)
    {
        while (_from >= _to)
        {
            if (_leftFrames <= 0 || !await DecodeNextAsync(cancellation).ConfigureAwait(false))
            {
                return FramesRead == 0 ? throw Faults.Empty("The file holds no samples") : 0;
            }
        }

        return HandOut(_pcm, ref _from, _to, interleaved.Span);
    }

    /// <inheritdoc/>
    protected override ValueTask CloseAsync()
    {
        _bytes.Dispose();
        return ValueTask.CompletedTask;
    }

    private async ValueTask<bool> DecodeNextAsync(CancellationToken cancellation)
    {
        if (await FindFrameAsync(cancellation).ConfigureAwait(false) is not { } header)
        {
            return _tag?.FrameCount > _framesSeen
                ? throw Faults.Truncated(string.Create(
                    CultureInfo.InvariantCulture, $"The MP3 file says it holds {_tag.FrameCount} frames and ends after {_framesSeen}"))
                : false;
        }

        _frame.Load(header, _bytes.Seen[..header.FrameBytes]);
        _bytes.Consume(header.FrameBytes);
        _framesSeen++;
        int values = header.SampleCount * header.ChannelCount;
        Span<float> pcm = _pcm.AsSpan(0, values);
        // A frame that leans on one that is missing gives nothing: silence keeps the time.
        pcm.Clear();
        try
        {
            _ = _decoder.DecodeFrame(_frame, pcm);
        }
#pragma warning disable CA1031 // The decoder throws many kinds on damaged input; to the caller all of them are one fault.
        catch (Exception broken)
#pragma warning restore CA1031
        {
            throw Faults.Corrupt("The MP3 sound in the file cannot be decoded", broken);
        }

        SampleDecoder.Mend(pcm);
        _from = (int)Math.Min(_skipFrames, header.SampleCount);
        _skipFrames -= _from;
        _to = (int)Math.Min(header.SampleCount, _from + _leftFrames);
        _leftFrames -= _to - _from;
        return true;
    }

    // The next frame, past what is none: tags end the sound, other bytes are skipped with a remark.
    private async ValueTask<Mp3Header?> FindFrameAsync(CancellationToken cancellation)
    {
        for (int skipped = 0; skipped < MostPaddingBytes; skipped++)
        {
            if (!await _bytes.SeeAsync(Mp3Header.Bytes, cancellation).ConfigureAwait(false) || IsTag(_bytes.Seen))
            {
                return null;
            }

            if (Mp3Header.Read(_bytes.Seen) is { } header && header.Fits(_first))
            {
                if (await _bytes.SeeAsync(header.FrameBytes, cancellation).ConfigureAwait(false))
                {
                    return header;
                }

                Remark("The file ends within a frame, which was left out");
                return null;
            }

            Remark("The file holds bytes between its frames that are no sound; they were left out");
            _bytes.Consume(1);
        }

        throw Faults.Corrupt("The MP3 file holds more than 64 KiB that are no sound");
    }

    private static bool IsTag(ReadOnlySpan<byte> seen) => seen.StartsWith("TAG"u8) || seen.StartsWith("APET"u8) || seen.StartsWith("LYRI"u8) || seen.StartsWith("ID3"u8);

    // ID3v2: ten bytes, the last four a size of seven bits each (from memory).
    private static async ValueTask SkipId3Async(ByteSource bytes, CancellationToken cancellation)
    {
        while (await bytes.SeeAsync(10, cancellation).ConfigureAwait(false) && bytes.Seen.StartsWith("ID3"u8))
        {
            ReadOnlySpan<byte> head = bytes.Seen;
            int size = (head[6] & 0x7F) << 21 | (head[7] & 0x7F) << 14 | (head[8] & 0x7F) << 7 | (head[9] & 0x7F);
            int footer = (head[5] & 0x10) != 0 ? 10 : 0;
            if (!await bytes.SkipAsync((ulong)(10 + size + footer), cancellation).ConfigureAwait(false))
            {
                throw Faults.Truncated("The file ends within its tag, before any sound");
            }
        }
    }
}
