using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>What a question most resembles among the examples kept beside this file.</summary>
/// <param name="Intent">What the likest examples ask.</param>
/// <param name="Lead">By how many nats it leads the next intent; 0 and more.</param>
/// <param name="KnownShare">Share of the question's words that occur in any example, 0 to 1.</param>
internal readonly record struct IntentGuess(CrewIntent Intent, double Lead, double KnownShare);

/// <summary>
/// A second opinion on what is asked, from examples: multinomial naive Bayes over words, pairs of words and what is being talked about. Where the rules know
/// nothing, it knows the nearest thing.
/// </summary>
/// <remarks>Model: Manning, Raghavan, Schuetze, Introduction to Information Retrieval (2008), chapter 13, with additive smoothing.</remarks>
internal sealed class IntentExamples
{
    private const string Resource = "Quarterlight.Crew.Language.crew-examples.txt";
    private const double Smoothing = 0.1;
    private const string AnyNumber = "#";

    private static readonly Lazy<IntentExamples> LazyShipped = new(() => new IntentExamples(ReadShipped()));

    private readonly CrewIntent[] intents;
    private readonly double[] priors;
    private readonly double[] unseen;
    private readonly Dictionary<string, double[]> weights;

    /// <summary>Learns from examples.</summary>
    /// <param name="examples">Intent, what is talked about, and the features of the words.</param>
    public IntentExamples(IEnumerable<(CrewIntent Intent, IReadOnlyList<string> Features)> examples)
    {
        (CrewIntent Intent, IReadOnlyList<string> Features)[] all = [.. examples];
        intents = [.. all.Select(e => e.Intent).Distinct().Order()];
        var counts = new Dictionary<string, int[]>(StringComparer.Ordinal);
        int[] totals = new int[intents.Length], documents = new int[intents.Length];
        foreach ((CrewIntent intent, IReadOnlyList<string> features) in all)
        {
            int at = Array.IndexOf(intents, intent);
            documents[at]++;
            totals[at] += features.Count;
            foreach (string feature in features)
            {
                if (!counts.TryGetValue(feature, out int[]? row))
                {
                    counts[feature] = row = new int[intents.Length];
                }

                row[at]++;
            }
        }

        priors = [.. documents.Select(d => Math.Log((d + 0.5) / all.Length))];
        unseen = [.. totals.Select(t => Math.Log(Smoothing / (t + (Smoothing * counts.Count))))];
        weights = counts.ToDictionary(c => c.Key, c => c.Value.Select((n, i) => Math.Log((n + Smoothing) / (totals[i] + (Smoothing * counts.Count)))).ToArray(), StringComparer.Ordinal);
    }

    /// <summary>The examples this assembly ships.</summary>
    public static IntentExamples Shipped => LazyShipped.Value;

    /// <summary>What the question most resembles.</summary>
    /// <param name="features">Features as <see cref="Features"/> makes them.</param>
    public IntentGuess Guess(IReadOnlyList<string> features)
    {
        Span<double> scores = stackalloc double[intents.Length];
        priors.CopyTo(scores);
        int words = 0, known = 0;
        foreach (string feature in features)
        {
            bool word = !feature.Contains('_', StringComparison.Ordinal) && !feature.Contains(':', StringComparison.Ordinal);
            words += word ? 1 : 0;
            if (!weights.TryGetValue(feature, out double[]? row))
            {
                continue;
            }

            known += word ? 1 : 0;
            for (int i = 0; i < scores.Length; i++)
            {
                scores[i] += row[i];
            }
        }

        int best = 0, second = -1;
        for (int i = 1; i < scores.Length; i++)
        {
            if (scores[i] > scores[best])
            {
                (best, second) = (i, best);
            }
            else if (second < 0 || scores[i] > scores[second])
            {
                second = i;
            }
        }

        return new IntentGuess(intents[best], second < 0 ? 0 : scores[best] - scores[second], words == 0 ? 0 : (double)known / words);
    }

    /// <summary>What the model sees of a question: words with numbers, places, people, microphones and the team's names made alike, pairs of them, and what is talked about.</summary>
    /// <param name="tokens">Words, spelling corrected and phrases joined.</param>
    /// <param name="names">Classes of the team's own words.</param>
    /// <param name="topic">What is talked about: none, attached, remembered, heat, runtime, levels or noise.</param>
    public static IReadOnlyList<string> Features(IReadOnlyList<Token> tokens, ExampleNames names, string topic)
    {
        var features = new HashSet<string>(StringComparer.Ordinal);
        string? before = null;
        for (int i = 0; i < tokens.Count; i++)
        {
            string word = Class(tokens[i], names);
            features.Add(word);
            if (before is not null)
            {
                features.Add($"{before}_{word}");
            }
            else
            {
                features.Add($"first:{word}");
            }

            before = word;
        }

        features.Add($"about:{topic}");
        return [.. features];
    }

    private static string Class(Token token, ExampleNames names)
    {
        if (token.Number is not null)
        {
            return AnyNumber;
        }

        return SiteWords.FamiliesOf(token).Count > 0 ? "<site>" : names.Of(token.Word) ?? Stem(token.Word);
    }

    // Plurals and -ing alone: enough to make "batteries last" and "battery lasts" alike.
    private static string Stem(string word)
    {
        string stem = word.Length > 4 && word.EndsWith('s') && !word.EndsWith("ss", StringComparison.Ordinal) ? word[..^1] : word;
        return stem.Length > 5 && stem.EndsWith("ing", StringComparison.Ordinal) ? stem[..^3] : stem;
    }

    private static IEnumerable<(CrewIntent Intent, IReadOnlyList<string> Features)> ReadShipped()
    {
        using Stream stream = typeof(IntentExamples).Assembly.GetManifestResourceStream(Resource) ?? throw new InvalidOperationException($"{Resource} is not in the assembly.");
        using var reader = new StreamReader(stream);
        var vocabulary = new CrewVocabulary(Demo.DemoData.Scenes, Demo.DemoData.Cabins, Demo.DemoData.Kits);
        var names = new ExampleNames(vocabulary);
        var examples = new List<(CrewIntent Intent, IReadOnlyList<string> Features)>();
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0 || line[0] == ';')
            {
                continue;
            }

            string[] fields = line.Split('|');
            examples.Add((Enum.Parse<CrewIntent>(fields[0]), Features(vocabulary.Read(CrewText.Clean(fields[2])), names, fields[1].Length == 0 ? "none" : fields[1])));
        }

        return examples;
    }
}

/// <summary>Makes the team's own names alike, so that an example about one scene serves every other.</summary>
internal sealed class ExampleNames
{
    private static readonly HashSet<string> Microphones = Lexicon.Words("mic mics microphone microphones mike mikes lav lavs lavalier lavaliers omni omnis cardioid cardioids shotgun tube boundary supercardioid hypercardioid");
    private static readonly HashSet<string> Talkers = Lexicon.Words("driver passenger passengers kid kids child children mum mom mother dad father actor actors actress talent cast instructor learner");
    private static readonly HashSet<string> Kept = Lexicon.Words("the a an of and that which goes wrong in first car cars kit scene invented full small long short");

    private readonly Dictionary<string, string> classes = new(StringComparer.Ordinal);

    /// <summary>Names of a team.</summary>
    public ExampleNames(CrewVocabulary vocabulary)
    {
        ArgumentNullException.ThrowIfNull(vocabulary);
        Add(vocabulary.Cabins.Select(c => c.DisplayName), "<car>");
        Add(vocabulary.Scenes.Select(s => s.DisplayName), "<scene>");
        Add(vocabulary.Scenes.SelectMany(s => s.Talkers).Select(t => t.DisplayName), "<talker>");
    }

    /// <summary>The class of a word; null when it stands for itself.</summary>
    public string? Of(string word) => Microphones.Contains(word) ? "<mic>" : Talkers.Contains(word) ? "<talker>" : classes.GetValueOrDefault(word);

    private void Add(IEnumerable<string> names, string kind)
    {
        foreach (string word in names.SelectMany(Tokenizer.Split).Where(t => t.Number is null).Select(t => t.Word))
        {
            if (!Kept.Contains(word) && !Lexicon.All.Contains(word))
            {
                classes[word] = kind;
            }
        }
    }
}
