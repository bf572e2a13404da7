using Quarterlight.Crew.Language;

namespace Quarterlight.Training.Reading;

/// <summary>Multinomial logistic regression with a penalty on the squares of its weights, learnt by AdaGrad in a fixed order.</summary>
/// <remarks>Duchi, Hazan and Singer, "Adaptive subgradient methods for online learning and stochastic optimization", JMLR 12 (2011), the diagonal form.</remarks>
internal sealed class SoftmaxFit
{
    // Chosen by cross validation.
    private const int Rounds = 15;
    private const float Rate = 0.1f;
    private const float Penalty = 1e-4f;
    private const float BiasShare = 0.2f;
    private const float Start = 1e-4f;
    private const int LeastCount = 3;
    private const int Seed = 1;

    private readonly Dictionary<uint, int> places = [];
    private readonly int classes;
    private float[] weights = [];
    private readonly float[] bias;

    private SoftmaxFit(int classes) => (this.classes, bias) = (classes, new float[classes]);

    /// <summary>Hash of each feature, rising.</summary>
    public IReadOnlyList<uint> Hashes { get; private set; } = [];

    /// <summary>For each feature one weight a class.</summary>
    public ReadOnlySpan<float> Weights => weights;

    /// <summary>What each class has before anything is seen.</summary>
    public ReadOnlySpan<float> Bias => bias;

    /// <summary>Learns from rows.</summary>
    /// <param name="rows">Rows.</param>
    /// <param name="classes">How many classes there are.</param>
    public static SoftmaxFit Learn(IReadOnlyList<ReadingRow> rows, int classes)
    {
        var fit = new SoftmaxFit(classes);
        var seen = new Dictionary<uint, int>();
        foreach (uint hash in rows.SelectMany(r => r.Features.Select(f => f.Hash).Distinct()))
        {
            seen[hash] = seen.GetValueOrDefault(hash) + 1;
        }

        fit.Hashes = [.. seen.Where(s => s.Value >= LeastCount).Select(s => s.Key).Order()];
        for (int i = 0; i < fit.Hashes.Count; i++)
        {
            fit.places[fit.Hashes[i]] = i * classes;
        }

        fit.weights = new float[fit.Hashes.Count * classes];
        fit.Run(rows);
        return fit;
    }

    private void Run(IReadOnlyList<ReadingRow> rows)
    {
        (int Place, float Value)[][] sparse = [.. rows.Select(r => r.Features.Where(f => places.ContainsKey(f.Hash)).Select(f => (places[f.Hash], f.Value)).ToArray())];
        float[] squares = new float[weights.Length], biasSquares = new float[classes];
        Array.Fill(squares, Start);
        Array.Fill(biasSquares, Start);
        int[] order = [.. Enumerable.Range(0, rows.Count)];
        var random = new Random(Seed);
        Span<float> miss = stackalloc float[classes];
        for (int round = 0; round < Rounds; round++)
        {
            random.Shuffle(order);
            foreach (int row in order)
            {
                Probabilities(sparse[row], miss);
                miss[rows[row].Class] -= 1;
                foreach ((int place, float value) in sparse[row])
                {
                    Step(weights.AsSpan(place, classes), squares.AsSpan(place, classes), miss, value, Rate, Penalty);
                }

                Step(bias, biasSquares, miss, 1, Rate * BiasShare, 0);
            }
        }
    }

    private static void Step(Span<float> weights, Span<float> squares, ReadOnlySpan<float> miss, float value, float rate, float penalty)
    {
        for (int c = 0; c < weights.Length; c++)
        {
            float slope = (miss[c] * value) + (penalty * weights[c]);
            squares[c] += slope * slope;
            weights[c] -= rate * slope / MathF.Sqrt(squares[c]);
        }
    }

    private void Probabilities(ReadOnlySpan<(int Place, float Value)> features, Span<float> into)
    {
        bias.CopyTo(into);
        foreach ((int place, float value) in features)
        {
            ReadOnlySpan<float> row = weights.AsSpan(place, classes);
            for (int c = 0; c < row.Length; c++)
            {
                into[c] += value * row[c];
            }
        }

        IntentModel.Softmax(into);
    }
}
