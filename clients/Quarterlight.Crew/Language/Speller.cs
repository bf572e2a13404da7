namespace Quarterlight.Crew.Language;

/// <summary>Puts slips of the finger right, toward words that are known and never away from one.</summary>
public sealed class Speller
{
    private readonly IReadOnlySet<string> shared;
    private readonly HashSet<string> own;

    /// <summary>A speller for these words, lower case.</summary>
    public Speller(IEnumerable<string> words)
        : this(new HashSet<string>(), words)
    {
    }

    /// <summary>A speller for words that others share, which are not copied, and its own.</summary>
    /// <param name="shared">Words of everybody, lower case.</param>
    /// <param name="own">Words of this speller alone, lower case.</param>
    public Speller(IReadOnlySet<string> shared, IEnumerable<string> own)
    {
        ArgumentNullException.ThrowIfNull(shared);
        ArgumentNullException.ThrowIfNull(own);
        (this.shared, this.own) = (shared, [.. own]);
    }

    /// <summary>True for a word that is spelled right.</summary>
    public bool Knows(string word) => shared.Contains(word) || own.Contains(word);

    /// <summary>The word itself when known, else the nearest known one within the slips forgiven, else the word itself.</summary>
    public string Correct(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        int forgiven = EditDistance.Forgiven(word.Length);
        if (forgiven == 0 || Knows(word) || CommonWords.Contains(word))
        {
            return word;
        }

        string best = word;
        int bestDistance = forgiven + 1;
        foreach (string candidate in shared.Concat(own))
        {
            // The first letter is seldom wrong, and insisting on it keeps different words apart; swaps are let through.
            if (candidate.Length < 3 || Math.Abs(candidate.Length - word.Length) > forgiven || !word.AsSpan(0, 2).Contains(candidate[0]))
            {
                continue;
            }

            int distance = EditDistance.Between(word, candidate);
            if (distance < bestDistance || (distance == bestDistance && string.CompareOrdinal(candidate, best) < 0))
            {
                (best, bestDistance) = (candidate, distance);
            }
        }

        return bestDistance <= forgiven ? best : word;
    }
}
