using System.Text.RegularExpressions;

namespace Quarterlight.Crew.Language;

/// <summary>
/// Finds the country a question names, by its name or its regulator's. Codes are those of ISO 3166-1 alpha-2, EU aside, which stands for the common
/// European recommendation.
/// </summary>
public static partial class CountryReader
{
    /// <summary>Longest country name sent on, in characters.</summary>
    public const int LongestName = 40;

    private static readonly (string Code, string Name, string[] Said)[] Table =
    [
        ("US", "the United States", ["united states of america", "united states", "the states", "usa", "america", "fcc"]),
        ("GB", "the United Kingdom", ["united kingdom", "great britain", "britain", "england", "scotland", "wales", "northern ireland", "uk", "gb", "ofcom"]),
        ("DE", "Germany", ["germany", "deutschland", "bundesnetzagentur"]),
        ("FR", "France", ["france"]),
        ("EU", "Europe", ["european union", "europe", "eu"]),
        ("CA", "Canada", ["canada", "ised"]),
        ("AU", "Australia", ["australia", "acma"]),
        ("JP", "Japan", ["japan"]),
        ("NZ", "New Zealand", ["new zealand", "nz"]),
        ("IE", "Ireland", ["ireland"]),
        ("ES", "Spain", ["spain"]),
        ("PT", "Portugal", ["portugal"]),
        ("IT", "Italy", ["italy"]),
        ("NL", "the Netherlands", ["netherlands", "holland"]),
        ("BE", "Belgium", ["belgium"]),
        ("LU", "Luxembourg", ["luxembourg"]),
        ("CH", "Switzerland", ["switzerland"]),
        ("AT", "Austria", ["austria"]),
        ("PL", "Poland", ["poland"]),
        ("CZ", "Czechia", ["czechia", "czech republic"]),
        ("SK", "Slovakia", ["slovakia"]),
        ("SI", "Slovenia", ["slovenia"]),
        ("HU", "Hungary", ["hungary"]),
        ("RO", "Romania", ["romania"]),
        ("BG", "Bulgaria", ["bulgaria"]),
        ("HR", "Croatia", ["croatia"]),
        ("GR", "Greece", ["greece"]),
        ("DK", "Denmark", ["denmark"]),
        ("SE", "Sweden", ["sweden"]),
        ("NO", "Norway", ["norway"]),
        ("FI", "Finland", ["finland"]),
        ("IS", "Iceland", ["iceland"]),
        ("EE", "Estonia", ["estonia"]),
        ("LV", "Latvia", ["latvia"]),
        ("LT", "Lithuania", ["lithuania"]),
        ("MT", "Malta", ["malta"]),
        ("CY", "Cyprus", ["cyprus"]),
        ("TR", "Türkiye", ["turkey"]),
        ("ZA", "South Africa", ["south africa"]),
        ("KR", "South Korea", ["south korea", "korea"]),
        ("CN", "China", ["china"]),
        ("IN", "India", ["india"]),
        ("BR", "Brazil", ["brazil"]),
        ("MX", "Mexico", ["mexico"]),
        ("AR", "Argentina", ["argentina"]),
        ("CL", "Chile", ["chile"]),
        ("MA", "Morocco", ["morocco"]),
        ("JO", "Jordan", ["jordan"]),
        ("AE", "the United Arab Emirates", ["united arab emirates", "emirates", "dubai"]),
        ("SG", "Singapore", ["singapore"]),
        ("TH", "Thailand", ["thailand"]),
        ("IL", "Israel", ["israel"]),
    ];

    // What is said of a country's own, and its towns; only beside a word of the law or the radio, as "polish" means other things too.
    private static readonly (string Code, string[] Said)[] Of =
    [
        ("US", ["american", "federal", "californian", "hollywood"]), ("GB", ["british", "english", "scottish", "welsh", "london", "manchester", "glasgow", "edinburgh", "cardiff", "belfast"]), ("DE", ["german", "berlin", "munich", "hamburg", "cologne"]),
        ("FR", ["french", "paris"]), ("EU", ["european"]), ("CA", ["canadian", "toronto", "vancouver", "montreal"]), ("AU", ["australian", "aussie", "sydney", "melbourne"]), ("JP", ["japanese", "tokyo"]), ("NZ", ["kiwi", "auckland"]),
        ("IE", ["irish", "dublin"]), ("ES", ["spanish", "madrid", "barcelona"]), ("PT", ["portuguese", "lisbon"]), ("IT", ["italian", "rome", "milan"]), ("NL", ["dutch", "amsterdam"]), ("BE", ["belgian", "brussels"]),
        ("CH", ["swiss", "zurich"]), ("AT", ["austrian", "vienna"]), ("PL", ["polish", "warsaw"]), ("CZ", ["czech", "prague"]), ("SK", ["slovak"]), ("SI", ["slovenian"]), ("HU", ["hungarian", "budapest"]), ("RO", ["romanian", "bucharest"]),
        ("BG", ["bulgarian"]), ("HR", ["croatian", "zagreb"]), ("GR", ["greek", "athens"]), ("DK", ["danish", "copenhagen"]), ("SE", ["swedish", "stockholm"]), ("NO", ["norwegian", "oslo"]), ("FI", ["finnish", "helsinki"]),
        ("IS", ["icelandic", "reykjavik"]), ("EE", ["estonian"]), ("LV", ["latvian"]), ("LT", ["lithuanian"]), ("MT", ["maltese"]), ("CY", ["cypriot"]), ("TR", ["turkish", "istanbul"]), ("KR", ["korean", "seoul"]), ("CN", ["chinese"]),
        ("IN", ["indian"]), ("BR", ["brazilian"]), ("MX", ["mexican"]), ("MA", ["moroccan"]), ("IL", ["israeli"]), ("TH", ["thai"]),
    ];

    private static readonly Dictionary<string, string> CodeOf = Of.SelectMany(o => o.Said.Select(s => (s, o.Code))).ToDictionary(p => p.s, p => p.Code, StringComparer.Ordinal);

    private static readonly HashSet<string> Governed = Lexicon.Words("law laws rule rules regulation regulations limit limits licence license power frequency frequencies channel channels band bands spectrum radio radios wireless transmitter transmitters fm authority authorities regulator office legal permit");

    // What else two capitals mean to a crew.
    private static readonly HashSet<string> NoCountries = ["FM", "AM", "TX", "RX", "AC", "OK", "TV", "RF", "AD", "DP"];

    private static readonly (string[] Words, string Code)[] Known = [.. Table.SelectMany(c => c.Said.Select(s => (s.Split(' '), c.Code))).OrderByDescending(s => s.Item1.Length)];

    // A word begins few names; the longest comes first.
    private static readonly Dictionary<string, (string[] Words, string Code)[]> ByFirst = Known.GroupBy(k => k.Words[0], StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);

    /// <summary>Every word of a country's name.</summary>
    public static IEnumerable<string> Words => Known.SelectMany(k => k.Words).Concat(CodeOf.Keys).Distinct();

    /// <summary>Code of the country said; a name not known here as it was said; null when none was.</summary>
    /// <param name="text">The question as typed, for its capitals.</param>
    /// <param name="tokens">Its words.</param>
    /// <param name="knows">True for a word that means something else.</param>
    /// <param name="law">True when the question is about the law, where "in" leads to a country.</param>
    public static string? Read(string text, IReadOnlyList<Token> tokens, Func<string, bool> knows, bool law)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(knows);
        for (int i = 0; i < tokens.Count; i++)
        {
            foreach ((string[] words, string code) in ByFirst.GetValueOrDefault(tokens[i].Word, []))
            {
                if (Phrases.Matches(tokens, i, words))
                {
                    return code;
                }
            }
        }

        if (law || tokens.Any(t => t.IsAny(Governed)))
        {
            foreach (Token token in tokens)
            {
                if (token.Number is null && CodeOf.TryGetValue(token.Word, out string? of))
                {
                    return of;
                }
            }
        }

        // "us" is a country only where it cannot be the crew: behind "the", or in capitals.
        if (tokens.Where((t, i) => t.Is("us") && i > 0 && tokens[i - 1].Is("the")).Any())
        {
            return "US";
        }

        string written = Code().Match(text).Groups[1].Value;
        return written.Length > 0 && !NoCountries.Contains(written) ? written : Unknown(text, tokens, knows, law);
    }

    /// <summary>Code of the country that a text names and nothing else: its name, or any two-letter code; null when it names none.</summary>
    /// <param name="text">Such as "Germany", "the UK" or "de".</param>
    internal static string? Whole(string text)
    {
        string[] words = [.. Tokenizer.Split(text).Select(t => t.Word).SkipWhile(w => w is "in" or "the")];
        string name = string.Join(' ', words);
        if (name.Length == 0)
        {
            return null;
        }

        string? code = Table.FirstOrDefault(c => c.Said.Contains(name) || string.Equals(c.Name, text, StringComparison.OrdinalIgnoreCase)).Code;
        return code ?? (name.Length == 2 && name.All(char.IsAsciiLetter) ? name.ToUpperInvariant() : null);
    }

    /// <summary>The country whose name is nearest to what was typed; null when none is near.</summary>
    internal static string? Nearest(string text)
    {
        string name = string.Join(' ', Tokenizer.Split(text).Select(t => t.Word).SkipWhile(w => w is "in" or "the"));
        (string Said, int Slips) best = Table.SelectMany(c => c.Said).Select(s => (s, EditDistance.Between(s, name))).MinBy(s => s.Item2);
        return best.Slips <= EditDistance.Forgiven(name.Length) ? Say(Table.First(c => c.Said.Contains(best.Said)).Code) : null;
    }

    /// <summary>A country in words: its name, or what was said.</summary>
    public static string Say(string country)
    {
        ArgumentNullException.ThrowIfNull(country);
        string? name = Table.FirstOrDefault(c => c.Code == country).Name;
        return name ?? CrewText.Clean(country, LongestName);
    }

    // "in Ruritania": a word of nobody's; the planner says what it knows of it.
    private static string? Unknown(string text, IReadOnlyList<Token> tokens, Func<string, bool> knows, bool law)
    {
        foreach (Match match in Place().Matches(text))
        {
            string name = match.Groups[1].Value;
            if (Tokenizer.Split(name).All(t => t.Number is null && !knows(t.Word) && tokens.Any(read => read.Is(t.Word))))
            {
                return name.Length > LongestName ? name[..LongestName] : name;
            }
        }

        for (int i = 1; law && i < tokens.Count; i++)
        {
            bool behindIn = tokens[i - 1].Is("in") || (tokens[i - 1].Is("the") && i > 1 && tokens[i - 2].Is("in"));
            if (behindIn && tokens[i].Number is null && tokens[i].Word.Length is > 3 and <= LongestName && !knows(tokens[i].Word))
            {
                return Wording.Wordings.Capital(tokens[i].Word);
            }
        }

        return null;
    }

    [GeneratedRegex(@"(?<![\p{L}.])(?:in|for|under|about)\s+(?:the\s+)?([A-Z]{2})(?!\p{L})", RegexOptions.CultureInvariant)]
    private static partial Regex Code();

    [GeneratedRegex(@"(?<!\p{L})in\s+(?:the\s+)?(\p{Lu}\p{Ll}+(?:\s\p{Lu}\p{Ll}+){0,3})", RegexOptions.CultureInvariant)]
    private static partial Regex Place();
}
