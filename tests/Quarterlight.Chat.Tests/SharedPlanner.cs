using Grpc.Core;
using Grpc.Core.Interceptors;
using Quarterlight.CrewBot;

[assembly: AssemblyFixture(typeof(Quarterlight.Chat.Tests.SharedPlanner))]

namespace Quarterlight.Chat.Tests;

/// <summary>The real planner, started once in this process over real gRPC with a store of its own, for all whole-bot tests.</summary>
public sealed class SharedPlanner : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("quarterlight-chat-").FullName;
    private IPlanner? planner;

    public string PictureFolder => Path.Combine(folder, "pictures");

    public CallInvoker Invoker => planner!.Invoker;

    public string Address => planner!.Address;

    public async ValueTask InitializeAsync()
    {
        planner = await EmbeddedPlanner.StartAsync(Path.Combine(folder, "data"), CancellationToken.None);
        await new Crew.CrewDesk(planner.Invoker, new Crew.CrewDeskOptions()).LoadDemoIfEmptyAsync(CancellationToken.None);
    }

    public async ValueTask DisposeAsync()
    {
        await planner!.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Runs the program as a person would, with this planner as the one in its process.</summary>
    public async Task<BotRun> RunAsync(string[] args, string input = "")
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        var surroundings = new CrewBotSurroundings
        {
            Input = new StringReader(input),
            Output = output,
            Error = error,
            StartEmbedded = (_, _) => Task.FromResult<IPlanner>(new Borrowed(this)),
            DefaultPictureFolder = PictureFolder,
            DefaultDataFolder = folder,
        };
        int exit = await CrewBotProgram.RunAsync(args, surroundings, TestContext.Current.CancellationToken);
        return new BotRun(exit, output.ToString(), error.ToString());
    }

    public Task<BotRun> AskAsync(string question, params string[] options) => RunAsync(["ask", question, .. options]);

    private sealed class Borrowed(SharedPlanner shared) : IPlanner
    {
        public string Address => shared.Address;

        public CallInvoker Invoker => shared.Invoker;

        public CallInvoker ForTeam(string team) => shared.Invoker.Intercept(metadata =>
        {
            metadata.Add("x-quarterlight-team", team);
            return metadata;
        });

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}

/// <summary>How a run of the program ended.</summary>
public sealed record BotRun(int Exit, string Output, string Error)
{
    public string[] Lines => [.. Output.Split('\n').Select(l => l.TrimEnd('\r'))];
}
