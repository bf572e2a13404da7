using System.Collections.Concurrent;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Grpc.Net.Client;

namespace Quarterlight.CrewBot;

/// <summary>A planner at an address.</summary>
public sealed class RemotePlanner : IPlanner
{
    // A picture of a few hundred kilobytes and a long list of sites fit many times over.
    private const int LargestMessageBytes = 16 * 1024 * 1024;

    // While a planner is away calls fail at once, and it is looked for again after ever longer waits. The library's own end of them is two minutes: a crew would be told
    // for so long that a planner is away which has long been back. One knock in two seconds burdens nobody.
    private static readonly TimeSpan LongestReconnectWait = TimeSpan.FromSeconds(2);

    private const string KeyHeader = "x-quarterlight-key";
    private const string TeamHeader = "x-quarterlight-team";

    // An invoker is a few words of memory; the limit is there so that no crowd of ids can grow it for ever.
    private const int MostTeamsRemembered = 4096;

    private readonly ConcurrentDictionary<string, CallInvoker> teams = new(StringComparer.Ordinal);

    private readonly GrpcChannel channel;

    /// <summary>A planner at that address; nothing is sent yet.</summary>
    /// <param name="address">http or https address.</param>
    /// <param name="key">Team's key, sent with every call; null sends none.</param>
    public RemotePlanner(Uri address, string? key)
    {
        ArgumentNullException.ThrowIfNull(address);
        channel = GrpcChannel.ForAddress(address, Options());
        Address = address.GetLeftPart(UriPartial.Authority);
        Invoker = string.IsNullOrEmpty(key) ? channel.CreateCallInvoker() : channel.Intercept(metadata =>
        {
            metadata.Add(KeyHeader, key);
            return metadata;
        });
    }

    /// <summary>How it connects.</summary>
    internal static GrpcChannelOptions Options() => new() { MaxReceiveMessageSize = LargestMessageBytes, InitialReconnectBackoff = LongestReconnectWait / 4, MaxReconnectBackoff = LongestReconnectWait };

    /// <inheritdoc/>
    public string Address { get; }

    /// <inheritdoc/>
    public CallInvoker Invoker { get; }

    /// <inheritdoc/>
    public CallInvoker ForTeam(string team)
    {
        ArgumentException.ThrowIfNullOrEmpty(team);
        if (teams.Count >= MostTeamsRemembered)
        {
            teams.Clear();
        }

        return teams.GetOrAdd(team, static (id, all) => all.Intercept(metadata =>
        {
            metadata.Add(TeamHeader, id);
            return metadata;
        }), Invoker);
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        channel.Dispose();
        return ValueTask.CompletedTask;
    }
}
