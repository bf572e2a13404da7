namespace Quarterlight.Crew.Commands;

/// <summary>Keeps what is asked in one conversation in order; conversations run beside each other. Holds nothing of a conversation in which nobody waits.</summary>
internal sealed class ConversationOrder
{
    private readonly Dictionary<string, Task> last = new(StringComparer.Ordinal);
    private readonly Lock gate = new();

    /// <summary>Conversations in which something is being done.</summary>
    public int Count
    {
        get
        {
            lock (gate)
            {
                return last.Count;
            }
        }
    }

    /// <summary>Does the work when all asked before it in that conversation is done.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<T> RunAsync<T>(string conversationId, Func<Task<T>> work, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(conversationId);
        ArgumentNullException.ThrowIfNull(work);
        var done = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        Task before;
        lock (gate)
        {
            before = last.GetValueOrDefault(conversationId, Task.CompletedTask);
            last[conversationId] = done.Task;
        }

        try
        {
            await before.WaitAsync(cancellation).ConfigureAwait(false);
            return await work().ConfigureAwait(false);
        }
        finally
        {
            // Called off while waiting: who comes after still waits for who was before.
            _ = before.ContinueWith(_ => Leave(conversationId, done), CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
        }
    }

    private void Leave(string conversationId, TaskCompletionSource done)
    {
        lock (gate)
        {
            if (last.GetValueOrDefault(conversationId) == done.Task)
            {
                last.Remove(conversationId);
            }
        }

        done.SetResult();
    }
}
