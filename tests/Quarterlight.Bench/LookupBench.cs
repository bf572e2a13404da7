using BenchmarkDotNet.Attributes;
using Grpc.Health.V1;
using Grpc.Net.Client;
using Quarterlight.Planner;
using Quarterlight.V1;

namespace Quarterlight.Bench;

/// <summary>Looking up a kept plan over real gRPC, against a call that does nothing on a bare host of the same kind; 32 callers at once.</summary>
public class LookupBench
{
    private const int Calls = 8192;
    private const int Callers = 32;

    private string _folder = null!;
    private PlannerHost _host = null!;
    private GrpcChannel _channel = null!;
    private PlanService.PlanServiceClient _plans = null!;
    private EmptyHost _empty = null!;
    private GrpcChannel _emptyChannel = null!;
    private Health.HealthClient _nothing = null!;
    private GetPlanRequest _summary = null!;
    private GetPlanRequest _full = null!;

    /// <summary>Calls of one run; a dry run makes do with one a caller, since that takes every path.</summary>
    public int CallCount { get; set; } = Calls;

    /// <summary>One call of each caller.</summary>
    public const int Fewest = Callers;

    [GlobalSetup]
    public async Task SetupAsync()
    {
        _folder = Directory.CreateTempSubdirectory("quarterlight-bench").FullName;
        _host = await PlannerHost.StartAsync(new PlannerHostOptions { DataFolder = _folder, Quiet = true });
        _channel = GrpcChannel.ForAddress(_host.GrpcAddress);
        _plans = new PlanService.PlanServiceClient(_channel);
        _empty = await EmptyHost.StartAsync();
        _emptyChannel = GrpcChannel.ForAddress(_empty.Address);
        _nothing = new Health.HealthClient(_emptyChannel);
        PlanPlacementResponse made = await new PlacementService.PlacementServiceClient(_channel).PlanPlacementAsync(new PlanPlacementRequest { Bundle = BenchBundle.Make(), Keep = true });
        _full = new GetPlanRequest { Name = made.Plan.Name, View = PlanView.Full };
        _summary = new GetPlanRequest { Name = made.Plan.Name, View = PlanView.Summary };
        Console.WriteLine($"// full plan {(await _plans.GetPlanAsync(_full)).CalculateSize()} bytes, summary {(await _plans.GetPlanAsync(_summary)).CalculateSize()} bytes");
    }

    [GlobalCleanup]
    public async Task CleanupAsync()
    {
        _channel.Dispose();
        _emptyChannel.Dispose();
        await _empty.DisposeAsync();
        await _host.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = Calls)]
    public Task EmptyCall() => Together(async () => await _nothing.CheckAsync(new HealthCheckRequest()));

    [Benchmark(OperationsPerInvoke = Calls)]
    public Task LookUpSummary() => Together(async () => await _plans.GetPlanAsync(_summary));

    [Benchmark(OperationsPerInvoke = Calls)]
    public Task LookUpFullPlan() => Together(async () => await _plans.GetPlanAsync(_full));

    private Task Together(Func<Task> call) => Task.WhenAll(Enumerable.Range(0, Callers).Select(async _ =>
    {
        for (int i = 0; i < CallCount / Callers; i++)
        {
            await call();
        }
    }));
}
