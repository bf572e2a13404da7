using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads where the two antennas are.</summary>
public static class AntennaReader
{
    // An antenna higher than this is not asked about; a distance is.
    private const double HighestM = 8;

    // Beside an antenna, so short a distance is its height and no gap: judgement.
    private const double SurelyHeightM = 4;

    /// <summary>Both antennas, and the distances that are their heights and not gaps.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="distances">Distances among them.</param>
    public static (AntennaSaid Transmit, AntennaSaid Receive, IReadOnlyList<DistanceSaid> Heights) Read(IReadOnlyList<Token> tokens, IReadOnlyList<DistanceSaid> distances)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(distances);
        bool antenna = tokens.Any(t => t.IsAny(RadioWords.Antennas) || t.Word is "mast" or "mw" or "milliwatt" or "milliwatts" or "watts");
        DistanceSaid[] heights = [.. distances.Where(d => IsHeight(tokens, d, antenna))];
        AntennaPlace? place = antenna || OnlyOutside(tokens) ? Place(tokens) : null;
        double? height = heights.Length > 0 ? heights[0].Metres : null;
        var said = new AntennaSaid(place, height);
        bool receiving = Receiving(tokens);
        bool both = tokens.Any(t => t.Is("both")) || (tokens.Any(t => t.Word is "antennas" or "aerials") && !receiving);
        return (receiving && !both ? new AntennaSaid() : said, receiving || both ? said : new AntennaSaid(), heights);
    }

    // "Inside now, what if we move it to the roof?": where it goes is what is asked.
    private static AntennaPlace? Place(IReadOnlyList<Token> tokens)
    {
        int moved = tokens.Select((t, i) => t.Word is "move" or "moved" or "moving" or "put" or "onto" ? i : -1).Max();
        return (moved >= 0 ? First(tokens.Skip(moved)) : null) ?? First(tokens);
    }

    private static AntennaPlace? First(IEnumerable<Token> tokens)
    {
        int denied = 0, within = 0;
        foreach (Token token in tokens)
        {
            // "We have no roof antenna": a place turned away is none.
            denied = token.Word is "no" or "not" or "without" or "never" or "instead" ? 4 : denied - 1;
            within--;
            if (denied > 0)
            {
                continue;
            }

            switch (token.Word)
            {
                case "mast" or "pole":
                    return AntennaPlace.OnMast;
                case "headliner" or "roof" or "outside" or "bonnet" or "boot":
                    return AntennaPlace.OnRoof;
                case "glass" or "windscreen" or "rearglass" or "window":
                    return AntennaPlace.OnGlass;
                case "inside" or "cabin" or "indoors":
                    return AntennaPlace.InCabin;
                case "in":
                    within = 3;
                    break;
                case "car" when within > 0:
                    return AntennaPlace.InCabin;
            }
        }

        return null;
    }

    private static bool OnlyOutside(IReadOnlyList<Token> tokens) => tokens.Count <= 4 && tokens.Any(t => t.Is("outside"));

    private static bool IsHeight(IReadOnlyList<Token> tokens, DistanceSaid distance, bool antenna)
    {
        if (distance.Metres > HighestM || distance.CarLengths is not null)
        {
            return false;
        }

        bool after = tokens.Skip(distance.Start + distance.Count).Take(1).Any(t => t.Word is "high" or "up" or "tall" or "above");
        bool before = tokens.Take(distance.Start).TakeLast(3).Any(t => t.Word is "height" or "raise" or "raised" or "mast" or "pole");
        return after || before || (antenna && distance.Metres <= SurelyHeightM) || (antenna && tokens.Take(distance.Start).TakeLast(4).Any(t => t.IsAny(RadioWords.Antennas)));
    }

    // "the receiver's antenna", "the follow car's aerial", "their antenna".
    private static bool Receiving(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            bool owner = tokens[i].Word is "receiver" or "receiving" or "rx" or "their" || ((tokens[i].Word is "followcar" or "chasecar") && (tokens[i].Possessive || (i + 1 < tokens.Count && tokens[i + 1].IsAny(RadioWords.Antennas))));
            bool near = tokens.Skip(i + 1).Take(2).Any(t => t.IsAny(RadioWords.Antennas)) || tokens[i].Word is "receiver" or "rx";
            bool of = owner || (tokens[i].IsAny(RadioWords.Antennas) && tokens.Skip(i + 1).Take(7).Any(t => t.Word is "followcar" or "chasecar" or "receiver") && tokens.Skip(i + 1).Take(1).Any(t => t.Word is "of" or "on" or "in"));
            if (of && (near || !owner))
            {
                return true;
            }
        }

        return false;
    }
}
