using Quarterlight.Acoustics;

namespace Quarterlight.Placement.Noise;

/// <summary>The table for the assistant director: the conditions asked about, then what else may be met, each by speed.</summary>
internal static class NoiseTable
{
    private const int MostRows = 8;

    private static readonly RoadSurface[] s_roads = [RoadSurface.SmoothAsphalt, RoadSurface.CoarseAsphalt, RoadSurface.Concrete];
    private static readonly Rain[] s_rains = [Rain.None, Rain.Light, Rain.Heavy];

    public static IReadOnlyList<NoiseRow> Rows(NoiseBoard board, double? askedFastestWorks)
    {
        IReadOnlyList<string> panes = board.MovablePaneIds;
        DriveConditions asked = board.Task.Drive;
        var rows = new List<NoiseRow>(MostRows);
        foreach (DriveConditions drive in Variants(asked, panes))
        {
            double? fastest = ReferenceEquals(drive, asked) ? askedFastestWorks : SpeedSearch.Fastest(board, drive, SceneVerdict.Works, NoiseRules.TopSpeedKmPerHour);
            rows.Add(new NoiseRow(ConditionWords.Of(drive, panes), [.. board.Task.TableSpeedsKmPerHour.Select(v => board.At(drive with { SpeedKmPerHour = v }))], fastest));
        }

        return rows;
    }

    // One thing changed at a time; what is as asked already is not said twice.
    private static IEnumerable<DriveConditions> Variants(DriveConditions asked, IReadOnlyList<string> panes)
    {
        var all = new List<DriveConditions> { asked };
        if (asked.FanStep > 0)
        {
            all.Add(asked with { FanStep = 0 });
        }

        all.AddRange(new[] { 0, 0.5, 1 }.Where(f => !WindowsAre(asked, panes, f)).Select(f => asked with { OpenWindows = f > 0 ? [.. panes.Select(p => new WindowOpening(p, f))] : [] }));
        all.AddRange(s_roads.Where(r => r != asked.Road).Take(2).Select(r => asked with { Road = r }));
        all.AddRange(s_rains.Where(r => r != asked.Rain).Select(r => asked with { Rain = r }));
        if (asked.FanStep == 0)
        {
            all.Add(asked with { FanStep = 1 });
        }

        return all.Take(MostRows);
    }

    private static bool WindowsAre(DriveConditions drive, IReadOnlyList<string> panes, double fraction) =>
        panes.All(p => Math.Abs((drive.OpenWindows.FirstOrDefault(w => w.PaneId == p)?.OpenFraction ?? 0) - fraction) < 0.005);
}
