using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Commands;

/// <summary>The text of one option, cut into words, with what tells whether it was understood to its end.</summary>
internal sealed partial class OptionText
{
    /// <summary>Longest text of an option that is read, in characters.</summary>
    public const int Longest = 200;

    private const string Signs = ".,'’‘%°½¼¾?!&";

    /// <summary>The text of an option.</summary>
    /// <param name="raw">As given; any text is safe.</param>
    /// <param name="vocabulary">The team's own words, toward which slips are put right.</param>
    public OptionText(string raw, CrewVocabulary vocabulary)
    {
        ArgumentNullException.ThrowIfNull(raw);
        ArgumentNullException.ThrowIfNull(vocabulary);
        Text = CrewText.Clean(raw, Longest);
        IsTooLong = raw.Length > Longest;
        IsPlain = !IsTooLong && Text.Length > 0 && !HasOddSigns(raw);
        Minus = Negative().IsMatch(raw);
        Tokens = vocabulary.Read(ThreeQuarters().Replace(Text, " three quarters of a "));
        Numbers = [.. Tokens.Where(t => t.Number is not null).Select(t => t.Number!.Value)];
    }

    /// <summary>The text, safe to read and to repeat.</summary>
    public string Text { get; }

    /// <summary>Its words.</summary>
    public IReadOnlyList<Token> Tokens { get; }

    /// <summary>Its numbers, in order.</summary>
    public IReadOnlyList<double> Numbers { get; }

    /// <summary>True when it holds something and no sign without a meaning.</summary>
    public bool IsPlain { get; }

    /// <summary>True when it is longer than <see cref="Longest"/>.</summary>
    public bool IsTooLong { get; }

    /// <summary>True when a number has a minus before it.</summary>
    public bool Minus { get; }

    /// <summary>True when every word that is no number is one of these.</summary>
    public bool HasOnly(params IEnumerable<string>[] words) => IsPlain && Tokens.All(t => t.Number is not null || words.Any(w => w.Contains(t.Word)));

    /// <summary>True when every word outside the span is one of these; a number outside it is not.</summary>
    public bool HasOnlyBeside(int start, int count, IReadOnlySet<string> words) => IsPlain && Tokens.Where((t, i) => i < start || i >= start + count).All(t => t.IsAny(words));

    /// <summary>Its only number when the other words are among these; null when not so.</summary>
    public double? OnlyNumber(params IEnumerable<string>[] words) => Numbers.Count == 1 && !Minus && HasOnly(words) && !Tokens.Any(t => Grouped().IsMatch(t.Word)) ? Numbers[0] : null;

    /// <summary>Its words behind others, which lead a reader the right way.</summary>
    public IReadOnlyList<Token> Behind(params string[] lead) => [.. lead.Select(w => new Token(w)), .. Tokens];

    private static bool HasOddSigns(string raw)
    {
        string rest = Usual().Replace(raw, " ");
        return rest.EnumerateRunes().Any(r => !Rune.IsLetterOrDigit(r) && !Rune.IsWhiteSpace(r) && !(r.IsAscii || r.IsBmp ? Signs.Contains((char)r.Value, StringComparison.Ordinal) : false)
            && Rune.GetUnicodeCategory(r) is not (UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark));
    }

    // "1,500" is one and a half to one and fifteen hundred to another.
    [GeneratedRegex(@"^\d{1,3},\d{3}$", RegexOptions.CultureInvariant)]
    private static partial Regex Grouped();

    // Strokes, colons and hyphens only where they mean something.
    [GeneratedRegex(@"km\s?/\s?h|[uµμm]v/m|a/c|(?<!\d)(?:1/2|1/4|3/4)(?!\d)|\d:\d|(?<=\d)\s?[-–—−]\s?(?=\d)|[-–−](?=\s?\d)|(?<=\p{L})-(?=[\p{L}\d])|(?<=\d)-(?=\p{L})", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Usual();

    [GeneratedRegex(@"(?<![\w)]\s?)[-–−]\s?\d|\bminus\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Negative();

    [GeneratedRegex(@"(?<![\d./])3/4(?![\d/])(?:\s?(?:of\s)?an?\b)?|¾", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex ThreeQuarters();
}
