namespace Quarterlight.Crew.Language;

/// <summary>Common English words, known so that the speller never turns one into a word that means something here.</summary>
/// <remarks>The two most frequent tiers of the open word lists SCOWL, words of three letters or more, less "rout", a slip of "route" here; see common-words.copyright.txt beside the list.</remarks>
internal static class CommonWords
{
    private const string Resource = "Language.common-words.txt";

    private static readonly Lazy<HashSet<string>> Words = new(Load);

    /// <summary>True for a common word, lower case.</summary>
    public static bool Contains(string word) => Words.Value.Contains(word);

    private static HashSet<string> Load()
    {
        using Stream stream = EmbeddedFile.Open(Resource);
        using var reader = new StreamReader(stream);
        var words = new HashSet<string>(12_000, StringComparer.Ordinal);
        while (reader.ReadLine() is { } word)
        {
            words.Add(word);
        }

        return words;
    }
}
