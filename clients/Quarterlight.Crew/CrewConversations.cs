using System.Collections.Concurrent;

namespace Quarterlight.Crew;

/// <summary>Keeps what each conversation remembers, so that a transport need not. Safe for many at once.</summary>
public sealed class CrewConversations
{
    /// <summary>Conversations remembered; beyond that the one silent longest is forgotten.</summary>
    public const int MostRemembered = 1000;

    private readonly CrewDesk desk;
    private readonly ConcurrentDictionary<string, (CrewMemory Memory, long Turn)> remembered = new();
    private long turn;

    /// <summary>Conversations at this desk.</summary>
    public CrewConversations(CrewDesk desk)
    {
        ArgumentNullException.ThrowIfNull(desk);
        this.desk = desk;
    }

    /// <summary>Answers the next question of a conversation.</summary>
    /// <param name="conversationId">Whatever tells conversations apart for the transport.</param>
    /// <param name="question">The question; what it remembers is replaced by what the conversation does.</param>
    /// <param name="cancellation">Calls the question off.</param>
    public async Task<CrewAnswer> AskAsync(string conversationId, CrewQuestion question, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(conversationId);
        ArgumentNullException.ThrowIfNull(question);
        CrewMemory memory = remembered.TryGetValue(conversationId, out (CrewMemory Memory, long Turn) kept) ? kept.Memory : question.Memory;
        CrewAnswer answer = await desk.AskAsync(question with { Memory = memory }, cancellation).ConfigureAwait(false);
        remembered[conversationId] = (answer.Memory, Interlocked.Increment(ref turn));
        if (remembered.Count > MostRemembered)
        {
            remembered.TryRemove(remembered.MinBy(r => r.Value.Turn).Key, out _);
        }

        return answer;
    }
}
