namespace Quarterlight.Crew.Language;

/// <summary>A frequency as said.</summary>
/// <param name="MHz">Frequency in MHz.</param>
/// <param name="Index">Word it is.</param>
/// <param name="Named">True when MHz or GHz was said with it.</param>
public sealed record FrequencySaid(double MHz, int Index, bool Named);

/// <summary>Reads frequencies.</summary>
public static class FrequencyReader
{
    private static readonly HashSet<string> OtherUnits = Lexicon.Words(
        "m metre metres meter meters km kilometre kilometres kilometer kilometers ft foot feet yd yds yard yards mile miles mph kmh kph mw milliwatt milliwatts w watt watts dbm dbuv uv µv μv microvolts percent khz car cars transmitters transmitter bodypacks bodypack beltpacks packs mics mic channels lengths carlengths talkers th rpm db ms");

    private static readonly HashSet<string> Leads = Lexicon.Words("on at frequency freq to check between from and tuned by");

    /// <summary>Every frequency said, in order. A bare number counts from 76, behind "on" and the like or with a decimal point.</summary>
    public static IReadOnlyList<FrequencySaid> Find(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var found = new List<FrequencySaid>();
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is not { } number || QuantityReader.RevolvesAt(tokens, i))
            {
                continue;
            }

            Token? next = i + 1 < tokens.Count ? tokens[i + 1] : null;
            if (next is not null && next.Word is "mhz" or "ghz" or "megahertz" or "gigahertz" or "meg" or "megs" or "gig")
            {
                found.Add(new FrequencySaid(next.Word[0] == 'g' ? number * 1000 : number, i, true));
            }
            else if (number is >= 76 and <= 6000 && (next is null || !next.IsAny(OtherUnits)) && Bare(tokens, i))
            {
                found.Add(new FrequencySaid(number, i, false));
            }
        }

        return found;
    }

    /// <summary>Bands said, as "470 to 494", "470-494" or "between 470 and 494", with the word each begins at.</summary>
    public static IReadOnlyList<(BandSaid Band, int First, int Last)> Bands(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var found = new List<(BandSaid, int, int)>();

        // "Any trouble between 622.2 and 623.6" names two channels.
        bool troubled = tokens.Any(t => t.Word is "trouble" or "clash" or "clashes" or "interference" or "conflict" or "conflicts" or "beat" or "intermod") && !tokens.Any(t => t.IsAny(RadioWords.Transmitters));
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is not { } low || low < 20)
            {
                continue;
            }

            int j = i + 1;
            bool named = j < tokens.Count && tokens[j].Word is "mhz" or "ghz";
            double scale = named && tokens[j].Word == "ghz" ? 1000 : 1;
            j += named ? 1 : 0;
            bool between = i > 0 && tokens[i - 1].Is("between");
            bool joined = j < tokens.Count && (tokens[j].Word is "to" or "till" or "through" || (between && tokens[j].Is("and") && !troubled));
            j += joined ? 1 : 0;
            if (!joined || j >= tokens.Count || tokens[j].Number is not { } high || high <= low || (j + 1 < tokens.Count && tokens[j + 1].IsAny(OtherUnits)))
            {
                continue;
            }

            double highScale = j + 1 < tokens.Count && tokens[j + 1].Word == "ghz" ? 1000 : scale;
            found.Add((new BandSaid(low * (named ? scale : highScale), high * highScale), i, j));
            i = j;
        }

        return found;
    }

    private static bool Bare(IReadOnlyList<Token> tokens, int i)
    {
        bool decimals = tokens[i].Word.Contains('.', StringComparison.Ordinal) || tokens[i].Word.Contains(',', StringComparison.Ordinal);
        bool listed = i > 0 && tokens[i - 1].Number is >= 76;
        bool lawful = tokens[i].Number >= 170 && (i == 0 || tokens[i - 1].Number is null) && i + 1 < tokens.Count && tokens[i + 1].Word is "in" && tokens.Any(t => t.IsAny(RadioWords.Laws));
        return decimals || listed || lawful || (i > 0 && tokens[i - 1].IsAny(Leads) && (!tokens[i - 1].Is("at") || tokens[i].Number >= 400)) || (i + 1 < tokens.Count && tokens[i + 1].Number is >= 76);
    }
}
