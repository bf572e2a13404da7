using Quarterlight.Clips.Tagging;
using Quarterlight.Tagger;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Learning;

/// <summary>Rows to train one tag with.</summary>
public static class RowTable
{
    /// <summary>How much a case with real noise, speech or room tone counts against one with made noise. Judgement.</summary>
    public const double RealWeight = 3;

    /// <summary>
    /// Rows of the cases in which it is known whether the tag holds. Each case weighs alike, whatever its length, and yes and no weigh alike in all.
    /// </summary>
    public static IReadOnlyList<FeatureRow> For(ClipTag tag, IEnumerable<SoundCase> cases)
    {
        SoundCase[] known = [.. cases.Where(c => c.Truth[tag] is not null)];
        double Of(SoundCase c) => c.IsMade ? 1 : RealWeight;
        double yes = known.Where(c => c.Truth[tag] == true).Sum(Of), no = known.Where(c => c.Truth[tag] == false).Sum(Of);
        var rows = new List<FeatureRow>();
        foreach (SoundCase c in known)
        {
            bool holds = c.Truth[tag] == true;
            float weight = (float)(known.Length / 2.0 / Math.Max(1, holds ? yes : no) / c.Rows.Count * 3 * (c.IsMade ? 1 : RealWeight));
            rows.AddRange(c.Rows.Select(r => new FeatureRow { Features = r, Label = holds, Weight = weight }));
        }

        return rows;
    }
}
