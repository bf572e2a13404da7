using Quarterlight.Crew.Keeping;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Teams by server, made when first asked for; the ones used last are kept. Safe for many at once.</summary>
/// <param name="make">Makes a team; makes no call.</param>
/// <param name="most">Teams kept, 1 or more. A team let go while it answers goes on to its end.</param>
public sealed class RecentTeams(Func<ulong, CrewTeam> make, int most = RecentTeams.DefaultMost) : ICrewTeams
{
    /// <summary>Teams kept unless another number is given.</summary>
    public const int DefaultMost = 500;

    private readonly RecentlyUsed<ulong, CrewTeam> teams = new(most);

    /// <inheritdoc/>
    public CrewTeam For(ulong guildId) => teams.FindOrMake(guildId, make);
}
