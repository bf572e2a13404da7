using Grpc.Health.V1;
using Grpc.Net.Client;
using Microsoft.Extensions.Logging;
using Quarterlight.Planner;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>A planner listening on loopback in a folder of its own, and clients that talk to it.</summary>
public sealed class RunningPlanner : IAsyncDisposable
{
    private readonly DirectoryInfo _folder;

    private RunningPlanner(DirectoryInfo folder, PlannerHost host, LogBook log)
    {
        _folder = folder;
        Host = host;
        Log = log;
        Channel = GrpcChannel.ForAddress(host.GrpcAddress);
        Http = new HttpClient { BaseAddress = new Uri(host.HttpAddress!) };
    }

    public PlannerHost Host { get; }

    public LogBook Log { get; }

    public GrpcChannel Channel { get; }

    public HttpClient Http { get; }

    public string Folder => _folder.FullName;

    public CabinService.CabinServiceClient Cabins => new(Channel);

    public KitService.KitServiceClient Kits => new(Channel);

    public SceneService.SceneServiceClient Scenes => new(Channel);

    public PlanService.PlanServiceClient Plans => new(Channel);

    public PlacementService.PlacementServiceClient Placement => new(Channel);

    public RadioService.RadioServiceClient Radio => new(Channel);

    public EnduranceService.EnduranceServiceClient Endurance => new(Channel);

    public NoiseService.NoiseServiceClient Noise => new(Channel);

    public ClipService.ClipServiceClient Clips => new(Channel);

    public TeamService.TeamServiceClient Teams => new(Channel);

    public Health.HealthClient Health => new(Channel);

    public static async Task<RunningPlanner> StartAsync(Func<PlannerHostOptions, PlannerHostOptions>? change = null)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("quarterlight-wire-");
        var log = new LogBook();
        var options = new PlannerHostOptions { DataFolder = folder.FullName, HttpPort = 0 };
        PlannerHost host = await PlannerHost.StartAsync(change?.Invoke(options) ?? options, b => b.AddProvider(log), TestContext.Current.CancellationToken);
        return new RunningPlanner(folder, host, log);
    }

    /// <summary>Keeps a saloon, a kit and a scene under ids that begin with a word, and returns the scene.</summary>
    public async Task<Scene> KeepSceneAsync(string word)
    {
        CancellationToken stop = TestContext.Current.CancellationToken;
        SceneBundle bundle = Samples.Bundle();
        await Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = word, Cabin = bundle.Cabin }, cancellationToken: stop);
        await Kits.CreateKitAsync(new CreateKitRequest { KitId = word, Kit = bundle.Kit }, cancellationToken: stop);
        bundle.Scene.Cabin = $"cabins/{word}";
        bundle.Scene.Kit = $"kits/{word}";
        return (await Scenes.CreateSceneAsync(new CreateSceneRequest { SceneId = word, Scene = bundle.Scene }, cancellationToken: stop)).Scene;
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        Channel.Dispose();
        await Host.DisposeAsync();
        _folder.Delete(recursive: true);
    }
}

/// <summary>One planner for the tests of a class; fails the class when it logged an error.</summary>
public sealed class PlannerFixture : IAsyncLifetime
{
    public RunningPlanner Planner { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Planner = await RunningPlanner.StartAsync();

    public async ValueTask DisposeAsync()
    {
        await Planner.DisposeAsync();
        Planner.Log.VerifyNoErrors();
    }
}
