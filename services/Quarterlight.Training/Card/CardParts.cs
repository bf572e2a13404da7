using System.Globalization;
using System.Text;
using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Learning;

namespace Quarterlight.Training.Card;

/// <summary>The parts of the card about data, confusion and failures.</summary>
internal static class CardParts
{
    /// <summary>Groups of recordings, in the order of the tables.</summary>
    public static IReadOnlyList<string> Groups { get; } = ["engine", "wind", "ac", "clean-speech", "quiet", "other"];

    public static void Head(StringBuilder text, CardFigures figures) => text.Append(CultureInfo.InvariantCulture, $"""
        # Sound tagger: model card

        Written by `quarterlight-training card`; no figure here is typed by hand. How it works: [Sound tagger](tagger.md). How to train it again:
        [Training the tagger](../guides/retrain.md).

        | | |
        |---|---|
        | Name, version | {Trainer.Name} {Trainer.Version} |
        | Use | tags a test clip recorded in a car: engine, wind, AC (fan), clean; several may hold; "unsure" is an answer |
        | Not for | naming machines, counting vehicles, safety, evidence, surveillance, speech |
        | Learners | mean of the calibrated scores of {string.Join(" and ", Study.Shipped.Select(l => l.Name))}, one of each a tag |
        | Features | {FeatureFrontEnd.Count} a second, from up to 3 s |
        | Training clips | {figures.Study.Training.Count}, rows {figures.Study.Training.Sum(c => c.Rows.Count)} |
        | Digest of the real training sounds | `{Trainer.Digest(figures.Study.Sounds)}` |

        """);

    public static void Confusion(StringBuilder text, CardFigures figures)
    {
        text.Append("\n## What is said of what\n\nClips alone; share of each group's clips for which a tag's probability is 0.5 or more. ![Confusion](../pictures/tagger-confusion.png)\n\n| Group | Clips | engine | wind | AC | clean | none |\n|---|---|---|---|---|---|---|\n");
        foreach (string group in Groups)
        {
            JudgedCase[] cases = [.. ScoreTable.Alone(figures.Judged).Where(c => c.Case.Group == group)];
            text.Append(CultureInfo.InvariantCulture, $"| {group} | {cases.Length} |");
            foreach (ClipTag tag in Truth.Tags)
            {
                text.Append(CultureInfo.InvariantCulture, $" {Share(cases, tag):P0} |");
            }

            text.Append(CultureInfo.InvariantCulture, $" {(double)cases.Count(c => Truth.Tags.All(t => c.Overall[t] < 0.5)) / Math.Max(1, cases.Length):P0} |\n");
        }
    }

    public static double Share(IReadOnlyCollection<JudgedCase> cases, ClipTag tag) => cases.Count == 0 ? 0 : (double)cases.Count(c => c.Overall[tag] >= 0.5) / cases.Count;

    public static void Data(StringBuilder text, CardFigures figures)
    {
        text.Append("\n## Data\n\n| Group | Recordings | Clips | Of these never trained (licence unconfirmed) | Made sounds in training |\n|---|---|---|---|---|\n");
        foreach (string group in Groups)
        {
            SourceSound[] sounds = [.. figures.Study.Sounds.Where(s => s.Group == group)];
            int place = Array.IndexOf(["ac", "engine", "wind", "other", "quiet"], group);
            text.Append(CultureInfo.InvariantCulture, $"| {group} | {sounds.DistinctBy(s => s.Recording).Count()} | {sounds.Length} | {sounds.Count(s => !s.MayTrain)} clips, {sounds.Where(s => !s.MayTrain).DistinctBy(s => s.Recording).Count()} recordings | {(place < 0 ? 0 : Study.MadeCounts[place])} |\n");
        }

        text.Append("\nLicences of the recordings that train:\n\n");
        foreach (IGrouping<string, SourceSound> licence in figures.Study.Sounds.Where(s => s.MayTrain).GroupBy(s => s.Licence).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"- {licence.Key}: {licence.DistinctBy(s => s.Recording).Count()} recordings\n");
        }

        text.Append("\nTags nobody can say are neither trained nor scored: ");
        text.AppendJoin("; ", Manifest.UnknownLabels().OrderBy(u => u.Key, StringComparer.Ordinal).Select(u => $"`{u.Key}` ({u.Value})"));
        text.Append(".\n");
    }

    public static void Failures(StringBuilder text, CardFigures figures)
    {
        text.Append("\n## Known failures\n\nClips alone that were told wrong, and the probability that was wrong:\n\n");
        foreach (JudgedCase c in ScoreTable.Alone(figures.Judged).OrderBy(c => c.Case.Name, StringComparer.Ordinal))
        {
            ClipTag[] wrong = [.. Truth.Tags.Where(t => c.Case.Truth[t] is bool holds && holds != c.Overall[t] >= 0.5)];
            if (wrong.Length > 0)
            {
                text.Append(CultureInfo.InvariantCulture, $"- `{c.Case.Name}`: {string.Join(", ", wrong.Select(t => $"{CardText.Name(t)} {CardText.F(c.Overall[t])}"))}\n");
            }
        }

        text.Append("""

            What to expect beyond that:

            - None of the recordings was made in a moving car with a known microphone; engines are mostly loops from games, winds mostly ambiences. Expect a loss on
              real cabins, and train again with your own clips.
            - Two recordings of fans may train, both compressors; the tag AC rests on made fans. Its recall on real fans is shown above; read it as an outline.
            - Steady wind without gusts, a fan far away and road noise look alike in a few seconds.
            - A compressor or propeller has orders like an engine.
            - Room tone is told from faint noise by level and shape; a high gain can make it unsure.
            - The folds are of the same collection: recordings of one library may share equipment.
            - Chosen by looking at these held-out scores, which are therefore somewhat kind: the features, the learners of the blend and their settings, the shares a tag is taken to
              hold in, and that all four scores calibrate each tag. Tried and left out, because clips alone or mixtures lost: cuts other than 0.5 chosen on the other blocks, and
              a floor from 8 s with more mixtures at 8 to 22 dB (mixtures gained, clips alone lost).
            - Widths of the made sounds were widened after looking at the features of all real recordings as a group, the tested ones included; no limit was set to one file.

            """);
    }
}
