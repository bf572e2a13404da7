using System.Globalization;

namespace Quarterlight.Audio.Wav;

/// <summary>WAVE in RIFF, RF64 and BW64, strictly: what the file says is held against what it holds.</summary>
internal sealed class WaveReader : ReaderBase
{
    private readonly ByteSource _bytes;
    private readonly ChunkWalker _chunks;
    private readonly WaveFormat _wave;
    private readonly ulong? _declaredBytes;
    private ulong _soundBytes;
    private bool _finished;

    private WaveReader(ByteSource bytes, ChunkWalker chunks, AudioFormat format, AudioLimits limits)
        : base(format, limits)
    {
        _bytes = bytes;
        _chunks = chunks;
        _wave = chunks.Format!;
        _declaredBytes = chunks.DataBytes;
        TakeRemarks();
        if (_declaredBytes is null)
        {
            Remark("The recording was not closed: its length is missing, and it was read to the end of the file");
        }
    }

    /// <inheritdoc/>
    public override AudioMetadata? Metadata => _chunks.Metadata;

    private ulong? LeftBytes => _declaredBytes - _soundBytes;

    /// <summary>Reads up to the first sample.</summary>
    public static async ValueTask<WaveReader> OpenAsync(ByteSource bytes, AudioLimits limits, CancellationToken cancellation)
    {
        var chunks = new ChunkWalker(bytes, limits);
        await chunks.FindDataAsync(cancellation).ConfigureAwait(false);
        WaveFormat wave = chunks.Format!;
        ulong? frames = chunks.DataBytes / (ulong)wave.BlockAlign;
        if (frames == 0 || (frames is null && !await bytes.SeeAsync(wave.BlockAlign, cancellation).ConfigureAwait(false)))
        {
            throw Faults.Empty("The file holds no samples");
        }

        if (chunks.DataBytes > (ulong)limits.MaxBytes)
        {
            throw Faults.TooLarge(limits);
        }

        var format = new AudioFormat(wave.SampleRateHz, wave.ChannelCount, wave.Coding, wave.ValidBits, (long?)frames);
        return format.DeclaredFrameCount > Faults.MostFrames(wave.SampleRateHz, limits)
            ? throw Faults.TooLong(limits)
            : new WaveReader(bytes, chunks, format, limits);
    }

    /// <inheritdoc/>
    protected override async ValueTask<int> NextAsync(Memory<float> interleaved, CancellationToken cancellation)
    {
        int align = _wave.BlockAlign;
        if (LeftBytes < (ulong)align)
        {
            await FinishAsync(cancellation).ConfigureAwait(false);
            return 0;
        }

        if (!await _bytes.SeeAsync(align, cancellation).ConfigureAwait(false))
        {
            await EndAsync(cancellation).ConfigureAwait(false);
            return 0;
        }

        ulong most = Math.Min(LeftBytes ?? ulong.MaxValue, (ulong)_bytes.Seen.Length) / (ulong)align;
        int frames = (int)Math.Min(most, (ulong)(interleaved.Length / _wave.ChannelCount));
        int count = frames * align;
        if (SampleDecoder.Decode(_wave.Coding, _bytes.Seen[..count], interleaved.Span[..(frames * _wave.ChannelCount)]) > 0)
        {
            Remark("The file holds samples that are not numbers; they were read as silence");
        }

        _bytes.Consume(count);
        _soundBytes += (ulong)count;
        return frames;
    }

    /// <inheritdoc/>
    protected override ValueTask CloseAsync()
    {
        _bytes.Dispose();
        return ValueTask.CompletedTask;
    }

    private async ValueTask EndAsync(CancellationToken cancellation)
    {
        if (_declaredBytes is { } declared)
        {
            double saidS = (double)declared / _wave.BlockAlign / _wave.SampleRateHz;
            double heldS = (double)_soundBytes / _wave.BlockAlign / _wave.SampleRateHz;
            throw Faults.Truncated(string.Create(
                CultureInfo.InvariantCulture, $"The file says it holds {saidS:0.###} s of sound and ends after {heldS:0.###} s"));
        }

        if (_bytes.Seen.Length > 0)
        {
            Remark("The file ends within a frame, which was left out");
            _ = await _bytes.SkipAsync((ulong)_bytes.Seen.Length, cancellation).ConfigureAwait(false);
        }
    }

    private async ValueTask FinishAsync(CancellationToken cancellation)
    {
        if (_finished)
        {
            return;
        }

        _finished = true;
        if (LeftBytes is > 0 and { } odd)
        {
            Remark("The sound ends within a frame, which was left out");
            _ = await _bytes.SkipAsync(odd, cancellation).ConfigureAwait(false);
        }

        await _chunks.FinishAsync(_declaredBytes ?? 0, cancellation).ConfigureAwait(false);
        TakeRemarks();
    }

    private void TakeRemarks()
    {
        foreach (string remark in _chunks.Remarks)
        {
            Remark(remark);
        }

        _chunks.Remarks.Clear();
    }
}
