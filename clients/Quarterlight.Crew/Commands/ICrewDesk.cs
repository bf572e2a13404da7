namespace Quarterlight.Crew.Commands;

/// <summary>Everything a transport asks of a team's desk. Nothing here throws for what users do or for a planner that is away: that comes back as an answer.</summary>
public interface ICrewDesk
{
    /// <summary>Answers a question in plain words.</summary>
    /// <param name="conversationId">What tells conversations apart: 1 to 128 letters, digits, dashes and colons.</param>
    /// <param name="question">The question.</param>
    /// <param name="cancellation">Calls it off.</param>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    Task<CrewAnswer> AskAsync(string conversationId, CrewQuestion question, CancellationToken cancellation);

    /// <summary>Does what a command says.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    Task<CrewOutput> RunAsync(string conversationId, CrewCommandCall call, CancellationToken cancellation);

    /// <summary>Does what a filled-in form says.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    Task<CrewAnswer> SubmitAsync(string conversationId, CrewFormEntry entry, CancellationToken cancellation);

    /// <summary>Choices for an option while it is typed, best first, at most 25; none when the planner is away.</summary>
    /// <param name="conversationId">The conversation.</param>
    /// <param name="call">The command as far as it is given.</param>
    /// <param name="option">The option being typed; its text so far stands in the call.</param>
    /// <param name="cancellation">Calls it off.</param>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    Task<IReadOnlyList<CrewChoice>> CompleteAsync(string conversationId, CrewCommandCall call, string option, CancellationToken cancellation);
}
