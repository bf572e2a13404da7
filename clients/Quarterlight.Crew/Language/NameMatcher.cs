namespace Quarterlight.Crew.Language;

/// <summary>Something with an id and a name that the crew may say.</summary>
/// <param name="Id">Id or resource name.</param>
/// <param name="DisplayName">What the crew calls it.</param>
public sealed record Named(string Id, string DisplayName);

/// <summary>Finds which of the team's own names a question says, wholly or in part.</summary>
public sealed class NameMatcher
{
    private static readonly HashSet<string> Weak = Lexicon.Words(
        "a an the of for in on at to and with run driving drive day night car cars scene scenes kit kits mic mics microphone road front rear left right small full large short long plan one two three four five six seven eight up down by side miniature camera shot mount small big old new out go going set first second third seat seats door wrong goes go");

    private const int LeastBeginning = 5;

    private readonly IReadOnlyList<(Named Item, HashSet<string> Words)> items;

    /// <summary>A matcher for these names.</summary>
    public NameMatcher(IEnumerable<Named> named)
    {
        ArgumentNullException.ThrowIfNull(named);
        items = [.. named.Select(n => (n, WordsOf(n)))];
    }

    /// <summary>Words of all names, for the speller.</summary>
    public IEnumerable<string> Words => items.SelectMany(i => i.Words).Distinct();

    /// <summary>
    /// Best match first. A name counts when a word of its own that no other name has was said, or two of its words, or all.
    /// </summary>
    public IReadOnlyList<Named> Find(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var said = new HashSet<string>(tokens.Select(t => Singular(t.Word)));
        var scored = new List<(Named Item, double Score)>();
        foreach ((Named item, HashSet<string> words) in items)
        {
            // "Hatch" for "hatchback": a long beginning of the word will do.
            HashSet<string> matched = [.. words.Where(w => said.Contains(w) || (w.Length > LeastBeginning + 2 && said.Any(s => s.Length >= LeastBeginning && w.StartsWith(s, StringComparison.Ordinal))))];
            bool ownWord = matched.Any(w => !Weak.Contains(w) && items.Count(o => o.Words.Contains(w)) == 1);
            bool enough = matched.Count > 0 && (ownWord || matched.Count == words.Count || (matched.Count >= 2 && matched.Any(w => !Weak.Contains(w))));
            if (enough)
            {
                scored.Add((item, matched.Sum(w => Weak.Contains(w) ? 0.3 : 1.0 / items.Count(o => o.Words.Contains(w))) + ((double)matched.Count / words.Count)));
            }
        }

        double best = scored.Count == 0 ? 0 : scored.Max(s => s.Score);
        return [.. scored.Where(s => s.Score > best - 1e-9 || s.Score > 1.2).OrderByDescending(s => s.Score).Select(s => s.Item)];
    }

    /// <summary>Only the best match; null when there is none.</summary>
    public Named? FindOne(IReadOnlyList<Token> tokens)
    {
        IReadOnlyList<Named> found = Find(tokens);
        return found.Count > 0 ? found[0] : null;
    }

    // The resource name's id and the display name both count; "scenes/" does not.
    private static HashSet<string> WordsOf(Named named)
    {
        string id = ResourceName.IdOf(named.Id);
        HashSet<string> display = Significant(named.DisplayName);
        return display.Count > 0 ? display : Significant(id);
    }

    private static HashSet<string> Significant(string text)
    {
        HashSet<string> all = [.. Tokenizer.Split(text).Select(t => Singular(t.Word))];
        all.ExceptWith(["a", "an", "the", "of", "for", "in", "on", "at", "to", "and", "with", "scene", "camera", "that", "which", "invented"]);
        return all;
    }

    private static string Singular(string word) => word.Length > 3 && word.EndsWith('s') && !word.EndsWith("ss", StringComparison.Ordinal) ? word[..^1] : word;
}
