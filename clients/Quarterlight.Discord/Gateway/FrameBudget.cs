namespace Quarterlight.Discord.Gateway;

/// <summary>Frames one connection may send: 120 in any 60 seconds, then the platform drops it (Gateway, Rate Limiting). Not safe for many at once.</summary>
internal sealed class FrameBudget(TimeProvider time)
{
    /// <summary>Most frames of a window.</summary>
    public const int Most = 120;

    // Beats the platform asks for may not use up what our own need.
    private const int KeptForOwn = 20;

    private static readonly TimeSpan Window = TimeSpan.FromSeconds(60);
    private readonly Queue<long> sent = new();

    /// <summary>Time until one more may be sent; nothing when at once.</summary>
    /// <param name="ours">False for a frame the platform asked for.</param>
    public TimeSpan Wait(bool ours)
    {
        while (sent.TryPeek(out long oldest) && time.GetElapsedTime(oldest) >= Window)
        {
            sent.Dequeue();
        }

        int most = ours ? Most : Most - KeptForOwn;
        return sent.Count < most ? TimeSpan.Zero : Window - time.GetElapsedTime(sent.ElementAt(sent.Count - most));
    }

    /// <summary>Counts one.</summary>
    public void Take() => sent.Enqueue(time.GetTimestamp());
}
