using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Quarterlight.Bench;

// One command prints every figure: dotnet run -c Release --project tests/Quarterlight.Bench
// "dry" runs each benchmark once to see that it still works; "only link" runs the one of that name; "start" measures only the process; --planner PATH measures a published Quarterlight.Planner.dll, --bot PATH a published crewbot.dll.
bool dry = args.Contains("dry");
if (!args.Contains("start"))
{
    Job job = Job.ShortRun.WithWarmupCount(5).WithIterationCount(15).WithToolchain(InProcessEmitToolchain.Instance);
    IConfig config = ManualConfig.Create(DefaultConfig.Instance)
        .AddJob(job)
        .AddColumn(StatisticColumn.Median)
        .WithOptions(ConfigOptions.DisableOptimizationsValidator);
    int one = Array.IndexOf(args, "only");
    Type[] all = [typeof(PlanBench), typeof(TenSumsBench), typeof(LookupBench), typeof(LinkBench), typeof(ChannelBench), typeof(HeatBench), typeof(LevelsBench), typeof(JudgeBench), typeof(NoiseBench), typeof(RestBench)];
    Type[] wanted = one >= 0 && one + 1 < args.Length ? [.. all.Where(t => t.Name.StartsWith(args[one + 1], StringComparison.OrdinalIgnoreCase))] : all;
    if (dry)
    {
        await DryRun.RunAsync(wanted);
    }
    else if (wanted.Length > 0)
    {
        BenchmarkRunner.Run(wanted, config);
    }

    // The bot as a process of its own, beside those that are measured in this one.
    if (one < 0 || (one + 1 < args.Length && args[one + 1] == "chat"))
    {
        await ChatBench.RunAsync(dry, PathAfter("--bot"));
    }

    if (one >= 0)
    {
        return 0;
    }
}

return await StartProbe.RunAsync(dry ? 1 : 5, PathAfter("--planner"));

string? PathAfter(string option) => Array.IndexOf(args, option) is >= 0 and int at && at + 1 < args.Length ? args[at + 1] : null;
