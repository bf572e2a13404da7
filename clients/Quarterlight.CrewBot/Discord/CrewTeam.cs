using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Keeping;

namespace Quarterlight.CrewBot.Discord;

/// <summary>One server's crew.</summary>
/// <param name="Id">Its id with the planner.</param>
/// <param name="Desk">Who answers it.</param>
/// <param name="Conversations">What its conversations remember.</param>
public sealed record CrewTeam(string Id, ICrewDesk Desk, IConversationStore Conversations);

/// <summary>Who serves which server.</summary>
public interface ICrewTeams
{
    /// <summary>The team of a server. Makes no call.</summary>
    /// <param name="guildId">The server.</param>
    CrewTeam For(ulong guildId);
}
