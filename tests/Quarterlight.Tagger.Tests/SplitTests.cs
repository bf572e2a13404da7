using Quarterlight.Training.Data;
using Quarterlight.Training.Learning;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Tagger.Tests;

public sealed class SplitTests
{
    [Fact]
    public async Task Make_TestFolds_HoldOutEveryRecordingInThem()
    {
        IReadOnlyList<SourceSound> sounds = await SmallSet.ReadAsync();
        IReadOnlyList<TestFold> folds = TestCases.Make(sounds);
        Assert.Equal(sounds.Select(s => s.Recording).Distinct().Count(), folds.Count);
        Assert.All(folds, f => Assert.All(f.Cases, c => Assert.Subset(f.HeldOut.ToHashSet(), c.Recordings.ToHashSet())));
        Assert.Contains(folds.SelectMany(f => f.Cases), c => c.Kind == CaseKind.SpeechOverNoise);
    }

    [Fact]
    public async Task Without_HeldOutRecordings_NoneIsLeftInTraining()
    {
        IReadOnlyList<SoundCase> training = TrainingCases.Make(await SmallSet.ReadAsync(), 1);
        Assert.Contains(training, c => c.Recordings.Count > 1 && c.Recordings.Contains("lugaru_wind"));
        SoundCase[] left = [.. Splits.Without(training, new HashSet<string> { "lugaru_wind", "spk_allison" })];
        Assert.NotEmpty(left);
        Assert.DoesNotContain(left, c => c.Recordings.Contains("lugaru_wind") || c.Recordings.Contains("spk_allison"));
    }

    [Fact]
    public async Task Make_SoundThatMayNotTrain_IsInNoTrainingClip()
    {
        SourceSound[] sounds = [.. (await SmallSet.ReadAsync()).Select(s => s.Group == "engine" ? s with { MayTrain = false } : s)];
        Assert.DoesNotContain(TrainingCases.Make(sounds, 1), c => c.Recordings.Contains("stk_large"));
        Assert.Contains(TestCases.Make(sounds).SelectMany(f => f.Cases), c => c.Recordings.Contains("stk_large") && !c.MayTrain);
    }

    [Fact]
    public async Task Make_Twice_SameRows()
    {
        SourceSound[] few = [.. (await SmallSet.ReadAsync()).Where(s => s.Recording is "spk_june" or "trigger_wind" or "trigger_gravel")];
        IReadOnlyList<SoundCase> a = TrainingCases.Make(few, 1), b = TrainingCases.Make(few, 1);
        Assert.NotEmpty(a);
        Assert.Equal(a.SelectMany(c => c.Rows).SelectMany(r => r), b.SelectMany(c => c.Rows).SelectMany(r => r));
    }

    [Theory]
    [InlineData("CC-BY (InspectorJ, Freesound 403664; licence of this item from memory, check)", false)]
    [InlineData("GPL-2.0 only (of the repository; the sounds' own origin unconfirmed)", false)]
    [InlineData("CC-BY-SA (version not named, wording looks like 3.0)", false)]
    [InlineData("CC-BY-SA-3.0", true)]
    [InlineData("GPL-2+", true)]
    public void IsConfirmed_AsTheManifestWordsIt(string licence, bool confirmed) => Assert.Equal(confirmed, Licences.IsConfirmed(licence));

    [Theory]
    [InlineData("engine+wind", true, true, false, false)]
    [InlineData("ac", false, false, true, false)]
    [InlineData("clean", false, false, false, true)]
    [InlineData("quiet", false, false, false, true)]
    [InlineData("other", false, false, false, false)]
    public void TruthOf_OwnFolder_ByItsName(string folder, bool engine, bool wind, bool ac, bool clean) =>
        Assert.Equal(new Truth(engine, wind, ac, clean), OwnClips.TruthOf(folder).Truth);

    [Fact]
    public void TruthOf_OtherFolder_SaysWhatWouldBeRight() =>
        Assert.Contains("engine, wind or ac", Assert.Throws<FormatException>(() => OwnClips.TruthOf("motor")).Message, StringComparison.Ordinal);

    // Platt's method on scores drawn from a known curve finds the curve.
    [Fact]
    public void Fit_ScoresOfAKnownCurve_FindsIt()
    {
        var random = new Random(5);
        (double, bool, double)[] rows = [.. Enumerable.Range(0, 20000).Select(_ => (6 * random.NextDouble()) - 3)
            .Select(s => (s, random.NextDouble() < 1 / (1 + Math.Exp(-((1.5 * s) - 0.7))), 1.0))];
        Platt platt = Platt.Fit(rows);
        Assert.Equal(1.5, platt.Slope, 0.1);
        Assert.Equal(-0.7, platt.Offset, 0.1);
    }

    // Rows drawn from a known curve of two of the four scores: the fit finds their slopes and gives the others none.
    [Fact]
    public void Fit_ScoresOfTwoTags_FindsBothSlopes()
    {
        var random = new Random(5);
        var rows = new List<(double[] Scores, bool Holds, double Weight)>();
        for (int i = 0; i < 20000; i++)
        {
            double[] scores = [.. Enumerable.Range(0, 4).Select(_ => (4 * random.NextDouble()) - 2)];
            rows.Add((scores, random.NextDouble() < 1 / (1 + Math.Exp(-((1.5 * scores[0]) - scores[2] + 0.4))), 1));
        }

        Stacking found = Stacking.Fit(rows);
        Assert.Equal(1.5, found.Slopes[0], 0.1);
        Assert.Equal(0, found.Slopes[1], 0.1);
        Assert.Equal(-1, found.Slopes[2], 0.1);
        Assert.Equal(0, found.Slopes[3], 0.1);
        Assert.Equal(0.4, found.Offset, 0.1);
    }
}
