using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Keeping;

/// <summary>Words of a phrase of which each must mean something: readers take theirs, and what nobody took is named.</summary>
internal sealed class StrictWords
{
    private readonly List<(Token Token, string Written, bool Used)> words = [];

    /// <summary>Words of a text; hyphens part them.</summary>
    public StrictWords(string text)
    {
        foreach (string written in text.Split([' ', '-', ',', '/', '(', ')'], StringSplitOptions.RemoveEmptyEntries))
        {
            foreach (Token token in Tokenizer.Split(written))
            {
                words.Add((token, written, false));
            }
        }
    }

    /// <summary>Words nobody has taken yet.</summary>
    public IReadOnlyList<Token> Open => [.. words.Where(w => !w.Used).Select(w => w.Token)];

    /// <summary>Every word.</summary>
    public IReadOnlyList<Token> All => [.. words.Select(w => w.Token)];

    /// <summary>Takes a phrase of words that stand together; false when it is not there.</summary>
    public bool Take(string phrase)
    {
        string[] parts = phrase.Split(' ');
        for (int i = 0; i + parts.Length <= words.Count; i++)
        {
            if (parts.Select((p, k) => !words[i + k].Used && words[i + k].Token.Word == p).All(same => same))
            {
                Use(i, parts.Length);
                return true;
            }
        }

        return false;
    }

    /// <summary>Takes the first phrase of a table that is there; its longest phrases must come first.</summary>
    public bool TakeAny<T>(IEnumerable<(string Phrase, T Meaning)> table, out T meaning)
    {
        foreach ((string phrase, T found) in table)
        {
            if (Take(phrase))
            {
                meaning = found;
                return true;
            }
        }

        meaning = default!;
        return false;
    }

    /// <summary>Takes words by their place among all words.</summary>
    public void Use(int start, int count)
    {
        for (int i = start; i < start + count; i++)
        {
            words[i] = words[i] with { Used = true };
        }
    }

    /// <summary>Words nobody took, as written, fillers aside; empty when all were understood.</summary>
    public string Left(IReadOnlySet<string> fillers) => string.Join(' ', words.Where(w => !w.Used && !fillers.Contains(w.Token.Word)).Select(w => w.Written).Distinct());
}
