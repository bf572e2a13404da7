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
    public static JudgedCase From(SoundCase c, double[][] scores, IReadOnlyList<Platt> platt)
    {
        ArgumentNullException.ThrowIfNull(c);
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(platt);
        var seconds = new List<TaggedSecond>();
        double start = 0;
        for (int r = 0; r < c.Rows.Count; r++)
        {
            double P(ClipTag tag) => platt[(int)tag].Of(scores[(int)tag][r]);
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
            Platt[] platt = Calibrate(scored.Where(s => s.Block != block.Key));
            return block.Select(s => From(s.Case, s.Scores, platt));
        })];
    }

    /// <summary>One calibration a tag from held-out scores. Every clip weighs alike, and clips of one recording weigh together as the root of their number.</summary>
    public static Platt[] Calibrate(IEnumerable<ScoredCase> scored)
    {
        ScoredCase[] all = [.. scored];
        Dictionary<string, int> sizes = all.GroupBy(s => s.Case.Recordings[0]).ToDictionary(g => g.Key, g => g.Count());
        double Weight(ScoredCase s) => 1 / Math.Sqrt(sizes[s.Case.Recordings[0]]);
        return [.. Truth.Tags.Select(tag =>
        {
            ScoredCase[] known = [.. all.Where(s => s.Case.Truth[tag] is not null)];
            double yes = known.Where(s => s.Case.Truth[tag] == true).Sum(Weight), no = known.Where(s => s.Case.Truth[tag] == false).Sum(Weight);
            return Platt.Fit([.. known.SelectMany(s => s.Scores[(int)tag].Select((score, r) =>
            {
                bool holds = s.Case.Truth[tag] == true;
                double share = holds ? Prior(tag) / yes : (1 - Prior(tag)) / no;
                return (score, holds, (yes + no) * share * Weight(s) * s.Case.Seconds[r] / s.Case.Seconds.Sum());
            }))]);
        })];
    }
}
