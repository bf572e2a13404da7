using System.Globalization;
using System.Text.RegularExpressions;

namespace Quarterlight.Crew.Language;

/// <summary>Cuts a question into words and numbers.</summary>
public static partial class Tokenizer
{
    private static readonly (Regex Written, string Meant)[] Whole = Table(
        ("km/h", "kmh"), ("km / h", "kmh"), ("kilometers per hour", "kmh"), ("kilometres per hour", "kmh"), ("kilometers an hour", "kmh"),
        ("kilometres an hour", "kmh"), ("kph", "kmh"), ("kmph", "kmh"), ("kms/h", "kmh"), ("km per hour", "kmh"), ("km an hour", "kmh"), ("ks an hour", "kmh"), ("k an hour", "kmh"), ("m.p.h.", "mph"), ("m.p.h", "mph"), ("miles per hour", "mph"), ("miles an hour", "mph"),
        ("a/c", "ac"), ("a.c.", "ac"), ("a.m.", "am"), ("p.m.", "pm"), ("a.m", "am"), ("p.m", "pm"), ("o'clock", "oclock"), ("won't", "will not"), ("can't", "can not"), ("cannot", "can not"), ("cant", "can not"), ("dont", "do not"), ("w/o", "without"), ("w/", "with "));

    /// <summary>Lower-case words and numbers in order; punctuation and hyphens only part them.</summary>
    public static IReadOnlyList<Token> Split(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
#pragma warning disable CA1308 // Words are compared in lower case; nothing is round-tripped.
        string lower = text.ToLowerInvariant().Replace('’', '\'').Replace('‘', '\'');
#pragma warning restore CA1308
        foreach ((Regex written, string meant) in Whole)
        {
            lower = written.Replace(lower, meant);
        }

        lower = Hour().Replace(lower, "$1:$2");
        lower = Dash().Replace(lower, " to ");
        lower = Fraction().Replace(lower, m => m.Groups[1].Value == "4" ? " quarter " : " half ");
        lower = HalfMore().Replace(lower, "$1.5");
        lower = lower.Replace("%", " percent ", StringComparison.Ordinal).Replace("½", " half ", StringComparison.Ordinal).Replace("¼", " quarter ", StringComparison.Ordinal);
        lower = lower.Replace("n't", " not", StringComparison.Ordinal);
        var tokens = new List<Token>();
        foreach (Match match in Pieces().Matches(lower))
        {
            tokens.Add(Read(match.Value));
        }

        return JoinNumberWords(tokens);
    }

    private static (Regex Written, string Meant)[] Table(params (string Written, string Meant)[] rows) =>
        [.. rows.Select(r => (new Regex($"(?<![a-z]){Regex.Escape(r.Written)}(?![a-z])", RegexOptions.CultureInvariant), r.Meant))];

    private static Token Read(string piece)
    {
        if (double.TryParse(piece.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number))
        {
            return new Token(piece, number);
        }

        if (char.IsAsciiDigit(piece[0]))
        {
            return new Token(piece);
        }

        int apostrophe = piece.IndexOf('\'', StringComparison.Ordinal);
        return apostrophe > 0 ? new Token(piece[..apostrophe], Possessive: piece[apostrophe..] is "'s" or "'") : new Token(piece);
    }

    // "forty five" is one number, and so is "two hundred and fifty".
    private static List<Token> JoinNumberWords(List<Token> tokens)
    {
        var joined = new List<Token>();
        for (int i = 0; i < tokens.Count; i++)
        {
            Token token = tokens[i];
            if (token.Number is null && NumberWords.TryRead(token.Word, out double value))
            {
                if (value is 100 or 1000)
                {
                    bool counted = joined.Count > 0 && joined[^1].Number is > 0 and < 100;
                    int couple = counted ? 0 : CoupleBefore(joined);
                    double times = counted ? joined[^1].Number!.Value : couple > 0 ? 2 : 1;
                    string word = counted ? joined[^1].Word + " " + token.Word : token.Word;
                    joined.RemoveRange(joined.Count - (counted ? 1 : couple), counted ? 1 : couple);
                    joined.Add(new Token(word, times * value));
                    continue;
                }

                int hundred = joined.Count - (joined.Count > 0 && joined[^1].Is("and") ? 2 : 1);
                bool counts = i + 1 < tokens.Count && tokens[i + 1].Word is "hundred" or "thousand";
                if (value < 100 && !counts && hundred >= 0 && joined[hundred] is { Number: >= 100 } many && many.Word.EndsWith("hundred", StringComparison.Ordinal))
                {
                    joined.RemoveRange(hundred, joined.Count - hundred);
                    joined.Add(new Token($"{many.Word} {token.Word}", many.Number + value));
                    continue;
                }

                if (value < 10 && joined.Count > 0 && joined[^1] is { Number: { } tens } last && NumberWords.IsTens(last.Word))
                {
                    joined[^1] = new Token(last.Word + " " + token.Word, tens + value);
                    continue;
                }

                joined.Add(new Token(token.Word, value));
                continue;
            }

            // "Two and a half" is one number too; "one" stays a word.
            if (token.Is("half") && joined.Count > 2 && joined[^1].Is("a") && joined[^2].Is("and") && joined[^3] is { Number: { } whole } before && whole == Math.Floor(whole))
            {
                joined.RemoveRange(joined.Count - 3, 3);
                joined.Add(new Token($"{before.Word} and a half", whole + 0.5));
                continue;
            }

            joined.Add(token);
        }

        return joined;
    }

    // Words of "couple" or "couple of" at the end.
    private static int CoupleBefore(List<Token> joined) =>
        joined.Count > 0 && joined[^1].Is("couple") ? 1 : joined.Count > 1 && joined[^1].Is("of") && joined[^2].Is("couple") ? 2 : 0;

    // "470-494" is a range; between words a hyphen only parts.
    [GeneratedRegex(@"(?<=\d)\s?[-–—]\s?(?=\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Dash();

    [GeneratedRegex(@"(?<![\d./])1/([24])(?![\d/])", RegexOptions.CultureInvariant)]
    private static partial Regex Fraction();

    // "2½" is two and a half.
    [GeneratedRegex(@"(?<![\d.,:])(\d+)\s?½", RegexOptions.CultureInvariant)]
    private static partial Regex HalfMore();

    // "9.30am" is a time of day; "9.30" alone is a number.
    [GeneratedRegex(@"(?<![\d.,:])([01]?\d|2[0-3])\.([0-5]\d)(?=\s?[ap]m\b)", RegexOptions.CultureInvariant)]
    private static partial Regex Hour();

    // A time of day stays in one piece.
    [GeneratedRegex(@"(?<!\d)\d{1,2}:[0-5]\d(?!\d)|\d+(?:[.,]\d+)?|\p{L}+(?:'\p{L}*)?", RegexOptions.CultureInvariant)]
    private static partial Regex Pieces();
}
