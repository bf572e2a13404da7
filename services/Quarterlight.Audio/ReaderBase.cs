namespace Quarterlight.Audio;

/// <summary>What all readers share: the length limit, one fault for good, and no foreign exception.</summary>
internal abstract class ReaderBase(AudioFormat format, AudioLimits limits) : IAudioReader
{
    private const int MostRemarks = 32;

    private readonly List<string> _remarks = [];
    private readonly long _mostFrames = Faults.MostFrames(format.SampleRateHz, limits);
    private AudioFaultException? _fault;
    private bool _ended;
    private bool _disposed;

    /// <inheritdoc/>
    public AudioFormat Format { get; } = format;

    /// <inheritdoc/>
    public virtual AudioMetadata? Metadata => null;

    /// <inheritdoc/>
    public IReadOnlyList<string> Remarks => _remarks;

    /// <inheritdoc/>
    public long FramesRead { get; private set; }

    /// <summary>Bounds given by the caller.</summary>
    protected AudioLimits Limits { get; } = limits;

    /// <summary>Hands out what is left of a decoded block, as far as it fits; the number of frames.</summary>
    /// <param name="block">The block, frame by frame.</param>
    /// <param name="from">First frame not handed out yet; moved on.</param>
    /// <param name="to">Frame behind the last.</param>
    /// <param name="interleaved">Where to.</param>
    protected int HandOut(float[] block, ref int from, int to, Span<float> interleaved)
    {
        int channels = Format.ChannelCount, frames = Math.Min(to - from, interleaved.Length / channels);
        block.AsSpan(from * channels, frames * channels).CopyTo(interleaved);
        from += frames;
        return frames;
    }

    /// <inheritdoc/>
    public async ValueTask<int> ReadAsync(Memory<float> interleaved, CancellationToken cancellation)
    {
        ObjectDisposedException.ThrowIf(_disposed, this);
        if (interleaved.Length < Format.ChannelCount)
        {
            throw new ArgumentException("The buffer must hold at least one frame.", nameof(interleaved));
        }

        if (_fault is not null)
        {
            throw new AudioFaultException(_fault.Fault, _fault);
        }

        if (_ended)
        {
            return 0;
        }

        cancellation.ThrowIfCancellationRequested();
        try
        {
            int whole = interleaved.Length / Format.ChannelCount * Format.ChannelCount;
            int frames = await NextAsync(interleaved[..whole], cancellation).ConfigureAwait(false);
            _ended = frames == 0;
            FramesRead += frames;
            return FramesRead > _mostFrames ? throw Faults.TooLong(Limits) : frames;
        }
        catch (AudioFaultException fault)
        {
            _fault = fault;
            throw;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (!_disposed)
        {
            _disposed = true;
            await CloseAsync().ConfigureAwait(false);
        }
    }

    /// <summary>Adds a remark once; a file cannot make the list long.</summary>
    protected internal void Remark(string sentence)
    {
        if (_remarks.Count < MostRemarks && !_remarks.Contains(sentence))
        {
            _remarks.Add(sentence);
        }
    }

    /// <summary>Reads the next frames into a buffer of whole frames; 0 at the end.</summary>
    protected abstract ValueTask<int> NextAsync(Memory<float> interleaved, CancellationToken cancellation);

    /// <summary>Gives back what the reader holds.</summary>
    protected abstract ValueTask CloseAsync();
}
