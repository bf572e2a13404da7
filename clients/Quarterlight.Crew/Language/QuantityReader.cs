namespace Quarterlight.Crew.Language;

/// <summary>Reads numbers with their units.</summary>
public static class QuantityReader
{
    /// <summary>Kilometres in an international mile: 1.609344 exactly (yard and pound agreement of 1959).</summary>
    public const double KilometresPerMile = 1.609344;

    private static readonly HashSet<string> Miles = ["mph", "miles", "mile"];
    private static readonly HashSet<string> Kilometres = ["kmh", "km", "kilometers", "kilometres", "kph", "ks", "kays"];
    private static readonly HashSet<string> Revolutions = ["rpm", "revs", "revolutions"];
    private static readonly HashSet<string> OtherUnits = Lexicon.Words("percent cm m metres meters inches feet foot ft yards yard yd yds carlengths cars mic mics talkers people mhz ghz khz mw w watts dbm dbuv uv transmitters bodypacks channels degrees degree deg degs c f celsius fahrenheit am pm oclock hz hertz minutes minute mins min hours hour hrs db out outside");
    private static readonly HashSet<string> SpeedLeads = ["at", "doing", "speed", "going", "drive", "driving", "do", "to", "of", "about", "around"];

    /// <summary>Road speed in km/h that the question names, or null.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="units">Units a bare number is in, as in "doing 40".</param>
    public static double? SpeedKmPerHour(IReadOnlyList<Token> tokens, UnitPreference units)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is not { } number)
            {
                continue;
            }

            Token? next = i + 1 < tokens.Count ? tokens[i + 1] : null;
            if (next is not null && next.IsAny(Miles))
            {
                return number * KilometresPerMile;
            }

            if (next is not null && next.IsAny(Kilometres))
            {
                return number;
            }

            bool led = i > 0 && tokens[i - 1].IsAny(SpeedLeads) && tokens.Take(i).Any(t => t.Word is "at" or "doing" or "speed" or "going" or "drive" or "driving" or "do");
            bool otherUnit = next is not null && (next.IsAny(Revolutions) || next.IsAny(OtherUnits));
            if (led && !otherUnit && !ClockReader.IsClock(tokens, i) && !NamesFan(tokens, i) && number >= 5)
            {
                return units == UnitPreference.Imperial ? number * KilometresPerMile : number;
            }
        }

        return null;
    }

    /// <summary>Engine speed in revolutions per minute that the question names, or null.</summary>
    public static double? Rpm(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is { } number && i + 1 < tokens.Count && tokens[i + 1].IsAny(Revolutions))
            {
                return number;
            }
        }

        return null;
    }

    private static bool NamesFan(IReadOnlyList<Token> tokens, int number) =>
        tokens.Take(number).TakeLast(3).Any(t => t.Word is "fan" or "step" or "blower");
}
