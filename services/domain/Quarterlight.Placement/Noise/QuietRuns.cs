namespace Quarterlight.Placement.Noise;

/// <summary>Joins stretches in a row: runs that work throughout, and longer ones that hold a stretch to be used with care.</summary>
internal static class QuietRuns
{
    public static IReadOnlyList<QuietRun> Of(IReadOnlyList<StretchNoise> stretches)
    {
        var runs = new List<QuietRun>();
        AddRuns(runs, stretches, SceneVerdict.Works);
        AddRuns(runs, stretches, SceneVerdict.WithCare);
        return [.. runs.OrderByDescending(r => r.DurationS).ThenBy(r => r.Verdict).ThenBy(r => r.StartM)];
    }

    // Runs no worse than a verdict that hold at least one stretch of just that verdict: a run that only works is listed once.
    private static void AddRuns(List<QuietRun> runs, IReadOnlyList<StretchNoise> stretches, SceneVerdict worst)
    {
        int first = 0;
        while (first < stretches.Count)
        {
            int end = first;
            while (end < stretches.Count && stretches[end].Noise.Verdict <= worst)
            {
                end++;
            }

            StretchNoise[] run = [.. stretches.Skip(first).Take(end - first)];
            if (run.Any(s => s.Noise.Verdict == worst))
            {
                runs.Add(new QuietRun(run[0].Stretch.Label, run[^1].Stretch.Label, run[0].StartM, run.Sum(s => s.Stretch.LengthM), run.Sum(s => s.DurationS), worst));
            }

            first = Math.Max(end, first + 1);
        }
    }
}
