using System.Threading.Channels;

namespace Quarterlight.Store;

/// <summary>
/// The one thread that writes. What waits is applied together, made durable once, and only then acknowledged.
/// </summary>
internal sealed class GroupWriter : IDisposable
{
    private const int QueueLength = 1024;
    private const int MostTogether = 64;

    private readonly Channel<Write> _queue = Channel.CreateBounded<Write>(new BoundedChannelOptions(QueueLength) { SingleReader = true });
    private readonly Action<Action> _commit;
    private readonly Thread _thread;

    /// <summary>Starts the writer.</summary>
    /// <param name="commit">Runs the given work as one transaction and returns when it is on disk; throws when it is not.</param>
    public GroupWriter(Action<Action> commit)
    {
        _commit = commit;
        _thread = new Thread(Loop) { IsBackground = true, Name = "store writer" };
        _thread.Start();
    }

    /// <summary>Queues a write and waits until it is on disk or refused.</summary>
    /// <exception cref="ObjectDisposedException">The store is closed.</exception>
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
        return await write.Done.Task.ConfigureAwait(false);
    }

    /// <summary>Takes no more writes and finishes those that wait.</summary>
    public void Dispose()
    {
        _queue.Writer.TryComplete();
        _thread.Join();
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
