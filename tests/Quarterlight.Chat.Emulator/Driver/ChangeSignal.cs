namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>Wakes whoever waits for something to change.</summary>
internal sealed class ChangeSignal
{
    private TaskCompletionSource next = New();

    /// <summary>Done at the next change.</summary>
    public Task Next => Volatile.Read(ref next).Task;

    /// <summary>Something changed.</summary>
    public void Raise() => Interlocked.Exchange(ref next, New()).SetResult();

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
