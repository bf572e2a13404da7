namespace Quarterlight.Tagger;

/// <summary>How the scores of all tags become the probability of one: 1 / (1 + exp(-(sum of slopes x scores + offset))).</summary>
/// <param name="Weights">Weight of each of this tag's models in its score, one a model.</param>
/// <param name="Slopes">Slope of each tag's score in the order of the tags, fitted on recordings the models had not heard.</param>
/// <param name="Offset">Offset of the same fit.</param>
/// <param name="AbsentBelow">Below this probability the tag is absent.</param>
/// <param name="PresentFrom">From this probability on it is present.</param>
public sealed record TagModel(IReadOnlyList<double> Weights, IReadOnlyList<double> Slopes, double Offset, double AbsentBelow, double PresentFrom)
{
    /// <summary>The probability for the scores of all tags, in order.</summary>
    public double Probability(ReadOnlySpan<double> scores)
    {
        double sum = Offset;
        for (int t = 0; t < Slopes.Count; t++)
        {
            sum += Slopes[t] * scores[t];
        }

        return 1 / (1 + Math.Exp(-sum));
    }
}
