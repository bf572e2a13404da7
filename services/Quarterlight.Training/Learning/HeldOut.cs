using Microsoft.ML;
using Quarterlight.Tagger;
using Quarterlight.Training.Data;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Learning;

/// <summary>A test clip with the scores of models that had heard none of its recordings.</summary>
/// <param name="Case">The clip.</param>
/// <param name="Block">Block of its fold.</param>
/// <param name="Scores">Score of each row, for each tag in order.</param>
public sealed record ScoredCase(SoundCase Case, int Block, double[][] Scores);

/// <summary>Scores every test clip with models that had heard none of its recordings.</summary>
public static class HeldOut
{
    /// <summary>Trains and scores.</summary>
    /// <param name="learner">The learner.</param>
    /// <param name="training">Training clips.</param>
    /// <param name="folds">Test folds.</param>
    /// <param name="byRecording">True to leave one recording out at a time (with its speaker and partner), false for blocks of recordings.</param>
    /// <param name="told">Told how many of how many are done.</param>
    public static IReadOnlyList<ScoredCase> Score(Learner learner, IReadOnlyList<SoundCase> training, IReadOnlyList<TestFold> folds, bool byRecording, Action<int, int>? told = null)
    {
        TestFold[][] groups = byRecording ? [.. folds.Select(f => new[] { f })] : [.. folds.GroupBy(f => f.Block).OrderBy(g => g.Key).Select(g => g.ToArray())];
        int done = 0;
        return [.. groups.AsParallel().AsOrdered().WithDegreeOfParallelism(2).SelectMany(group =>
        {
            var held = group.SelectMany(f => f.HeldOut).ToHashSet();
            SoundCase[] seen = [.. Splits.Without(training, held)];
            SoundCase[] tested = [.. group.SelectMany(f => f.Cases)];
            double[][][] scores = [.. Truth.Tags.Select(tag => Of(learner.Train(RowTable.For(tag, seen)), tested))];
            told?.Invoke(Interlocked.Increment(ref done), groups.Length);
            return tested.Select((c, i) => new ScoredCase(c, group[0].Block, [.. Truth.Tags.Select(tag => scores[(int)tag][i])])).ToArray();
        })];
    }

    /// <summary>Scores of a model for the rows of each case.</summary>
    public static double[][] Of(ITransformer model, IReadOnlyList<SoundCase> cases)
    {
        ArgumentNullException.ThrowIfNull(model);
        var context = new MLContext(seed: 1);
        IDataView data = context.Data.LoadFromEnumerable(cases.SelectMany(c => c.Rows).Select(r => new FeatureRow { Features = r }), FeatureRow.Schema());
        using IEnumerator<ScoreRow> all = context.Data.CreateEnumerable<ScoreRow>(model.Transform(data), reuseRowObject: true).GetEnumerator();
        return [.. cases.Select(c => c.Rows.Select(_ => all.MoveNext() ? (double)all.Current.Score : throw new InvalidOperationException("A row has no score.")).ToArray())];
    }
}

/// <summary>Keeps recordings on one side of a split.</summary>
public static class Splits
{
    /// <summary>The cases that may train and hold none of the recordings.</summary>
    public static IEnumerable<SoundCase> Without(IEnumerable<SoundCase> cases, IReadOnlySet<string> heldOut) =>
        cases.Where(c => c.MayTrain && !c.Recordings.Any(heldOut.Contains));
}
