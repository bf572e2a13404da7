using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads what a question says about the radio link and the wireless transmitters.</summary>
public static class RadioReader
{
    // Farther than this, "100 km" is a speed said shortly and not a gap, unless the question names the link.
    private const double FarthestGapM = 5000;

    /// <summary>Everything said.</summary>
    /// <param name="text">The question as typed.</param>
    /// <param name="tokens">Its words.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="knows">True for a word that means something.</param>
    /// <param name="talking">True when the link is being talked about, so that a bare "at 150" is a gap.</param>
    public static RadioSaid Read(string text, IReadOnlyList<Token> tokens, UnitPreference units, Func<string, bool> knows, bool talking)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(knows);
        IReadOnlyList<FrequencySaid> all = FrequencyReader.Find(tokens);
        (IReadOnlyList<HeardStation> stations, int heardFrom) = StationReader.Read(tokens, all);
        FrequencySaid[] own = [.. all.Where(f => f.Index < heardFrom)];
        (RadioSaid channels, IReadOnlySet<int> used) = ChannelReader.Read([.. tokens.Take(Math.Max(heardFrom, 0))], own);
        double[] carriers = [.. own.Where(f => !used.Contains(f.Index)).Select(f => f.MHz)];
        IReadOnlyList<DistanceSaid> distances = DistanceReader.Find(tokens);
        (AntennaSaid transmit, AntennaSaid receive, IReadOnlyList<DistanceSaid> heights) = AntennaReader.Read(tokens, distances);
        PowerSaid? power = PowerReader.Read(text, tokens);
        bool field = power?.Basis == TransmitPowerBasis.Field;
        bool link = talking || tokens.Any(t => t.IsAny(RadioWords.Links));
        DistanceSaid? gap = distances.FirstOrDefault(d => !heights.Contains(d) && (link || d.Metres <= FarthestGapM) && !(field && d.Metres == power!.FieldDistanceM));
        return channels with
        {
            GapM = gap?.Metres ?? (link ? BareGapM(tokens, units) : null),
            CarLengths = gap?.CarLengths,
            SpeedKmPerHour = SpeedKmPerHour(tokens, units),
            Surroundings = RoadReader.Surroundings(tokens),
            Sight = RoadReader.Sight(tokens),
            Country = CountryReader.Read(text, tokens, knows, tokens.Any(t => t.IsAny(RadioWords.Laws) || t.IsAny(RadioWords.Limits))),
            FrequencyMHz = carriers.Length > 0 ? carriers[0] : null,
            CarriersMHz = carriers.Length > 1 ? carriers : [],
            Power = power,
            OfMicrophones = tokens.Any(t => t.IsAny(Lexicon.Microphones) || t.Word is "bodypack" or "bodypacks" or "beltpack" or "beltpacks" or "radiomic" or "radiomics" or "lavs" or "handheld" or "handhelds"),
            TransmitAntenna = transmit,
            ReceiveAntenna = receive,
            Stereo = tokens.Any(t => t.Is("mono")) ? false : tokens.Any(t => t.Is("stereo")) ? true : null,
            AvailabilityFraction = Availability(tokens),
            Stations = stations,
        };
    }

    // "99 percent", "99.9 % of the time"; below half nobody asks for.
    private static double? Availability(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if (tokens[i].Number is { } number and >= 50 && tokens[i + 1].Word is "percent" && !tokens.Any(t => t.IsAny(Lexicon.Windows) || t.IsAny(Lexicon.Fans)))
            {
                return Math.Round(number / 100, 6);
            }
        }

        return null;
    }

    // Unlike elsewhere, miles and kilometres are distances here, and "at 150" is one too.
    private static double? SpeedKmPerHour(IReadOnlyList<Token> tokens, UnitPreference units)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is { } number && i + 1 < tokens.Count && tokens[i + 1].Word is "mph" or "kmh" or "kph")
            {
                return tokens[i + 1].Word == "mph" ? number * QuantityReader.KilometresPerMile : number;
            }

            bool driven = i > 0 && tokens[i - 1].Word is "doing" or "driving" or "do" or "drive" or "going";
            if (tokens[i].Number is { } bare and >= 5 && driven && i == tokens.Count - 1)
            {
                return units == UnitPreference.Imperial ? bare * QuantityReader.KilometresPerMile : bare;
            }
        }

        return tokens.Any(t => t.Word is "parked" or "stationary" or "standstill") ? 0 : null;
    }

    private static double? BareGapM(IReadOnlyList<Token> tokens, UnitPreference units)
    {
        if (tokens.Count < 2 || tokens[^1].Number is not ({ } number and >= 1 and < 3000) || tokens[^2].Word is not ("at" or "by" or "whatabout") || tokens[^1].Word.Contains('.', StringComparison.Ordinal))
        {
            return null;
        }

        return units == UnitPreference.Imperial ? number * DistanceReader.MetresPerFoot : number;
    }
}
