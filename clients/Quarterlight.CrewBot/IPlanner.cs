using Grpc.Core;

namespace Quarterlight.CrewBot;

/// <summary>A planner that can be called, wherever it runs.</summary>
public interface IPlanner : IAsyncDisposable
{
    /// <summary>Its address as people know it.</summary>
    string Address { get; }

    /// <summary>Where calls go.</summary>
    CallInvoker Invoker { get; }
}
