using Grpc.Core;
using Quarterlight.Planner;

namespace Quarterlight.CrewBot;

/// <summary>The planner itself, started inside this process on the loopback interface, with a store in a folder.</summary>
public sealed class EmbeddedPlanner : IPlanner
{
    private readonly PlannerHost host;
    private readonly RemotePlanner link;

    private EmbeddedPlanner(PlannerHost host)
    {
        this.host = host;
        link = new RemotePlanner(new Uri(host.GrpcAddress.ToString()), null);
    }

    /// <inheritdoc/>
    public string Address => link.Address;

    /// <inheritdoc/>
    public CallInvoker Invoker => link.Invoker;

    /// <summary>Starts a planner on a free port with its store in the folder, which is made when it is not there.</summary>
    /// <exception cref="IOException">The folder cannot be used.</exception>
    public static async Task<IPlanner> StartAsync(string dataFolder, CancellationToken cancellation)
    {
        Directory.CreateDirectory(dataFolder);
        return new EmbeddedPlanner(await PlannerHost.StartAsync(new PlannerHostOptions { DataFolder = dataFolder, GrpcPort = 0, HttpPort = null }, cancellation).ConfigureAwait(false));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await link.DisposeAsync().ConfigureAwait(false);
        await host.DisposeAsync().ConfigureAwait(false);
    }
}
