using System.Globalization;
using System.Text;
using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Learning;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Card;

/// <summary>The model card in words and tables. Every figure comes from the run that writes it.</summary>
public static class CardText
{
    private static readonly UnsureBand s_noBand = new(0.5, 0.5);

    /// <summary>Writes the card.</summary>
    public static string Write(CardFigures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        var text = new StringBuilder();
        CardParts.Head(text, figures);
        Scores(text, figures);
        ByRatio(text, figures);
        Unsure(text, figures);
        Calibrated(text, figures);
        Compared(text, figures);
        CardParts.Confusion(text, figures);
        CardParts.Data(text, figures);
        CardParts.Failures(text, figures);
        return text.ToString();
    }

    internal static string F(double value) => double.IsNaN(value) ? "-" : value.ToString("0.00", CultureInfo.InvariantCulture);

    internal static string Name(ClipTag tag) => tag switch
    {
        ClipTag.Engine => "engine",
        ClipTag.Wind => "wind",
        ClipTag.AirConditioning => "AC",
        _ => "clean",
    };

    private static void Scores(StringBuilder text, CardFigures figures)
    {
        JudgedCase[] alone = [.. ScoreTable.Alone(figures.Judged)], mixed = [.. ScoreTable.Mixed(figures.Judged)];
        JudgedCase[] permitted = [.. alone.Where(c => c.Case.MayTrain)], unconfirmed = [.. alone.Where(c => !c.Case.MayTrain)];
        text.Append(CultureInfo.InvariantCulture, $"""

            ## Scores on recordings not heard

            {TestCases.Blocks} blocks; no recording stands on both sides, and the speaker and second noise of a mixture are held out with it. Real recordings only, as they
            are, without augmentation. At probability 0.5, unsure counted as the likelier side.

            | Set | Clips | Macro F1 | Goal |
            |---|---|---|---|
            | clips alone | {alone.Length} | **{F(ScoreTable.MacroF1(alone))}** | 0.95 |
            | mixtures, speech 0 to 20 dB over noise, and two noises | {mixed.Length} | **{F(ScoreTable.MacroF1(mixed))}** | 0.85 |
            | clips alone, licence confirmed | {permitted.Length} | {F(ScoreTable.MacroF1(permitted))} | |
            | clips alone, licence unconfirmed: never trained | {unconfirmed.Length} | {F(ScoreTable.MacroF1(unconfirmed))} | |

            | Tag | Set | Precision | Recall | F1 | Right yes | Wrong yes | Missed | Right no |
            |---|---|---|---|---|---|---|---|---|

            """);
        foreach ((string set, JudgedCase[] cases) in new[] { ("alone", alone), ("mixed", mixed), ("alone, unconfirmed", unconfirmed) })
        {
            foreach (ClipTag tag in Truth.Tags.Where(t => cases.Any(c => c.Case.Truth[t] == true)))
            {
                Counts n = Counts.Of(tag, cases, s_noBand, false);
                text.Append(CultureInfo.InvariantCulture, $"| {Name(tag)} | {set} | {F(n.Precision)} | {F(n.Recall)} | {F(n.F1)} | {n.TruePositive} | {n.FalsePositive} | {n.FalseNegative} | {n.TrueNegative} |\n");
            }
        }
    }

    private static void ByRatio(StringBuilder text, CardFigures figures)
    {
        text.Append("\n## By speech over noise\n\nOne noise under speech; recall and precision of each tag. ![Scores by ratio](../pictures/tagger-ratio.png)\n\n| Ratio, dB | Macro F1 | engine | wind | AC | clean |\n|---|---|---|---|---|---|\n");
        foreach (double ratioDb in TestCases.RatiosDb)
        {
            JudgedCase[] at = [.. ScoreTable.AtRatio(figures.Judged, ratioDb)];
            text.Append(CultureInfo.InvariantCulture, $"| {ratioDb:0} | {F(ScoreTable.MacroF1(at))} |");
            foreach (ClipTag tag in Truth.Tags)
            {
                Counts n = Counts.Of(tag, at, s_noBand, false);
                text.Append(n.TruePositive + n.FalseNegative == 0 ? " - |" : $" {F(n.Recall)} / {F(n.Precision)} |");
            }

            text.Append('\n');
        }
    }

    private static void Unsure(StringBuilder text, CardFigures figures)
    {
        JudgedCase[] alone = [.. ScoreTable.Alone(figures.Judged)], mixed = [.. ScoreTable.Mixed(figures.Judged)];
        text.Append("\n## Unsure\n\nThe band of each tag comes from the same held-out answers: from 0.5 upwards until nine in ten \"present\" are right (0.65 at most), downwards until 95 in a hundred\n\"absent\" are right (0.35 at least).\n\n| Tag | Absent below | Present from | Unsure, alone | Unsure, mixed |\n|---|---|---|---|---|\n");
        foreach (ClipTag tag in Truth.Tags)
        {
            UnsureBand band = figures.Thresholds[tag];
            text.Append(CultureInfo.InvariantCulture, $"| {Name(tag)} | {F(band.AbsentBelow)} | {F(band.PresentFrom)} | {Counts.Of(tag, alone, band, false).UnsureShare:P0} | {Counts.Of(tag, mixed, band, false).UnsureShare:P0} |\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"\nMacro F1 with unsure counted as wrong: {F(ScoreTable.MacroF1(alone, figures.Thresholds, true))} alone, {F(ScoreTable.MacroF1(mixed, figures.Thresholds, true))} mixed.\n");
    }

    private static void Calibrated(StringBuilder text, CardFigures figures)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## Calibration\n\nLogistic regression on the held-out scores of all four tags; each block judged with a calibration fitted on the others. A tag is taken to hold in {JudgedCase.Prior(ClipTag.Engine):P0} of clips, AC in {JudgedCase.Prior(ClipTag.AirConditioning):P0}, whatever their share\nof the collection (judgement). ![Calibration](../pictures/tagger-calibration.png)\n\n| Tag | Expected calibration error |\n|---|---|\n");
        foreach (ClipTag tag in Truth.Tags)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {Name(tag)} | {F(Calibration.Error(tag, figures.Judged))} |\n");
        }
    }

    private static void Compared(StringBuilder text, CardFigures figures)
    {
        text.Append("\n## Learners compared, and what the data give\n\nSame folds, same clips, same calibration.\n\n| Learner | Macro F1 alone | Macro F1 mixed |\n|---|---|---|\n");
        void Line(string name, IReadOnlyList<JudgedCase> judged) =>
            text.Append(CultureInfo.InvariantCulture, $"| {name} | {F(ScoreTable.MacroF1([.. ScoreTable.Alone(judged)]))} | {F(ScoreTable.MacroF1([.. ScoreTable.Mixed(judged)]))} |\n");
        foreach ((string name, IReadOnlyList<JudgedCase> judged) in figures.Compared)
        {
            Line(name, judged);
        }

        Line("blend, trained without made sounds", figures.WithoutMade);
        Line("blend, trained without real noise", figures.OnlyMade);
    }
}
