using Quarterlight.Crew.Commands;

namespace Quarterlight.CrewBot;

/// <summary>
/// A way the crew reaches the desk. It takes messages in, hands them on with the id of the conversation they belong to,
/// lays answers out and delivers them; it builds no text of answers and keeps no memory of conversations.
/// </summary>
public interface ICrewTransport
{
    /// <summary>Serves until the crew leaves or the cancellation is asked for.</summary>
    /// <param name="desk">Where questions are answered and commands are done.</param>
    /// <param name="cancellation">Ends the service.</param>
    Task RunAsync(TeamDesk desk, CancellationToken cancellation);
}
