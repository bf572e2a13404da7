using Concentus;
using Quarterlight.Audio.Wav;

namespace Quarterlight.Audio.Ogg;

/// <summary>Opus in Ogg (RFC 7845), packets decoded by the Concentus package; always 48 kHz.</summary>
internal sealed class OpusFileReader : ReaderBase
{
    private const int RateHz = 48_000;
    // 120 ms: the longest packet (RFC 6716, section 2.1.4).
    private const int MostPacketFrames = 5_760;
    private readonly ByteSource _bytes;
    private readonly OggPages _pages;
    private readonly OggPackets _packets;
    private readonly OpusHead _head;
    private readonly IOpusMultiStreamDecoder _decoder;
    private readonly float[] _pcm;
    private int _from;
    private int _to;
    private long _decodedFrames;
    private long? _firstGranule;
    private bool _ended;

    private OpusFileReader(ByteSource bytes, OggPages pages, OggPackets packets, OpusHead head, AudioLimits limits)
        : base(new AudioFormat(RateHz, head.ChannelCount, SampleCoding.Opus, null, null), limits)
    {
        _bytes = bytes;
        _pages = pages;
        _packets = packets;
        _head = head;
        _pcm = new float[MostPacketFrames * head.ChannelCount];
        // The managed decoder on every machine: what is read must not hang on which library lies about.
        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        _decoder = OpusCodecFactory.CreateMultiStreamDecoder(RateHz, head.ChannelCount, head.StreamCount, head.CoupledCount, head.Mapping);
    }

    /// <summary>Reads the headers.</summary>
    public static async ValueTask<OpusFileReader> OpenAsync(ByteSource bytes, AudioLimits limits, CancellationToken cancellation)
    {
        OpusFileReader? made = null;
        var pages = new OggPages(bytes, r => made?.Remark(r));
        try
        {
            var packets = new OggPackets(pages);
            OpusHead? head = await packets.MoveAsync(cancellation).ConfigureAwait(false) ? OpusHead.Parse(packets.Packet.Span) : null;
            if (head is null || !await packets.MoveAsync(cancellation).ConfigureAwait(false) || !packets.Packet.Span.StartsWith("OpusTags"u8))
            {
                throw Faults.Corrupt("The head of the Opus file is broken");
            }

            Faults.CheckShape(RateHz, head.ChannelCount, limits);
            made = new OpusFileReader(bytes, pages, packets, head, limits);
            return made;
        }
        catch
        {
            pages.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    protected override async ValueTask<int> NextAsync(Memory<float> interleaved, CancellationToken cancellation)
    {
        while (_from >= _to)
        {
            if (_ended || !await _packets.MoveAsync(cancellation).ConfigureAwait(false))
            {
                return FramesRead == 0 ? throw Faults.Empty("The file holds no samples") : 0;
            }

            DecodePacket();
            if (_packets.EndsPage)
            {
                await FinishPageAsync(cancellation).ConfigureAwait(false);
            }
        }

        return HandOut(_pcm, ref _from, _to, interleaved.Span);
    }

    /// <inheritdoc/>
    protected override ValueTask CloseAsync()
    {
        _pages.Dispose();
        _bytes.Dispose();
        (_decoder as IDisposable)?.Dispose();
        return ValueTask.CompletedTask;
    }

    private void DecodePacket()
    {
        int frames;
        try
        {
            frames = _decoder.DecodeMultistream(_packets.Packet.Span, _pcm, MostPacketFrames, false);
        }
#pragma warning disable CA1031 // The decoder throws many kinds on damaged input; to the caller all of them are one fault.
        catch (Exception broken)
#pragma warning restore CA1031
        {
            throw Faults.Corrupt("The Opus sound in the file cannot be decoded", broken);
        }

        if (frames is < 1 or > MostPacketFrames)
        {
            throw Faults.Corrupt("The Opus sound in the file cannot be decoded");
        }

        Span<float> pcm = _pcm.AsSpan(0, frames * Format.ChannelCount);
        foreach (ref float sample in pcm)
        {
            sample *= _head.Gain;
        }

        SampleDecoder.Mend(pcm);
        // Section 4.2: the first samples only bring the decoder in.
        _from = (int)Math.Clamp(_head.PreSkip - _decodedFrames, 0, frames);
        _to = frames;
        _decodedFrames += frames;
    }

    // Section 4: the granule counts samples with the pre-skip; the last page's says how many are meant (4.4), and a stream cut out of
    // a longer one begins above 0 (4.3).
    private async ValueTask FinishPageAsync(CancellationToken cancellation)
    {
        long granule = _pages.Granule;
        bool last = _pages.IsLast;
        if (granule >= 0)
        {
            _firstGranule ??= last ? 0 : Math.Max(0, granule - _decodedFrames);
            long surplus = last ? _decodedFrames - (granule - _firstGranule.Value) : 0;
            _to = (int)Math.Max(_from, _to - Math.Max(0, surplus));
        }

        if (last)
        {
            _ended = true;
            _ = await _pages.MoveAsync(cancellation).ConfigureAwait(false);
        }
    }
}
