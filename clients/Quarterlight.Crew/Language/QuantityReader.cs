namespace Quarterlight.Crew.Language;

/// <summary>Reads numbers with their units.</summary>
public static class QuantityReader
{
    /// <summary>Kilometres in an international mile: 1.609344 exactly (yard and pound agreement of 1959).</summary>
    public const double KilometresPerMile = 1.609344;

    private static readonly HashSet<string> Miles = ["mph", "miles", "mile"];
    private static readonly HashSet<string> Kilometres = ["kmh", "km", "kilometers", "kilometres", "kph", "ks", "kays", "kms", "klicks", "clicks"];
    private static readonly HashSet<string> Revolutions = ["rpm", "revs", "revolutions"];
    private static readonly HashSet<string> OtherUnits = Lexicon.Words("percent cm m metres meters inches feet foot ft yards yard yd yds carlengths cars mic mics talkers people mhz ghz khz mw w watts dbm dbuv uv transmitters bodypacks channels degrees degree deg degs c f celsius fahrenheit am pm oclock hz hertz minutes minute mins min hours hour hrs hr db out outside second seconds sec secs tracks track gb gig gigs tb packs lavs block blocks takes kids adults actors children dogs dbtp lufs carriers");
    private static readonly HashSet<string> SpeedLeads = ["at", "doing", "speed", "going", "drive", "driving", "do", "to", "of", "about", "around", "go", "goes", "cruising", "cruise", "crawling", "average", "averaging", "hold", "holding", "under", "over", "past"];
    private static readonly HashSet<string> SpeedWords = ["at", "doing", "speed", "going", "drive", "driving", "do", "go", "goes", "cruise", "cruising", "crawling", "bump", "slow", "slows", "slowing", "push", "average", "averaging", "keep", "hold", "holding"];
    private static readonly HashSet<string> Fillers = ["a", "steady", "constant", "roughly", "maybe", "like", "only", "just", "say", "it", "nearly", "almost"];

    // "Walking pace": about the preferred speed of people on foot, 1.4 m/s (from memory), to the whole km/h.
    private const double WalkingKmPerHour = 5;

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

            int lead = i - 1;
            while (lead > 0 && tokens[lead].IsAny(Fillers))
            {
                lead--;
            }

            bool led = lead >= 0 && tokens[lead].IsAny(SpeedLeads) && tokens.Take(i).Any(t => t.IsAny(SpeedWords));
            bool otherUnit = (next is not null && IsUnit(next)) || RevolvesAt(tokens, i);
            led |= number is >= 10 and <= 200 && i == 0 && next?.Word is "with" or "instead" or "in" or "on" && tokens.Any(t => t.IsAny(Lexicon.Rains) || t.Word is "instead" or "road" or "gravel" or "concrete" or "cobbles" || t.IsAny(Lexicon.Windows) || t.IsAny(Lexicon.Fans));
            if (led && !otherUnit && !ClockReader.IsClock(tokens, i) && !NamesFan(tokens, i) && number >= 5)
            {
                return units == UnitPreference.Imperial ? number * KilometresPerMile : number;
            }
        }

        return tokens.Where((t, i) => t.Word is "walking" && i + 1 < tokens.Count && tokens[i + 1].Word is "pace" or "speed").Any() ? WalkingKmPerHour : null;
    }

    /// <summary>True for a unit that is none of a road speed, so that the number before it is no speed and no time of day.</summary>
    internal static bool IsUnit(Token token) => token.IsAny(Revolutions) || token.IsAny(OtherUnits);

    /// <summary>Engine speed in revolutions per minute that the question names, or null.</summary>
    public static double? Rpm(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        for (int i = 0; i < tokens.Count; i++)
        {
            if (RevolvesAt(tokens, i))
            {
                return tokens[i].Number;
            }
        }

        return null;
    }

    /// <summary>True where the number is an engine speed: "3000 rpm", "revs it to 3000", "revving at 2500".</summary>
    internal static bool RevolvesAt(IReadOnlyList<Token> tokens, int i) => tokens[i].Number is { } number
        && ((i + 1 < tokens.Count && tokens[i + 1].IsAny(Revolutions)) || (number is >= 500 and <= 12000 && tokens.Take(i).TakeLast(4).Any(t => t.Word is "revs" or "rev" or "revving" or "revved" or "revolutions" or "rpm")));

    private static bool NamesFan(IReadOnlyList<Token> tokens, int number) =>
        tokens.Take(number).TakeLast(3).Any(t => t.Word is "fan" or "step" or "blower");
}
