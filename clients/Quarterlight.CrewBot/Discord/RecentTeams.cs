namespace Quarterlight.CrewBot.Discord;

/// <summary>Teams by server, made when first asked for; the ones used last are kept. Safe for many at once.</summary>
/// <param name="make">Makes a team; makes no call.</param>
/// <param name="most">Teams kept, 1 or more. A team let go while it answers goes on to its end.</param>
public sealed class RecentTeams(Func<ulong, CrewTeam> make, int most = RecentTeams.DefaultMost) : ICrewTeams
{
    /// <summary>Teams kept unless another number is given.</summary>
    public const int DefaultMost = 500;

    private readonly Dictionary<ulong, LinkedListNode<(ulong Guild, CrewTeam Team)>> byGuild = [];
    private readonly LinkedList<(ulong Guild, CrewTeam Team)> newestFirst = new();
    private readonly Lock gate = new();

    /// <inheritdoc/>
    public CrewTeam For(ulong guildId)
    {
        lock (gate)
        {
            if (byGuild.TryGetValue(guildId, out LinkedListNode<(ulong Guild, CrewTeam Team)>? node))
            {
                newestFirst.Remove(node);
                newestFirst.AddFirst(node);
                return node.Value.Team;
            }

            CrewTeam team = make(guildId);
            byGuild[guildId] = newestFirst.AddFirst((guildId, team));
            if (byGuild.Count > most)
            {
                byGuild.Remove(newestFirst.Last!.Value.Guild);
                newestFirst.RemoveLast();
            }

            return team;
        }
    }
}
