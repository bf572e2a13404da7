namespace Quarterlight.Crew.Keeping;

/// <summary>Where what conversations remember is kept between questions. Safe for many at once; a store that is away never fails an answer.</summary>
public interface IConversationStore
{
    /// <summary>What a conversation remembers; null when nothing is kept of it.</summary>
    /// <param name="conversationId">What tells conversations apart: 1 to 128 letters, digits, dashes and colons.</param>
    /// <param name="cancellation">Calls it off.</param>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    Task<CrewMemory?> ReadAsync(string conversationId, CancellationToken cancellation);

    /// <summary>Keeps what a conversation remembers now, in place of what it remembered before.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    Task WriteAsync(string conversationId, CrewMemory memory, CancellationToken cancellation);
}
