using System.Globalization;
using Quarterlight.Crew;
using Quarterlight.Crew.Language;

namespace Quarterlight.Training.Reading;

/// <summary>Learns the model that reads what crews ask, and judges it on questions it has not seen.</summary>
internal static class ReadingStudy
{
    /// <summary>Parts the examples are cut into for cross validation.</summary>
    public const int Folds = 6;

    private const int Seed = 5;

    /// <summary>Learns from all examples and writes the weights. What the rules make of a question is learnt from only where they were not mended with it.</summary>
    public static void Train(IReadOnlyList<IntentExample> examples, Stream to)
    {
        SoftmaxFit fit = SoftmaxFit.Learn([.. examples.Select(e => new ReadingRow(e.Features(withRules: e.Fresh), (int)e.Intent))], IntentModel.Classes);
        IntentModel.Write(fit.Hashes, fit.Bias, fit.Weights, to);
    }

    /// <summary>What the rules alone and rules and model together get right, each part read by a model learnt from the others.</summary>
    public static string Score(IReadOnlyList<IntentExample> examples)
    {
        var random = new Random(Seed);
        int[] fold = [.. examples.Select(_ => random.Next(Folds))];
        var chosen = new CrewIntent[examples.Count];
        Span<float> probabilities = stackalloc float[IntentModel.Classes];
        for (int part = 0; part < Folds; part++)
        {
            using var weights = new MemoryStream();
            Train([.. examples.Where((_, i) => fold[i] != part)], weights);
            weights.Position = 0;
            var model = IntentModel.Read(weights);
            for (int i = 0; i < examples.Count; i++)
            {
                if (fold[i] == part)
                {
                    QuestionRead read = examples[i].Read;
                    model.Probabilities(examples[i].Features(withRules: true), probabilities);
                    chosen[i] = read.Attached ? read.Rules.Intent : SecondOpinion.Choose(read, probabilities);
                }
            }
        }

        return Line("Fresh", true) + "\n" + Line("Mended", false);

        string Line(string name, bool fresh)
        {
            int[] of = [.. Enumerable.Range(0, examples.Count).Where(i => examples[i].Fresh == fresh)];
            int[] nothing = [.. of.Where(i => examples[i].Intent == CrewIntent.Unknown)];
            double Share(Func<int, bool> right, int[] among) => among.Length == 0 ? 0 : (double)among.Count(right) / among.Length;
            return string.Create(CultureInfo.InvariantCulture, $"{name}: {of.Length} questions, rules alone {Share(i => examples[i].Read.Rules.Intent == examples[i].Intent, of):0.0%}, with the model {Share(i => chosen[i] == examples[i].Intent, of):0.0%}; of {nothing.Length} that ask nothing of the desk {Share(i => chosen[i] == CrewIntent.Unknown, nothing):0.0%} left alone.");
        }
    }
}
