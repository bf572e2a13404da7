namespace Quarterlight.Crew.Language;

/// <summary>A length of time as said.</summary>
/// <param name="Minutes">Minutes.</param>
/// <param name="Start">First word of it.</param>
/// <param name="Count">Words of it.</param>
public sealed record DurationSaid(double Minutes, int Start, int Count);

/// <summary>Reads lengths of time.</summary>
public static class DurationReader
{
    private const double MinutesPerHour = 60;

    /// <summary>Every length of time said, in order; "two hours 30 minutes" is one.</summary>
    public static IReadOnlyList<DurationSaid> Find(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var found = new List<DurationSaid>();
        for (int i = 0; i < tokens.Count; i++)
        {
            if (Unit(tokens[i]) is not { } unit || Amount(tokens, i) is not { } amount)
            {
                continue;
            }

            double minutes = amount.Value * unit;
            int end = i + 1;
            if (unit == MinutesPerHour && amount.Value < 24 && end + 2 < tokens.Count && tokens[end].Is("and") && tokens[end + 1].Is("a") && tokens[end + 2].Word is "half" or "quarter")
            {
                minutes += MinutesPerHour / (tokens[end + 2].Is("half") ? 2 : 4);
                end += 3;
            }

            bool joined = found.Count > 0 && amount.Start - (found[^1].Start + found[^1].Count) is 0 or 1 && found[^1].Minutes >= MinutesPerHour && minutes < MinutesPerHour
                && (amount.Start == found[^1].Start + found[^1].Count || tokens[amount.Start - 1].Is("and"));
            if (joined)
            {
                found[^1] = new DurationSaid(found[^1].Minutes + minutes, found[^1].Start, end - found[^1].Start);
            }
            else
            {
                found.Add(new DurationSaid(minutes, amount.Start, end - amount.Start));
            }
        }

        return found;
    }

    private static double? Unit(Token token) => token.Number is not null ? null : token.Word switch
    {
        "second" or "seconds" or "sec" or "secs" => 1 / MinutesPerHour,
        "minute" or "minutes" or "min" or "mins" => 1,
        "hour" or "hours" or "hr" or "hrs" or "h" => MinutesPerHour,
        _ => null,
    };

    // "20", "an", "half an", "one and a half", "a couple of".
    private static (double Value, int Start)? Amount(IReadOnlyList<Token> tokens, int unit)
    {
        // "Hour and a half" needs no article.
        bool andHalf = tokens[unit].Is("hour") && unit + 3 < tokens.Count && tokens[unit + 1].Is("and") && tokens[unit + 2].Is("a") && tokens[unit + 3].Is("half");
        int i = unit - 1;
        if (i < 0)
        {
            return andHalf ? (1, unit) : null;
        }

        if (tokens[unit].Is("h"))
        {
            return tokens[i].Number is { } hours ? (hours, i) : null;
        }

        if (tokens[i].Number is { } number)
        {
            return (number, i);
        }

        if (tokens[i].Is("half") && i > 1 && tokens[i - 1].Is("a") && tokens[i - 2].Is("and"))
        {
            return i > 2 && (tokens[i - 3].Number ?? (tokens[i - 3].Is("one") ? 1 : null)) is { } whole ? (whole + 0.5, i - 3) : null;
        }

        // "A quarter of an hour", "three quarters of an hour".
        if (tokens[i].Word is "a" or "an" && i > 1 && tokens[i - 1].Is("of") && tokens[i - 2].Word is "quarter" or "quarters")
        {
            return i > 2 && tokens[i - 3].Number == 3 ? (0.75, i - 3) : (0.25, i - 2);
        }

        if (tokens[i].Word is "a" or "an" && i > 0 && tokens[i - 1].Word is "half" or "quarter")
        {
            return (tokens[i - 1].Is("half") ? 0.5 : 0.25, i - 1);
        }

        if (tokens[i].Is("half"))
        {
            return (0.5, i);
        }

        if (tokens[i].Is("couple") || (tokens[i].Is("of") && i > 0 && tokens[i - 1].Is("couple")))
        {
            return (2, tokens[i].Is("of") ? i - 1 : i);
        }

        if (andHalf && tokens[i].Word is not ("a" or "an" or "one"))
        {
            return (1, unit);
        }

        return tokens[i].Word is "an" or "one" || (tokens[i].Is("a") && unit < tokens.Count && tokens[unit].Word is "minute") ? (1, i) : null;
    }
}
