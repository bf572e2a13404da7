namespace Quarterlight.Crew.Language;

/// <summary>Puts slips of the finger right, toward words that are known and never away from one.</summary>
public sealed class Speller
{
    private readonly HashSet<string> known;

    /// <summary>A speller for these words, lower case.</summary>
    public Speller(IEnumerable<string> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        known = [.. words];
    }

    /// <summary>True for a word that is spelled right.</summary>
    public bool Knows(string word) => known.Contains(word);

    /// <summary>The word itself when known, else the nearest known one within the slips forgiven, else the word itself.</summary>
    public string Correct(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        int forgiven = EditDistance.Forgiven(word.Length);
        if (forgiven == 0 || known.Contains(word) || CommonWords.Contains(word))
        {
            return word;
        }

        string best = word;
        int bestDistance = forgiven + 1;
        foreach (string candidate in known)
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
