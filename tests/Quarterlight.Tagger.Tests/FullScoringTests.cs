using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Learning;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Tagger.Tests;

/// <summary>Scores the shipped model on the whole collection where it stands beside the repository, and says so where it does not.</summary>
public sealed class FullScoringTests
{
    // Only recordings that never train are unheard here; the others only prove that the file works. The cross-validated scores are in the model card.
    [Fact]
    public async Task Score_WholeCollection_WhereItIsPresent()
    {
        string? folder = CollectionFolder();
        if (folder is null)
        {
            TestContext.Current.SendDiagnosticMessage("The collection of clips is not beside the repository; only the small set was scored.");
            TestContext.Current.TestOutputHelper?.WriteLine("The collection of clips is not beside the repository; only the small set was scored.");
            Assert.NotEmpty(await SmallSet.ReadAsync());
            return;
        }

        using ModelTagger tagger = ModelTagger.LoadShipped();
        IReadOnlyList<SourceSound> sounds = await Manifest.ReadAsync(folder, TestContext.Current.CancellationToken);
        Assert.Contains(sounds, s => !s.MayTrain);
        JudgedCase[] judged = [.. sounds.Select(s =>
        {
            TagReport report = SmallSet.Tag(tagger, s.Samples);
            var one = new SoundCase(s.Name, s.Group, CaseKind.Alone, null, s.Truth, [s.Recording], s.MayTrain, false, [], []);
            return new JudgedCase(one, report.Overall, [.. report.Seconds.Select(x => x.Probabilities)]);
        })];
        TestContext.Current.TestOutputHelper?.WriteLine(ScoreTable.Text("whole collection, heard in training unless unconfirmed", judged));
        Assert.InRange(ScoreTable.MacroF1([.. judged.Where(j => j.Case.MayTrain)]), 0.85, 1);

        // The digest says that the shipped model was trained with exactly these recordings.
        Assert.Equal(Trainer.Digest(sounds), tagger.Identity.TrainingDataDigest);
    }

    private static string? CollectionFolder()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Quarterlight.slnx")))
        {
            folder = folder.Parent;
        }

        string? clips = folder?.Parent is { } above ? Path.Combine(above.FullName, "shared", "clips") : null;
        return clips is not null && File.Exists(Path.Combine(clips, Manifest.FileName)) ? clips : null;
    }
}
