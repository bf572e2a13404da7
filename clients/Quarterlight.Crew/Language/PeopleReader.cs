namespace Quarterlight.Crew.Language;

/// <summary>Who is in the car, as said; what is not said is null.</summary>
/// <param name="Adults">Adults.</param>
/// <param name="Children">Children.</param>
/// <param name="Animals">Animals.</param>
public sealed record PeopleSaid(int? Adults, int? Children, int? Animals)
{
    /// <summary>True when nobody was said.</summary>
    public bool IsEmpty => Adults is null && Children is null && Animals is null;
}

/// <summary>Reads who is in the car.</summary>
public static class PeopleReader
{
    /// <summary>Most of each that are counted.</summary>
    internal const int Most = 9;

    private static readonly HashSet<string> Grown = Lexicon.Words("adult adults people persons person actors actor grownups crew passengers heads bodies of");
    private static readonly HashSet<string> Young = Lexicon.Words("child children kid kids baby babies toddler toddlers infant infants");
    private static readonly HashSet<string> Beasts = Lexicon.Words("dog dogs cat cats animal animals horse pet pets puppy");

    /// <summary>Words for people and animals.</summary>
    internal static IEnumerable<string> Words => Grown.Concat(Young).Concat(Beasts);

    /// <summary>Everyone counted: "four people", "a kid", "two dogs", "kids".</summary>
    public static PeopleSaid Read(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        int? adults = Count(tokens, Grown), children = Count(tokens, Young), animals = Count(tokens, Beasts);
        if (adults is null && tokens.Any(t => t.Word is "nobody" or "empty") && !tokens.Any(t => t.Word is "open"))
        {
            adults = 0;
        }

        return new PeopleSaid(adults, children, animals);
    }

    private static int? Count(IReadOnlyList<Token> tokens, HashSet<string> words)
    {
        int? count = null;
        for (int i = 0; i < tokens.Count; i++)
        {
            if (!tokens[i].IsAny(words) || (tokens[i].Possessive && !tokens.Skip(i + 1).Take(1).Any(t => t.Word is "in" or "with" or "there" or "here" or "coming")))
            {
                continue;
            }

            // "four of us", and no other "of".
            if (tokens[i].Is("of") && !(i + 1 < tokens.Count && tokens[i + 1].Word is "us" or "them"))
            {
                continue;
            }

            Token? before = i > 0 ? tokens[i - 1] : null;
            if (before is { Number: { } } && i > 1 && tokens[i - 2].Is("camera"))
            {
                continue;
            }

            int? here = before switch
            {
                { Number: >= 0 and <= Most } when before.Number == Math.Floor(before.Number.Value) => (int)before.Number!.Value,
                { Number: null, Word: "a" or "an" or "one" or "another" } => 1,
                { Number: null, Word: "no" or "without" } => 0,
                { Number: null, Word: "couple" } => 2,
                _ when words != Grown && tokens[i].Word.EndsWith('s') && before?.Word is null or "with" or "and" or "have" or "the" => 2,
                null when words != Grown && !tokens[i].Word.EndsWith('s') => 1,
                _ when words == Beasts && before?.Word is "the" or "with" or "her" or "his" or "their" or "my" or "our" or "its" => 1,
                _ => null,
            };
            count = here is null ? count : (count ?? 0) + here;
        }

        return count;
    }
}
