using Microsoft.ML;
using Microsoft.ML.Trainers;
using Microsoft.ML.Trainers.FastTree;
using Microsoft.ML.Trainers.LightGbm;
using Quarterlight.Tagger;

namespace Quarterlight.Training.Learning;

/// <summary>A learner that may be compared.</summary>
/// <param name="Name">Name on the command line and in the tables.</param>
/// <param name="Pipeline">Its untrained pipeline in a context.</param>
public sealed record Learner(string Name, Func<MLContext, IEstimator<ITransformer>> Pipeline)
{
    /// <summary>Trains it on one thread with one seed, so that the same rows give the same model.</summary>
    public ITransformer Train(IReadOnlyList<FeatureRow> rows)
    {
        var context = new MLContext(seed: 1);
        return Pipeline(context).Fit(context.Data.LoadFromEnumerable(rows, FeatureRow.Schema()));
    }
}

/// <summary>The learners there are.</summary>
public static class Learners
{
    private const string Features = nameof(FeatureRow.Features);
    private const string Label = nameof(FeatureRow.Label);
    private const string Weight = nameof(FeatureRow.Weight);

    /// <summary>Gradient-boosted trees of LightGBM.</summary>
    public static Learner LightGbm { get; } = new("lightgbm", c => c.BinaryClassification.Trainers.LightGbm(new LightGbmBinaryTrainer.Options
    {
        FeatureColumnName = Features,
        LabelColumnName = Label,
        ExampleWeightColumnName = Weight,
        NumberOfLeaves = 10,
        NumberOfIterations = 220,
        LearningRate = 0.06,
        MinimumExampleCountPerLeaf = 25,
        L2CategoricalRegularization = 0,
        Booster = new GradientBooster.Options { FeatureFraction = 0.2, SubsampleFraction = 0.7, SubsampleFrequency = 1, L2Regularization = 10 },
        NumberOfThreads = 1,
        Deterministic = true,
        Seed = 1,
    }));

    /// <summary>Gradient-boosted trees of FastTree.</summary>
    public static Learner FastTree { get; } = new("fasttree", c => c.BinaryClassification.Trainers.FastTree(new FastTreeBinaryTrainer.Options
    {
        FeatureColumnName = Features,
        LabelColumnName = Label,
        ExampleWeightColumnName = Weight,
        NumberOfLeaves = 12,
        NumberOfTrees = 120,
        LearningRate = 0.1,
        MinimumExampleCountPerLeaf = 25,
        FeatureFraction = 0.35,
        NumberOfThreads = 1,
        Seed = 1,
    }));

    /// <summary>Logistic regression by L-BFGS on features of equal spread.</summary>
    public static Learner Logistic { get; } = new("logistic", c => c.Transforms.NormalizeMeanVariance(Features, fixZero: false)
        .Append(c.BinaryClassification.Trainers.LbfgsLogisticRegression(new LbfgsLogisticRegressionBinaryTrainer.Options
        {
            FeatureColumnName = Features,
            LabelColumnName = Label,
            ExampleWeightColumnName = Weight,
            L1Regularization = 0f,
            L2Regularization = 5f,
            OptimizationTolerance = 1e-4f,
            MaximumNumberOfIterations = 60,
            NumberOfThreads = 1,
        })));

    /// <summary>All.</summary>
    public static IReadOnlyList<Learner> All { get; } = [LightGbm, FastTree, Logistic];
}
