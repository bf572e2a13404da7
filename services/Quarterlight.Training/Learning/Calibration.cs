using Quarterlight.Clips.Tagging;

namespace Quarterlight.Training.Learning;

/// <summary>One step of the probability scale.</summary>
/// <param name="Said">Mean probability that was said.</param>
/// <param name="Held">Share of clips in which the tag held.</param>
/// <param name="Weight">Share of all clips.</param>
public readonly record struct CalibrationStep(double Said, double Held, double Weight);

/// <summary>How far probabilities can be taken at their word, and where they say nothing.</summary>
public static class Calibration
{
    private const int Steps = 10;
    private const double PresentRight = 0.9;
    private const double AbsentRight = 0.95;

    /// <summary>Ten even steps, those without clips left out. Yes and no are weighted as in the calibration (<see cref="JudgedCase.Prior(ClipTag)"/>).</summary>
    public static IReadOnlyList<CalibrationStep> Of(ClipTag tag, IEnumerable<JudgedCase> cases)
    {
        (double P, bool Holds, double Weight)[] rows = Weighted(tag, cases);
        return [.. rows.GroupBy(r => Math.Min(Steps - 1, (int)(r.P * Steps))).OrderBy(g => g.Key).Select(g =>
        {
            double all = g.Sum(r => r.Weight);
            return new CalibrationStep(g.Sum(r => r.Weight * r.P) / all, g.Where(r => r.Holds).Sum(r => r.Weight) / all, all);
        })];
    }

    /// <summary>Expected calibration error: mean distance of what was said from what held, over the steps.</summary>
    public static double Error(ClipTag tag, IEnumerable<JudgedCase> cases) => Of(tag, cases).Sum(s => s.Weight * Math.Abs(s.Said - s.Held));

    /// <summary>
    /// The unsure band: from 0.5 upwards until nine in ten "present" are right (0.65 at most), downwards until 95 in a hundred "absent" are right
    /// (0.35 at least), in steps of 0.05. Wider bands would leave more than half of the mixtures without an answer.
    /// </summary>
    public static UnsureBand Band(ClipTag tag, IEnumerable<JudgedCase> cases)
    {
        (double P, bool Holds, double Weight)[] rows = Weighted(tag, cases);
        double Right(Func<double, bool> within, bool holds)
        {
            double all = rows.Where(r => within(r.P)).Sum(r => r.Weight);
            return all <= 0 ? 1 : rows.Where(r => within(r.P) && r.Holds == holds).Sum(r => r.Weight) / all;
        }

        double high = Enumerable.Range(10, 4).Select(i => i / 20.0).Cast<double?>().FirstOrDefault(p => Right(x => x >= p, true) >= PresentRight) ?? 0.65;
        double low = Enumerable.Range(0, 4).Select(i => (10 - i) / 20.0).Cast<double?>().FirstOrDefault(p => Right(x => x < p, false) >= AbsentRight) ?? 0.35;
        return new(low, high);
    }

    private static (double P, bool Holds, double Weight)[] Weighted(ClipTag tag, IEnumerable<JudgedCase> cases)
    {
        JudgedCase[] known = [.. cases.Where(c => c.Case.Truth[tag] is not null)];
        Dictionary<string, int> sizes = known.GroupBy(c => c.Case.Recordings[0]).ToDictionary(g => g.Key, g => g.Count());
        double Of(JudgedCase c) => 1 / Math.Sqrt(sizes[c.Case.Recordings[0]]);
        double yes = known.Where(c => c.Case.Truth[tag] == true).Sum(Of), no = known.Where(c => c.Case.Truth[tag] == false).Sum(Of);
        double share = yes > 0 && no > 0 ? JudgedCase.Prior(tag) : yes > 0 ? 1 : 0;
        return [.. known.Select(c => (c.Overall[tag], c.Case.Truth[tag] == true, Of(c) * (c.Case.Truth[tag] == true ? share / Math.Max(1e-9, yes) : (1 - share) / Math.Max(1e-9, no))))];
    }
}
