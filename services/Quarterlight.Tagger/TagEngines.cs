using Microsoft.ML;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Tagger;

/// <summary>One prediction engine for each model. Serves one caller at a time.</summary>
internal sealed class TagEngines : IDisposable
{
    private readonly PredictionEngine<FeatureRow, ScoreRow>[][] _engines;
    private readonly TagModel[] _tags;
    private readonly FeatureRow _row = new() { Features = new float[FeatureFrontEnd.Count] };
    private ScoreRow _score = new();

    public TagEngines(MLContext context, ITransformer[][] models, TagModel[] tags)
    {
        _tags = tags;
        _engines = [.. models.Select(m => m.Select(model =>
            context.Model.CreatePredictionEngine<FeatureRow, ScoreRow>(model, inputSchemaDefinition: FeatureRow.Schema())).ToArray())];
    }

    public TagProbabilities Score(ReadOnlySpan<float> features)
    {
        features.CopyTo(_row.Features);
        Span<double> scores = stackalloc double[_engines.Length];
        for (int t = 0; t < scores.Length; t++)
        {
            scores[t] = Of(t);
        }

        return new(
            _tags[(int)ClipTag.Engine].Probability(scores), _tags[(int)ClipTag.Wind].Probability(scores),
            _tags[(int)ClipTag.AirConditioning].Probability(scores), _tags[(int)ClipTag.Clean].Probability(scores));
    }

    public void Dispose()
    {
        foreach (PredictionEngine<FeatureRow, ScoreRow> engine in _engines.SelectMany(e => e))
        {
            engine.Dispose();
        }
    }

    private double Of(int tag)
    {
        double sum = 0;
        for (int i = 0; i < _engines[tag].Length; i++)
        {
            _engines[tag][i].Predict(_row, ref _score);
            sum += _tags[tag].Weights[i] * _score.Score;
        }

        return sum;
    }
}
