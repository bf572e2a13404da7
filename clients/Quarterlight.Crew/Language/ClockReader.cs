using System.Globalization;

namespace Quarterlight.Crew.Language;

/// <summary>A time of day as said.</summary>
/// <param name="Minute">Minutes after midnight, 0 to 1439.</param>
/// <param name="Start">First word of it.</param>
/// <param name="Count">Words of it.</param>
/// <param name="Bare">True for a number alone, as in "at 9", which may be something else.</param>
public sealed record ClockSaid(int Minute, int Start, int Count, bool Bare = false);

/// <summary>Reads times of day. A small hour without "am" or "pm" is taken as the afternoon's, as crews shoot by day: 1 to 6 (judgement).</summary>
public static class ClockReader
{
    private const int Hour = 60, HalfDay = 12, Day = 24;

    private static readonly HashSet<string> Leads = Lexicon.Words("at since until till by from around about after before whatabout");
    private static readonly HashSet<string> Morning = Lexicon.Words("morning");
    private static readonly HashSet<string> Later = Lexicon.Words("afternoon evening night tonight");

    /// <summary>Every time of day said, in order.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="bare">True when "at 9" may be one.</param>
    public static IReadOnlyList<ClockSaid> Find(IReadOnlyList<Token> tokens, bool bare = false)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var found = new List<ClockSaid>();
        for (int i = 0; i < tokens.Count; i++)
        {
            if (At(tokens, i, bare) is { } clock)
            {
                found.Add(clock);
                i += clock.Count - 1;
            }
        }

        return found;
    }

    /// <summary>True when the number there is surely a time of day.</summary>
    public static bool IsClock(IReadOnlyList<Token> tokens, int index)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        return Find(tokens).Any(c => index >= c.Start && index < c.Start + c.Count);
    }

    /// <summary>True when it was said which half of the day is meant.</summary>
    public static bool SaysHalf(IReadOnlyList<Token> tokens, ClockSaid clock)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(clock);
        return tokens.Skip(clock.Start).Take(clock.Count).Any(t => t.Word is "am" or "pm" || t.IsAny(Morning) || t.IsAny(Later)) || tokens[clock.Start].Word.StartsWith('0');
    }

    private static ClockSaid? At(IReadOnlyList<Token> tokens, int i, bool bare)
    {
        Token token = tokens[i];
        if (token.Word is "noon" or "midday")
        {
            return new ClockSaid(HalfDay * Hour, i, 1);
        }

        if (token.Is("midnight"))
        {
            return new ClockSaid(0, i, 1);
        }

        if (token.Number is null && token.Word.Split(':') is [var h, var m] && int.TryParse(h, NumberStyles.None, CultureInfo.InvariantCulture, out int hours) && int.TryParse(m, NumberStyles.None, CultureInfo.InvariantCulture, out int minutes))
        {
            return hours >= Day || minutes >= Hour ? null : HalfOf(tokens, i + 1, out int said) is { } late ? new ClockSaid((Half(hours, late) * Hour) + minutes, i, 1 + said)
                : new ClockSaid(((h.StartsWith('0') || h.Length > 1 ? hours : Daytime(hours)) * Hour) + minutes, i, 1);
        }

        if (token.Word is "half" or "quarter" && Next(tokens, i + 1) is { Word: "past" or "to" } way && HourAt(tokens, i + 2) is { } at)
        {
            int full = HalfOf(tokens, i + 3, out int words) is { } late ? Half(at, late) : Daytime(at);
            int offset = (token.Is("half") ? 30 : 15) * (way.Is("to") ? -1 : 1);
            return new ClockSaid((((full * Hour) + offset) + (Day * Hour)) % (Day * Hour), i, 3 + words);
        }

        // "Half seven" is half past, as said in Britain (common practice, no source).
        bool led = i > 0 && tokens[i - 1].IsAny(Leads);
        if (token.Is("half") && (led || i == 0) && HourAt(tokens, i + 1) is { } behind && Ends(tokens, i + 2))
        {
            int full = HalfOf(tokens, i + 2, out int words) is { } late ? Half(behind, late) : Daytime(behind);
            return new ClockSaid((full * Hour) + 30, i, 2 + words);
        }

        if (token.Is("one") && Next(tokens, i + 1) is { Word: "oclock" or "pm" or "am" } halfSaid)
        {
            return new ClockSaid((halfSaid.Is("am") ? 1 : 1 + HalfDay) * Hour, i, 2);
        }

        if (token.Number is not { } number || number < 0)
        {
            return null;
        }

        if (MinutesTo(tokens, i) is { } spoken)
        {
            return spoken;
        }

        // "At 9.30" and "until 1430".
        if (led && Written(token) is { } written && Ends(tokens, i + 1))
        {
            return new ClockSaid(written, i, 1);
        }

        if (number >= Day || !Whole(number))
        {
            return null;
        }

        int hour = (int)number;
        if (hour <= HalfDay && HalfOf(tokens, i + 1, out int count) is { } half)
        {
            return new ClockSaid(Half(hour, half) * Hour, i, 1 + count);
        }

        if (Next(tokens, i + 1) is { Word: "oclock" or "hrs" or "ish" })
        {
            return new ClockSaid((hour <= HalfDay ? Daytime(hour) : hour) * Hour, i, 2);
        }

        bool alone = led && (tokens[i - 1].Word is "since" or "until" or "till" && Ends(tokens, i + 1) || i + 1 == tokens.Count || (tokens[i + 1].Number is null && tokens[i + 1].Word is "and" or "in" or "instead" or "then" or "with" or "or" or "today" or "tomorrow" or "how"));
        return bare && alone ? new ClockSaid(Daytime(hour) * Hour, i, 1, Bare: true) : null;
    }

    // An hour of the clock; "one" is left a word elsewhere.
    private static int? HourAt(IReadOnlyList<Token> tokens, int i) => Next(tokens, i) switch
    {
        { Number: >= 1 and <= HalfDay and { } hour } when Whole(hour) => (int)hour,
        { Number: null, Word: "one" } => 1,
        _ => null,
    };

    // "Twenty past 3", "10 to 2"; "from 10 to 2" and "10 to 20 minutes" are ranges.
    private static ClockSaid? MinutesTo(IReadOnlyList<Token> tokens, int i)
    {
        if (tokens[i].Number is not (>= 1 and < Hour) || Next(tokens, i + 1) is not { Word: "past" or "to" } way || HourAt(tokens, i + 2) is not { } at)
        {
            return null;
        }

        bool to = way.Is("to"), range = i > 0 && tokens[i - 1].Word is "from" or "between";
        if (to && (range || tokens[i].Number is not (5 or 10 or 20 or 25) || !Ends(tokens, i + 3)))
        {
            return null;
        }

        int minutes = (int)tokens[i].Number!.Value;
        int full = HalfOf(tokens, i + 3, out int words) is { } late ? Half(at, late) : Daytime(at);
        return new ClockSaid(((full * Hour) + (to ? -minutes : minutes) + (Day * Hour)) % (Day * Hour), i, 3 + words);
    }

    // "9.30" and "1430" written as a time.
    private static int? Written(Token token)
    {
        string digits = token.Word.Replace(".", "", StringComparison.Ordinal);
        bool form = digits.Length == token.Word.Length ? digits.Length == 4 && digits[^1] is '0' or '5' : token.Word.Length - token.Word.IndexOf('.', StringComparison.Ordinal) == 3 && digits.Length is 3 or 4;
        if (!form || !int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int both) || both / 100 >= Day || both % 100 >= Hour)
        {
            return null;
        }

        int hour = both / 100;
        return ((digits.Length == 4 ? hour : Daytime(hour)) * Hour) + (both % 100);
    }

    // No unit follows, so that the number before was no amount.
    private static bool Ends(IReadOnlyList<Token> tokens, int i) => Next(tokens, i) is not { } next || (next.Number is null && !QuantityReader.IsUnit(next));

    // "am", "pm", "in the morning", "in the evening".
    private static bool? HalfOf(IReadOnlyList<Token> tokens, int i, out int words)
    {
        words = 1;
        switch (Next(tokens, i)?.Word)
        {
            case "am":
                return false;
            case "pm" or "tonight":
                return true;
        }

        if (Next(tokens, i) is { Word: "in" or "at" or "this" or "tomorrow" } && Next(tokens, i + 1) is { } second)
        {
            Token? part = second.Is("the") ? Next(tokens, i + 2) : second;
            words = second.Is("the") ? 3 : 2;
            bool? half = part is null ? null : part.IsAny(Morning) ? false : part.IsAny(Later) ? true : null;
            words = half is null ? 0 : words;
            return half;
        }

        words = 0;
        return null;
    }

    private static int Half(int hour, bool late) => (hour % HalfDay) + (late && hour <= HalfDay ? HalfDay : 0);

    private static int Daytime(int hour) => hour is >= 1 and <= 6 ? hour + HalfDay : hour;

    private static bool Whole(double number) => number == Math.Floor(number);

    private static Token? Next(IReadOnlyList<Token> tokens, int i) => i < tokens.Count ? tokens[i] : null;
}
