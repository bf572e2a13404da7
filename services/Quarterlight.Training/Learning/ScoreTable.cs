using System.Globalization;
using System.Text;
using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Learning;

/// <summary>Scores of judged clips, as numbers and as lines of text.</summary>
public static class ScoreTable
{
    private static readonly UnsureBand s_noBand = new(0.5, 0.5);

    /// <summary>Clips alone.</summary>
    public static IEnumerable<JudgedCase> Alone(IEnumerable<JudgedCase> cases) => cases.Where(c => c.Case.Kind == CaseKind.Alone);

    /// <summary>Mixtures with speech at 0 to 20 dB, and two noises.</summary>
    public static IEnumerable<JudgedCase> Mixed(IEnumerable<JudgedCase> cases) => cases.Where(c => c.Case.Kind != CaseKind.Alone && c.Case.RatioDb is null or (>= 0 and <= 20));

    /// <summary>Mixtures of speech over one noise at one ratio.</summary>
    public static IEnumerable<JudgedCase> AtRatio(IEnumerable<JudgedCase> cases, double ratioDb) => cases.Where(c => c.Case.Kind == CaseKind.SpeechOverNoise && c.Case.RatioDb == ratioDb);

    /// <summary>Mean F1 over the tags that hold somewhere in the cases.</summary>
    public static double MacroF1(IReadOnlyList<JudgedCase> cases, TagThresholds? thresholds = null, bool unsureIsWrong = false) => Truth.Tags
        .Where(t => cases.Any(c => c.Case.Truth[t] == true))
        .Select(t => Counts.Of(t, cases, thresholds?[t] ?? s_noBand, unsureIsWrong).F1).DefaultIfEmpty(0).Average();

    /// <summary>Lines of precision, recall and F1 by tag.</summary>
    public static string Text(string title, IReadOnlyList<JudgedCase> cases)
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"{title} ({cases.Count} clips): macro F1 {MacroF1(cases):0.000}\n");
        foreach (ClipTag tag in Truth.Tags)
        {
            Counts n = Counts.Of(tag, cases, s_noBand, false);
            text.Append(CultureInfo.InvariantCulture, $"  {tag,-16} P {n.Precision:0.00} R {n.Recall:0.00} F1 {n.F1:0.00}   tp {n.TruePositive} fp {n.FalsePositive} fn {n.FalseNegative} tn {n.TrueNegative}\n");
        }

        return text.ToString();
    }

    /// <summary>All tables: alone, mixed, and by ratio.</summary>
    public static string Full(IReadOnlyList<JudgedCase> judged)
    {
        var text = new StringBuilder(Text("Clips alone", [.. Alone(judged)])).Append(Text("Mixtures at 0 to 20 dB and two noises", [.. Mixed(judged)]));
        foreach (double ratioDb in TestCases.RatiosDb)
        {
            JudgedCase[] at = [.. AtRatio(judged, ratioDb)];
            text.Append(CultureInfo.InvariantCulture, $"{ratioDb,4} dB: macro F1 {MacroF1(at):0.000}; recall");
            foreach (ClipTag tag in Truth.Tags.Where(t => at.Any(c => c.Case.Truth[t] == true)))
            {
                text.Append(CultureInfo.InvariantCulture, $" {tag} {Counts.Of(tag, at, s_noBand, false).Recall:0.00}");
            }

            text.Append('\n');
        }

        return text.ToString();
    }
}
