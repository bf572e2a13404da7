using BenchmarkDotNet.Attributes;
using Quarterlight.Placement;

namespace Quarterlight.Bench;

/// <summary>A full plan, beside the tracing alone that it cannot do without.</summary>
[MemoryDiagnoser]
public class PlanBench
{
    private PlacementTask _task = null!;
    private SpotFields _fields = null!;
    private List<MountSpot> _spots = null!;

    [GlobalSetup]
    public void Setup()
    {
        _task = BenchScene.FiveTalkers();
        _fields = new SpotFields(_task, PlacementOptions.Default);
        HashSet<string> refused = [.. PlacementPlanner.Plan(_task).RefusedSites.Select(r => r.Site.Id)];
        _spots = [.. MountSpot.All(_task, PlacementOptions.Default).Where(s => !refused.Contains(s.Site.Id))];
    }

    /// <summary>The reference: tracing the usable spots once.</summary>
    [Benchmark(Baseline = true)]
    public double TraceUsableSpots()
    {
        using var sums = new SpotSums(_fields, _spots, PlacementOptions.Default);
        return sums.Useful(0, 0)[0];
    }

    /// <summary>Five talkers, four shots, 148 sites, eight microphones, a thousand aims, nine noise sources.</summary>
    [Benchmark]
    public object FullPlan() => PlacementPlanner.Plan(_task);
}
