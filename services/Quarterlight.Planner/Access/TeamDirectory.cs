using System.Security.Cryptography;
using System.Text;
using Grpc.Core;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Mapping;

namespace Quarterlight.Planner.Access;

/// <summary>Which key opens which team. Without any team configured everybody on this machine is the team "local".</summary>
internal sealed class TeamDirectory
{
    /// <summary>Request header that carries a team's key.</summary>
    public const string KeyHeader = "x-quarterlight-key";

    /// <summary>The team of a planner that has no keys.</summary>
    public const string LocalTeam = "local";

    private readonly Dictionary<string, string> _teamByKeyHash;

    /// <summary>Reads the configuration.</summary>
    /// <exception cref="PlannerStartException">A team's name or hash is not one, or two teams have the same key.</exception>
    public TeamDirectory(IReadOnlyDictionary<string, string> keyHashByTeam)
    {
        _teamByKeyHash = [];
        foreach ((string team, string hash) in keyHashByTeam)
        {
            if (!FieldReader.IsId(team))
            {
                throw new PlannerStartException($"Teams:{team} is no team's name: use 1 to 63 of a-z, 0-9 and dashes, starting with a letter.");
            }

            if (hash.Length != SHA256.HashSizeInBytes * 2 || !hash.All(char.IsAsciiHexDigit))
            {
                throw new PlannerStartException($"Teams:{team} is not a SHA-256 in hex: set it to the 64 digits that sha256sum prints for the team's key.");
            }

            if (!_teamByKeyHash.TryAdd(hash.ToLowerInvariant(), team))
            {
                throw new PlannerStartException($"Teams:{team} has the same key as another team: give each its own.");
            }
        }
    }

    /// <summary>True when keys are asked for.</summary>
    public bool AsksForKeys => _teamByKeyHash.Count > 0;

    /// <summary>The team that a call's key opens.</summary>
    /// <param name="key">What the call sent as <see cref="KeyHeader"/>; null when nothing.</param>
    /// <exception cref="RpcException">UNAUTHENTICATED: the key is missing or opens no team.</exception>
    public string TeamOf(string? key)
    {
        if (!AsksForKeys)
        {
            return LocalTeam;
        }

        // Looked up by hash: the time it takes says nothing about how much of a key was right.
        string hash = key is null ? "" : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));
        return _teamByKeyHash.TryGetValue(hash, out string? team) ? team : throw Refusals.UnknownKey();
    }
}
