using BenchmarkDotNet.Attributes;
using Quarterlight.Endurance.Heat;
using Quarterlight.Endurance.Tests.Heat;

namespace Quarterlight.Bench;

/// <summary>A heat forecast of four hours, with and without what changes would buy, against the plain way: Euler by seconds and every pair of roll and
/// cool.</summary>
[MemoryDiagnoser]
public class HeatBench
{
    private static readonly HeatTask s_task = HeatTasks.HotDay with { RhythmLimit = HeatLimitKind.Caution, SpeedKmPerHour = 40, HeadingDeg = 150 };

    [GlobalSetup]
    public void Setup()
    {
        PlainHeat plain = new PlainHeat(s_task).Run();
        HeatReport report = HeatForecast.RunWithoutOptions(s_task);
        if (Math.Abs((plain.RolledS / 14400.0) - report.Rhythm.RollingFraction) > 0.03 || Math.Abs(plain.LimitS[1]!.Value - (60 * report.Limits[1].Minutes!.Value)) > 10)
        {
            throw new InvalidOperationException($"The two ways differ: {plain.RolledS / 14400.0} and {report.Rhythm.RollingFraction} of the day.");
        }
    }

    [Benchmark(Baseline = true)]
    public int PlainForecast() => new PlainHeat(s_task).Run().RolledS;

    [Benchmark]
    public double ForecastAndRhythm() => HeatForecast.RunWithoutOptions(s_task).Rhythm.RollingFraction;

    [Benchmark]
    public double WithOptions() => HeatForecast.Run(s_task).Rhythm.RollingFraction;
}
