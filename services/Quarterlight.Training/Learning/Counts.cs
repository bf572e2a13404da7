using Quarterlight.Clips.Tagging;

namespace Quarterlight.Training.Learning;

/// <summary>Right and wrong answers for one tag.</summary>
/// <param name="TruePositive">Rightly present.</param>
/// <param name="FalsePositive">Wrongly present.</param>
/// <param name="FalseNegative">Wrongly absent.</param>
/// <param name="TrueNegative">Rightly absent.</param>
/// <param name="Unsure">Of all of them: in the unsure band.</param>
public readonly record struct Counts(int TruePositive, int FalsePositive, int FalseNegative, int TrueNegative, int Unsure)
{
    /// <summary>All clips of which it is known whether the tag holds.</summary>
    public int All => TruePositive + FalsePositive + FalseNegative + TrueNegative;

    /// <summary>Share of right answers among "present"; 1 when there are none.</summary>
    public double Precision => Ratio(TruePositive, TruePositive + FalsePositive);

    /// <summary>Share of the clips with the tag that were found; 1 when there are none.</summary>
    public double Recall => Ratio(TruePositive, TruePositive + FalseNegative);

    /// <summary>Harmonic mean of precision and recall.</summary>
    public double F1 => Ratio(2 * TruePositive, (2 * TruePositive) + FalsePositive + FalseNegative);

    /// <summary>Share of unsure answers.</summary>
    public double UnsureShare => All == 0 ? 0 : (double)Unsure / All;

    /// <summary>Counts one tag over judged clips.</summary>
    /// <param name="tag">The tag.</param>
    /// <param name="cases">The clips.</param>
    /// <param name="band">The unsure band.</param>
    /// <param name="unsureIsWrong">True to count unsure answers as wrong, false to count them as the likelier side.</param>
    public static Counts Of(ClipTag tag, IEnumerable<JudgedCase> cases, UnsureBand band, bool unsureIsWrong)
    {
        int tp = 0, fp = 0, fn = 0, tn = 0, unsure = 0;
        foreach (JudgedCase c in cases.Where(c => c.Case.Truth[tag] is not null))
        {
            bool holds = c.Case.Truth[tag] == true;
            bool isUnsure = band.StateOf(c.Overall[tag]) == TagState.Unsure;
            unsure += isUnsure ? 1 : 0;
            bool said = isUnsure && unsureIsWrong ? !holds : c.Overall[tag] >= 0.5;
            _ = (holds, said) switch
            {
                (true, true) => tp++,
                (false, true) => fp++,
                (true, false) => fn++,
                _ => tn++,
            };
        }

        return new(tp, fp, fn, tn, unsure);
    }

    private static double Ratio(int a, int b) => b == 0 ? 1 : (double)a / b;
}
