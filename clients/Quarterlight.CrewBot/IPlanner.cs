using Grpc.Core;

namespace Quarterlight.CrewBot;

/// <summary>A planner that can be called, wherever it runs.</summary>
public interface IPlanner : IAsyncDisposable
{
    /// <summary>Its address as people know it.</summary>
    string Address { get; }

    /// <summary>Where calls go.</summary>
    CallInvoker Invoker { get; }

    /// <summary>Where calls for one team go: over the same connection, with the team's id in every call.</summary>
    /// <param name="team">Id of the team: 1 to 63 of a-z, 0-9 and dashes, starting with a letter. A planner refuses one that the key does not open.</param>
    CallInvoker ForTeam(string team);
}
