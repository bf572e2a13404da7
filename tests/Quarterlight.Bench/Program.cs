using System.Diagnostics;
using Quarterlight.Bench;
using Quarterlight.Placement;
var task = BenchScene.FiveTalkers();
foreach (var v in PlacementRules.Validate(task)) Console.WriteLine(v);
MountPlan plan = null!;
var times = new List<double>();
for (int i = 0; i < 60; i++) { long a = GC.GetAllocatedBytesForCurrentThread(); var sw = Stopwatch.StartNew(); plan = PlacementPlanner.Plan(task); times.Add(sw.Elapsed.TotalMilliseconds); if (i % 15 == 0) Console.WriteLine($"{sw.Elapsed.TotalMilliseconds:0.0} ms {(GC.GetAllocatedBytesForCurrentThread() - a) / 1e6:0.0} MB"); }
times.Sort(); Console.WriteLine($"median {times[30]:0.0} ms  sites {task.Cabin.Sites.Count} usable {plan.UsableSiteCount} proof {plan.Proof}");
foreach (var p in plan.Best.Placements) Console.WriteLine($"{p.TalkerId}: {p.MicrophoneId} {p.Fixing} | {p.PlaceWords} | {p.AimWords} | null-engine {p.NullToEngineRad * 180 / Math.PI:0} | SNR {p.Figures.SnrDba.Value:0.0} DR {p.Figures.DirectToReverberantDb:0.0} sep {p.Figures.SeparationDb:0.0} swing {p.Figures.PoseSwingDb:0.0} peak {p.Figures.PeakLevelDb.Value:0} score {p.Figures.ScoreDb:0.00} | {string.Join(",", p.Penalties.Select(x => $"{x.Code} {x.CostDb:0.0}"))}");
foreach (var r in plan.RunnersUp) Console.WriteLine($"runner-up {r.WorstScoreDb:0.0} {r.SumScoreDb:0.0}: {r.Difference}");
foreach (var g in plan.RefusedSites.SelectMany(r => r.Reasons).GroupBy(r => r)) Console.WriteLine($"{g.Key} {g.Count()}");
var o = PlacementOptions.Default;
double[] acc = new double[6];
for (int i = 0; i < 40; i++)
{
    if (i == 20) Array.Clear(acc);
    var sw = Stopwatch.StartNew();
    var gate = new SiteGate(task, o); int n = task.Kit.Microphones.Count; var spots = new List<MountSpot>(); var flags = new List<bool>(); Span<bool> us = new bool[n];
    foreach (var s in MountSpot.All(task, o)) if (gate.Try(s, us) is null) { spots.Add(s); foreach (var f in us) flags.Add(f); }
    acc[0] += sw.Elapsed.TotalMilliseconds; sw.Restart();
    var fields = new SpotFields(task, o); acc[1] += sw.Elapsed.TotalMilliseconds; sw.Restart();
    var sums = new SpotSums(fields, spots, o); acc[2] += sw.Elapsed.TotalMilliseconds; sw.Restart();
    var fac = new CandidateFactory(task, o, gate, fields, spots, flags.ToArray()); acc[3] += sw.Elapsed.TotalMilliseconds; sw.Restart();
    var c = fac.Singles(); acc[4] += sw.Elapsed.TotalMilliseconds; sw.Restart();
    var w = new FigureSheet(fields, o); for (int k = 0; k < 15; k++) w.For(spots[k], task.Kit.Microphones[2], spots[k].Site.Normal, k % 5, 0, 0, 0); acc[5] += sw.Elapsed.TotalMilliseconds;
}
Console.WriteLine("gate/fields/sums/factory/singles/figures15 " + string.Join(" ", acc.Select(x => (x / 20).ToString("0.00"))));
