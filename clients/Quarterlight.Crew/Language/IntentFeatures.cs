using System.Runtime.InteropServices;

namespace Quarterlight.Crew.Language;

/// <summary>One thing seen in a question: a hash of what it is, and how much it counts.</summary>
/// <param name="Hash">FNV-1a of the kind and the text.</param>
/// <param name="Value">How much it counts; each kind together has about the same length however long the question is.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct IntentFeature(uint Hash, float Value);

/// <summary>
/// What the model sees of a question: words with numbers, places, people, microphones and the team's names made alike, pairs of them, pieces of words, which
/// survive a slip of the thumb, what slots were read, what is talked about, and what the rules make of it.
/// </summary>
/// <remarks>Hash: Fowler, Noll and Vo's FNV-1a with 32 bits, as in RFC 9923.</remarks>
internal ref struct IntentFeatures
{
    /// <summary>No question has more features; what is over is left away.</summary>
    public const int Most = 1024;

    private const uint Basis = 2166136261;
    private const uint Prime = 16777619;
    private const string AnyNumber = "#";

    // How much each kind counts together: chosen by cross validation.
    private const float WordWeight = 1;
    private const float PairWeight = 1;
    private const float PieceWeight = 1;
    private const float TableWeight = 1.2f;
    private const float SlotWeight = 0.7f;
    private const float TopicWeight = 0.5f;
    private const float RuleWeight = 0.7f;

    private readonly Span<IntentFeature> features;
    private int count;

    private IntentFeatures(Span<IntentFeature> features) => this.features = features;

    /// <summary>Writes the features of a question and returns how many there are.</summary>
    /// <param name="seen">What is seen of it.</param>
    /// <param name="rules">What the rules make of it; null leaves that out.</param>
    /// <param name="into">Room for <see cref="Most"/> features.</param>
    public static int Write(in IntentSeen seen, CrewIntent? rules, Span<IntentFeature> into)
    {
        var all = new IntentFeatures(into);
        all.Words(seen.Tokens, seen.Names);
        all.Pieces(seen.Text);
        all.Slots(seen.Slots);
        int from = all.count;
        all.Add('a', seen.Topic);
        all.Scale(from, TopicWeight);
        if (seen.Topic != "none")
        {
            from = all.count;
            foreach (Token token in seen.Tokens)
            {
                all.Add(Next(Text(Start('t'), seen.Topic), '|'), Class(token, seen.Names));
            }

            all.Scale(from, TopicWeight);
        }

        if (rules is { } intent)
        {
            from = all.count;
            all.Add('r', intent.ToString());
            all.Add(Next(Text(Start('R'), intent.ToString()), '|'), seen.Topic);
            for (int i = 0; i < seen.Votes.Count; i++)
            {
                all.Add(Next(Start('v'), (char)('0' + i)), seen.Votes[i].ToString());
            }

            all.Scale(from, RuleWeight);
        }

        return all.count;
    }

    private void Words(IReadOnlyList<Token> tokens, ExampleNames names)
    {
        int from = count;
        for (int i = 0; i < tokens.Count; i++)
        {
            Add('w', Class(tokens[i], names));
        }

        if (tokens.Count > 0)
        {
            Add('f', Class(tokens[0], names));
        }

        Scale(from, WordWeight);
        from = count;
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            Add(Next(Text(Start('p'), Class(tokens[i], names)), '_'), Class(tokens[i + 1], names));
            if (i + 2 < tokens.Count)
            {
                Add(Next(Text(Start('s'), Class(tokens[i], names)), '_'), Class(tokens[i + 2], names));
            }
        }

        Scale(from, PairWeight);
        from = count;
        ulong low = 0, high = 0;
        foreach (Token token in tokens)
        {
            foreach (int table in WordSets.Of(token.Word))
            {
                ulong bit = 1UL << (table & 63);
                if (((table < 64 ? low : high) & bit) != 0)
                {
                    continue;
                }

                (low, high) = table < 64 ? (low | bit, high) : (low, high | bit);
                Add(Next(Start('l'), (char)('0' + table)), "");
            }
        }

        Scale(from, TableWeight);
    }

    // Three to five letters of a word with its ends marked.
    private void Pieces(string text)
    {
        int from = count;
        Span<char> word = stackalloc char[24];
        int length = 0;
        for (int i = 0; i <= text.Length; i++)
        {
            char c = i < text.Length ? char.ToLowerInvariant(text[i]) : ' ';
            if (char.IsLetter(c))
            {
                if (length == 0)
                {
                    word[length++] = '^';
                }

                if (length < word.Length - 1)
                {
                    word[length++] = c;
                }
            }
            else if (length > 0)
            {
                word[length++] = '$';
                for (int size = 3; size <= 5; size++)
                {
                    for (int at = 0; at + size <= length; at++)
                    {
                        Add('g', word.Slice(at, size));
                    }
                }

                length = 0;
            }
        }

        Scale(from, PieceWeight);
    }

    private void Slots(SlotsRead slots)
    {
        int from = count;
        for (ulong left = (ulong)slots; left != 0; left &= left - 1)
        {
            Add(Next(Start('e'), (char)('A' + System.Numerics.BitOperations.TrailingZeroCount(left))), "");
        }

        Scale(from, SlotWeight);
    }

    private void Add(char kind, scoped ReadOnlySpan<char> text) => Add(Start(kind), text);

    private void Add(uint hash, scoped ReadOnlySpan<char> text)
    {
        if (count < features.Length)
        {
            features[count++] = new IntentFeature(Text(hash, text), 1);
        }
    }

    private readonly void Scale(int from, float weight)
    {
        float value = count == from ? 0 : weight / MathF.Sqrt(count - from);
        for (int i = from; i < count; i++)
        {
            features[i] = features[i] with { Value = value };
        }
    }

    private static uint Start(char kind) => Next(Basis, kind);

    private static uint Text(uint hash, scoped ReadOnlySpan<char> text)
    {
        foreach (char c in text)
        {
            hash = Next(hash, c);
        }

        return hash;
    }

    private static uint Next(uint hash, char c) => unchecked((((hash ^ (byte)c) * Prime) ^ (byte)(c >> 8)) * Prime);

    private static ReadOnlySpan<char> Class(Token token, ExampleNames names)
    {
        if (token.Number is not null)
        {
            return AnyNumber;
        }

        return SiteWords.FamiliesOf(token).Count > 0 ? "<site>" : names.Of(token.Word) ?? Stem(token.Word);
    }

    // Plurals and -ing alone: enough to make "batteries last" and "battery lasts" alike.
    private static ReadOnlySpan<char> Stem(string word)
    {
        ReadOnlySpan<char> stem = word.Length > 4 && word[^1] == 's' && word[^2] != 's' ? word.AsSpan()[..^1] : word;
        return stem.Length > 5 && stem.EndsWith("ing", StringComparison.Ordinal) ? stem[..^3] : stem;
    }
}
