namespace Quarterlight.Tagger;

/// <summary>How the scores of one tag's models become a probability: 1 / (1 + exp(-(slope x sum of weighted scores + offset))).</summary>
/// <param name="Weights">Weight of each model's score, one a model.</param>
/// <param name="Slope">Slope of the calibration, fitted on recordings the models had not heard (Platt's method).</param>
/// <param name="Offset">Offset of the calibration.</param>
/// <param name="AbsentBelow">Below this probability the tag is absent.</param>
/// <param name="PresentFrom">From this probability on it is present.</param>
public sealed record TagModel(IReadOnlyList<double> Weights, double Slope, double Offset, double AbsentBelow, double PresentFrom)
{
    /// <summary>The probability for the weighted sum of scores.</summary>
    public double Probability(double score) => 1 / (1 + Math.Exp(-((Slope * score) + Offset)));
}
