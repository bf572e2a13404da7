using System.Buffers;

namespace Quarterlight.Audio;

/// <summary>
/// A forward-only window of 64 KiB over the uploaded bytes: counts them, stops at the limit, and gives up on a source that falls silent.
/// </summary>
internal sealed class ByteSource(Stream stream, AudioLimits limits) : IDisposable
{
    /// <summary>Most bytes that can be seen at once; holds the largest Ogg page (65 307).</summary>
    public const int WindowBytes = 65_536;

    private byte[] _window = ArrayPool<byte>.Shared.Rent(WindowBytes);
    private int _start;
    private int _end;
    private bool _ended;
    private bool _windowIsLost;

    /// <summary>Bytes consumed so far.</summary>
    public long Position { get; private set; }

    /// <summary>Bytes that have arrived and are not consumed.</summary>
    public ReadOnlySpan<byte> Seen => _window.AsSpan(_start, _end - _start);

    /// <summary>Waits until so many bytes are seen.</summary>
    /// <param name="count">At most <see cref="WindowBytes"/>.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>False when the source ends before.</returns>
    public async ValueTask<bool> SeeAsync(int count, CancellationToken cancellation)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, WindowBytes);
        while (_end - _start < count)
        {
            if (_ended)
            {
                return false;
            }

            MakeRoom(count);
            int read = await NextAsync(cancellation).ConfigureAwait(false);
            _ended = read == 0;
            _end += read;
            if (Position + (_end - _start) > limits.MaxBytes)
            {
                throw Faults.TooLarge(limits);
            }
        }

        return true;
    }

    /// <summary>Consumes bytes that are seen.</summary>
    public void Consume(int count)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, _end - _start);
        _start += count;
        Position += count;
    }

    /// <summary>Consumes bytes without looking at them.</summary>
    /// <returns>False when the source ends before.</returns>
    public async ValueTask<bool> SkipAsync(ulong count, CancellationToken cancellation)
    {
        while (count > 0)
        {
            if (!await SeeAsync(1, cancellation).ConfigureAwait(false))
            {
                return false;
            }

            int some = (int)Math.Min((ulong)Seen.Length, count);
            Consume(some);
            count -= (ulong)some;
        }

        return true;
    }

    /// <summary>Copies up to a buffer's worth, waiting for at least one byte.</summary>
    /// <returns>Bytes copied; 0 at the end.</returns>
    public async ValueTask<int> CopyAsync(Memory<byte> target, CancellationToken cancellation)
    {
        if (target.Length == 0 || !await SeeAsync(1, cancellation).ConfigureAwait(false))
        {
            return 0;
        }

        int some = Math.Min(Seen.Length, target.Length);
        Seen[..some].CopyTo(target.Span);
        Consume(some);
        return some;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        byte[] window = _window;
        _window = [];
        _start = _end = 0;
        _ended = true;
        // A read that never came back may still write into the window: that one is left to the collector.
        if (window.Length > 0 && !_windowIsLost)
        {
            ArrayPool<byte>.Shared.Return(window);
        }
    }

    private void MakeRoom(int count)
    {
        if (_start == _end)
        {
            _start = _end = 0;
        }
        else if (_start + count > _window.Length)
        {
            Seen.CopyTo(_window);
            _end -= _start;
            _start = 0;
        }
    }

    private async ValueTask<int> NextAsync(CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        ObjectDisposedException.ThrowIf(_window.Length == 0, this);
        using var givingUp = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        ValueTask<int> reading = stream.ReadAsync(_window.AsMemory(_end), givingUp.Token);
        if (reading.IsCompleted)
        {
            return await reading.ConfigureAwait(false);
        }

        Task<int> task = reading.AsTask();
        try
        {
            return await task.WaitAsync(limits.IdleLimit, limits.Clock, cancellation).ConfigureAwait(false);
        }
        catch (TimeoutException) when (!task.IsCompleted)
        {
            throw Faults.Stalled(limits.IdleLimit);
        }
        finally
        {
            if (!task.IsCompleted)
            {
                _windowIsLost = true;
                await givingUp.CancelAsync().ConfigureAwait(false);
                _ = task.ContinueWith(static t => _ = t.Exception, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
            }
        }
    }
}
