using System.Threading.Channels;

namespace Quarterlight.Store;

/// <summary>
/// The one thread that writes. What waits is applied together, made durable once, and only then acknowledged.
/// </summary>
internal sealed class GroupWriter : IDisposable
{
    private const int QueueLength = 1024;
    private const int MostTogether = 64;

    /// <summary>Longest wait for a commit: a disk that takes longer has failed, and LiteDB waits at most a minute for its own locks.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(90);

    private readonly Channel<Write> _queue = Channel.CreateBounded<Write>(new BoundedChannelOptions(QueueLength) { SingleReader = true });
    private readonly Action<Action> _commit;
    private readonly TimeSpan _longestWait;
    private readonly Thread _thread;

    /// <summary>Starts the writer.</summary>
    /// <param name="commit">Runs the given work as one transaction and returns when it is on disk; throws when it is not.</param>
    /// <param name="longestWait">Longest wait of a caller for its write, and of the end for those that wait; <see cref="LongestWait"/> when not given.</param>
    public GroupWriter(Action<Action> commit, TimeSpan? longestWait = null)
    {
        _commit = commit;
        _longestWait = longestWait ?? LongestWait;
        _thread = new Thread(Loop) { IsBackground = true, Name = "store writer" };
        _thread.Start();
    }

    /// <summary>Queues a write and waits until it is on disk or refused.</summary>
    /// <exception cref="ObjectDisposedException">The store is closed.</exception>
    /// <exception cref="TimeoutException">The disk did not take it in time; whether it is kept is not known.</exception>
    public async Task<WriteOutcome> WriteAsync(Func<WriteOutcome> apply, CancellationToken cancellation)
    {
        var write = new Write(apply, new TaskCompletionSource<WriteOutcome>(TaskCreationOptions.RunContinuationsAsynchronously));
        try
        {
            await _queue.Writer.WriteAsync(write, cancellation).ConfigureAwait(false);
        }
        catch (ChannelClosedException)
        {
            throw new ObjectDisposedException(nameof(IDocumentStore));
        }

        // From here on the write happens: a caller who gives up now must not be told that it did not.
        return await write.Done.Task.WaitAsync(_longestWait, CancellationToken.None).ConfigureAwait(false);
    }

    /// <summary>Takes no more writes and finishes those that wait.</summary>
    /// <exception cref="TimeoutException">They were not finished in time.</exception>
    public void Dispose()
    {
        _queue.Writer.TryComplete();
        if (!_thread.Join(_longestWait))
        {
            throw new TimeoutException("The writes that waited were not finished in time.");
        }
    }

    private void Loop()
    {
        var batch = new List<Write>(MostTogether);
        while (_queue.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
        {
            batch.Clear();
            while (batch.Count < MostTogether && _queue.Reader.TryRead(out Write? write))
            {
                batch.Add(write);
            }

            CommitTogether(batch);
        }
    }

    private void CommitTogether(List<Write> batch)
    {
        var outcomes = new WriteOutcome[batch.Count];
        try
        {
            _commit(() =>
            {
                for (int i = 0; i < batch.Count; i++)
                {
                    outcomes[i] = batch[i].Apply();
                }
            });
        }
#pragma warning disable CA1031 // Whatever went wrong belongs to the callers who wait; the thread must outlive it.
        catch (Exception failure)
#pragma warning restore CA1031
        {
            foreach (Write write in batch)
            {
                write.Done.SetException(failure);
            }

            return;
        }

        for (int i = 0; i < batch.Count; i++)
        {
            batch[i].Done.SetResult(outcomes[i]);
        }
    }

    private sealed record Write(Func<WriteOutcome> Apply, TaskCompletionSource<WriteOutcome> Done);
}
