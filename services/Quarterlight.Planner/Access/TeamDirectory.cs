using System.Security.Cryptography;
using System.Text;
using Grpc.Core;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Mapping;

namespace Quarterlight.Planner.Access;

/// <summary>
/// Which key opens which team. A team's key opens that team; the key of a delegate, such as a chat bot that serves many teams, opens every team
/// whose id begins with the delegate's name and a dash, one a call, and no other. Without any key configured everybody on this machine is the team
/// "local", or whichever team they name.
/// </summary>
internal sealed class TeamDirectory
{
    /// <summary>Request header that carries a team's or a delegate's key.</summary>
    public const string KeyHeader = "x-quarterlight-key";

    /// <summary>Request header that names the team a call is for.</summary>
    public const string TeamHeader = "x-quarterlight-team";

    /// <summary>The team of a planner that has no keys.</summary>
    public const string LocalTeam = "local";

    private readonly Dictionary<string, string> _teamByKeyHash = [];
    private readonly Dictionary<string, string> _delegateByKeyHash = [];

    /// <summary>Reads the configuration.</summary>
    /// <exception cref="PlannerStartException">A name or hash is not one, two of them have the same key, or one could reach into another.</exception>
    public TeamDirectory(IReadOnlyDictionary<string, string> keyHashByTeam, IReadOnlyDictionary<string, string> keyHashByDelegate)
    {
        Read("Teams", "team", keyHashByTeam, _teamByKeyHash);
        Read("Delegates", "delegate", keyHashByDelegate, _delegateByKeyHash);
        foreach (string name in keyHashByDelegate.Keys)
        {
            if (keyHashByTeam.Keys.FirstOrDefault(t => IsTeamOf(name, t)) is { } team)
            {
                throw new PlannerStartException($"Teams:{team} begins with {Prefix(name)} and would be open to the delegate {name}: give the team another name.");
            }

            if (keyHashByDelegate.Keys.FirstOrDefault(d => d.StartsWith(Prefix(name), StringComparison.Ordinal)) is { } other)
            {
                throw new PlannerStartException($"Delegates:{other} begins with {Prefix(name)}, so its teams would be open to the delegate {name}: give one of them another name.");
            }
        }
    }

    /// <summary>True when keys are asked for.</summary>
    public bool AsksForKeys => _teamByKeyHash.Count + _delegateByKeyHash.Count > 0;

    /// <summary>The team that a call acts as.</summary>
    /// <param name="key">What the call sent as <see cref="KeyHeader"/>; null when nothing.</param>
    /// <param name="team">What the call sent as <see cref="TeamHeader"/>; null when nothing.</param>
    /// <exception cref="RpcException">
    /// UNAUTHENTICATED: the key is missing or opens nothing. PERMISSION_DENIED: it does not open that team. INVALID_ARGUMENT: the team is missing or not
    /// the id of one.
    /// </exception>
    public string TeamOf(string? key, string? team)
    {
        if (!AsksForKeys)
        {
            return team is null ? LocalTeam : Id(team);
        }

        // Looked up by hash: the time it takes says nothing about how much of a key was right.
        string hash = key is null ? "" : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));
        if (_teamByKeyHash.TryGetValue(hash, out string? own))
        {
            return team is null || team == own ? own : throw Refusals.WrongTeam();
        }

        if (!_delegateByKeyHash.TryGetValue(hash, out string? name))
        {
            throw Refusals.UnknownKey();
        }

        return team is null ? throw Refusals.Invalid(TeamHeader, "the team is missing", $"This key serves many teams: name one of them, beginning with {Prefix(name)}, in the header {TeamHeader}")
            : IsTeamOf(name, Id(team)) ? team
            : throw Refusals.WrongTeam();
    }

    private static string Prefix(string name) => name + "-";

    // "<name>-<rest>" with something for the rest.
    private static bool IsTeamOf(string name, string team) => team.Length > name.Length + 1 && team.StartsWith(Prefix(name), StringComparison.Ordinal);

    private static string Id(string team) => FieldReader.IsId(team)
        ? team
        : throw Refusals.Invalid(TeamHeader, "this is not the id of a team", "An id is 1 to 63 of a-z, 0-9 and dashes, starting with a letter");

    private void Read(string section, string word, IReadOnlyDictionary<string, string> keyHashByName, Dictionary<string, string> nameByKeyHash)
    {
        foreach ((string name, string hash) in keyHashByName)
        {
            if (!FieldReader.IsId(name))
            {
                throw new PlannerStartException($"{section}:{name} is no {word}'s name: use 1 to 63 of a-z, 0-9 and dashes, starting with a letter.");
            }

            if (hash.Length != SHA256.HashSizeInBytes * 2 || !hash.All(char.IsAsciiHexDigit))
            {
                throw new PlannerStartException($"{section}:{name} is not a SHA-256 in hex: set it to the 64 digits that sha256sum prints for the {word}'s key.");
            }

            string known = hash.ToLowerInvariant();
            if (_teamByKeyHash.ContainsKey(known) || !nameByKeyHash.TryAdd(known, name))
            {
                throw new PlannerStartException($"{section}:{name} has the same key as another team or delegate: give each its own.");
            }
        }
    }
}
