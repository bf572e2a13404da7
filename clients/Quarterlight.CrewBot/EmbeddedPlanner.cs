using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
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
        link = new RemotePlanner(new Uri(host.GrpcAddress), null);
    }

    /// <inheritdoc/>
    public string Address => link.Address;

    /// <inheritdoc/>
    public CallInvoker Invoker => link.Invoker;

    /// <inheritdoc/>
    public CallInvoker ForTeam(string team) => link.ForTeam(team);

    /// <summary>Starts a planner on a free port with its store in the folder, which is made when it is not there.</summary>
    /// <exception cref="IOException">The folder cannot be used, or another planner uses it.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public static async Task<IPlanner> StartAsync(string dataFolder, CancellationToken cancellation)
    {
        var options = new PlannerHostOptions { DataFolder = dataFolder, GrpcPort = 0, HttpPort = null, Quiet = true };
        return new EmbeddedPlanner(await PlannerHost.StartAsync(options, LogToError, cancellation).ConfigureAwait(false));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await link.DisposeAsync().ConfigureAwait(false);
        await host.DisposeAsync().ConfigureAwait(false);
    }

    // Standard output carries answers, for people and for scripts; logs must not stand between them.
    private static void LogToError(ILoggingBuilder logging)
    {
        logging.AddSimpleConsole(o => o.SingleLine = true);
        logging.Services.Configure<ConsoleLoggerOptions>(o => o.LogToStandardErrorThreshold = LogLevel.Trace);
    }
}
