using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Learning;

/// <summary>A test clip with its calibrated probabilities.</summary>
/// <param name="Case">The clip.</param>
/// <param name="Overall">Probabilities of the clip, as <see cref="ClipTagger.Pool"/> makes them.</param>
/// <param name="Seconds">Probabilities of each row.</param>
public sealed record JudgedCase(SoundCase Case, TagProbabilities Overall, IReadOnlyList<TagProbabilities> Seconds)
{
    /// <summary>Share of clips a tag is taken to hold in, whatever its share of the collection (fans: 8 %). Judgement.</summary>
    public static double Prior(ClipTag tag) => tag == ClipTag.AirConditioning ? 0.3 : 0.45;

    /// <summary>Turns scores into probabilities.</summary>
    public static JudgedCase From(SoundCase c, double[][] scores, IReadOnlyList<Stacking> stacks)
    {
        ArgumentNullException.ThrowIfNull(c);
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(stacks);
        var seconds = new List<TaggedSecond>();
        double start = 0;
        for (int r = 0; r < c.Rows.Count; r++)
        {
            int row = r;
            double P(ClipTag tag) => stacks[(int)tag].Of(t => scores[t][row]);
            seconds.Add(new(start, start + c.Seconds[r], new(P(ClipTag.Engine), P(ClipTag.Wind), P(ClipTag.AirConditioning), P(ClipTag.Clean))));
            start += c.Seconds[r];
        }

        return new(c, ClipTagger.Pool(seconds), [.. seconds.Select(s => s.Probabilities)]);
    }

    /// <summary>Judges all, each with a calibration fitted on the other blocks of folds, so that no clip calibrates itself.</summary>
    public static IReadOnlyList<JudgedCase> CrossCalibrated(IReadOnlyList<ScoredCase> scored)
    {
        ArgumentNullException.ThrowIfNull(scored);
        return [.. scored.GroupBy(s => s.Block).OrderBy(g => g.Key).SelectMany(block =>
        {
            Stacking[] stacks = Stacks(scored.Where(s => s.Block != block.Key));
            return block.Select(s => From(s.Case, s.Scores, stacks));
        })];
    }

    /// <summary>One calibration of its own score a tag, from held-out scores. Every clip weighs alike, and clips of one recording weigh together as the root of their number.</summary>
    public static Platt[] Calibrate(IEnumerable<ScoredCase> scored)
    {
        ScoredCase[] all = [.. scored];
        return [.. Truth.Tags.Select(tag => Platt.Fit([.. Weighted(all, tag).Select(r => (r.Scores[(int)tag], r.Holds, r.Weight))]))];
    }

    /// <summary>One calibration of all scores a tag, weighted alike.</summary>
    public static Stacking[] Stacks(IEnumerable<ScoredCase> scored)
    {
        ScoredCase[] all = [.. scored];
        return [.. Truth.Tags.Select(tag => Stacking.Fit([.. Weighted(all, tag)]))];
    }

    private static IEnumerable<(double[] Scores, bool Holds, double Weight)> Weighted(ScoredCase[] all, ClipTag tag)
    {
        Dictionary<string, int> sizes = all.GroupBy(s => s.Case.Recordings[0]).ToDictionary(g => g.Key, g => g.Count());
        double Weight(ScoredCase s) => 1 / Math.Sqrt(sizes[s.Case.Recordings[0]]);
        ScoredCase[] known = [.. all.Where(s => s.Case.Truth[tag] is not null)];
        double yes = known.Where(s => s.Case.Truth[tag] == true).Sum(Weight), no = known.Where(s => s.Case.Truth[tag] == false).Sum(Weight);
        return known.SelectMany(s => Enumerable.Range(0, s.Case.Rows.Count).Select(r =>
        {
            bool holds = s.Case.Truth[tag] == true;
            double share = holds ? Prior(tag) / yes : (1 - Prior(tag)) / no;
            return (Truth.Tags.Select(t => s.Scores[(int)t][r]).ToArray(), holds, (yes + no) * share * Weight(s) * s.Case.Seconds[r] / s.Case.Seconds.Sum());
        }));
    }
}
