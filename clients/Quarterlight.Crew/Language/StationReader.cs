using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads which broadcast stations the crew hears.</summary>
public static class StationReader
{
    // Above the FM band, whose upper edge is 108 MHz (from memory).
    private const double HighestStationMHz = 110;

    /// <summary>Stations with their strength, and the first word that is about them; past the last word when none is.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="frequencies">Frequencies among them.</param>
    public static (IReadOnlyList<HeardStation> Stations, int Start) Read(IReadOnlyList<Token> tokens, IReadOnlyList<FrequencySaid> frequencies)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(frequencies);
        // Only broadcasters are heard so; "keep 600 to 606 clear" is no station.
        frequencies = [.. frequencies.Where(f => f.MHz <= HighestStationMHz)];
        if (Start(tokens, frequencies) is not { } start || frequencies.All(f => f.Index < start))
        {
            return ([], tokens.Count);
        }

        FrequencySaid[] heard = [.. frequencies.Where(f => f.Index >= start)];

        // "strong on 97.7 and 98.5, faint on 99.1" names the strength first; "97.7 strong and 98.5 faint" afterwards.
        StationStrength? ahead = Strengths(tokens, Math.Max(-1, start - 3), heard[0].Index).LastOrDefault();
        var stations = new List<HeardStation>();
        for (int i = 0; i < heard.Length; i++)
        {
            int end = i + 1 < heard.Length ? heard[i + 1].Index : tokens.Count;
            StationStrength? here = Strengths(tokens, heard[i].Index, end).FirstOrDefault();
            var station = new HeardStation { FrequencyMhz = heard[i].MHz };
            if (Field(tokens, heard[i].Index + 1, end) is { } field)
            {
                station.FieldDbuvPerM = field;
            }
            else if (ahead is { } told)
            {
                station.Strength = told;
                ahead = here ?? ahead;
            }
            else
            {
                station.Strength = here ?? StationStrength.Unspecified;
            }

            stations.Add(station);
        }

        // "97.7 and 98.5 strong": one word for all before it.
        for (int i = stations.Count - 2; i >= 0; i--)
        {
            if (stations[i].Strength == StationStrength.Unspecified && !stations[i].HasFieldDbuvPerM)
            {
                stations[i].Strength = stations[i + 1].Strength;
            }
        }

        foreach (HeardStation station in stations.Where(s => s.Strength == StationStrength.Unspecified && !s.HasFieldDbuvPerM))
        {
            station.Strength = StationStrength.Clear;
        }

        return (stations, start);
    }

    private static int? Start(IReadOnlyList<Token> tokens, IReadOnlyList<FrequencySaid> frequencies)
    {
        // "98.1 is taken"
        if (frequencies.FirstOrDefault(f => tokens.Skip(f.Index + 1).Take(3).TakeWhile(t => t.Number is null).Any(t => t.Word is "taken" or "occupied" or "busy")) is { } busy)
        {
            return busy.Index;
        }

        for (int i = 0; i < tokens.Count; i++)
        {
            // "can they hear us" is about the link.
            bool us = i + 1 < tokens.Count && tokens[i + 1].Word is "us" or "me" or "it";
            if (tokens[i].IsAny(RadioWords.Hearing) && !us)
            {
                return i;
            }
        }

        // "A faint one at 99.9".
        if (frequencies.Count > 0 && frequencies[0].Index is > 0 and var at && Enumerable.Range(Math.Max(0, at - 4), Math.Min(at, 4)).FirstOrDefault(i => StrengthOf(tokens, i) is not null && tokens.Skip(i + 1).Any(t => t.Word is "one" or "signal" or "programme" or "music" or "broadcast"), -1) is >= 0 and var told)
        {
            return told;
        }

        return frequencies.FirstOrDefault(f => StrengthOf(tokens, AfterFillers(tokens, f.Index + (f.Named ? 2 : 1))) is not null) is { } first ? first.Index : tokens.Any(t => t.Word is "dbuv" or "dbµv" or "dbμv") && frequencies.Count > 0 ? frequencies[0].Index : null;
    }

    // "88.7 is very strong"
    private static int AfterFillers(IReadOnlyList<Token> tokens, int i)
    {
        while (i < tokens.Count && tokens[i].Word is "is" or "was" or "comes" or "in" or "very" or "quite" or "really" or "pretty")
        {
            i++;
        }

        return i;
    }

    private static IEnumerable<StationStrength?> Strengths(IReadOnlyList<Token> tokens, int from, int to)
    {
        for (int i = from + 1; i < to; i++)
        {
            if (StrengthOf(tokens, i) is { } strength)
            {
                yield return strength;
            }
        }
    }

    private static StationStrength? StrengthOf(IReadOnlyList<Token> tokens, int i) => i < 0 || i >= tokens.Count ? null : tokens[i].Word switch
    {
        "faint" or "weak" or "noisy" or "crackly" or "faintly" or "barely" or "scratchy" => StationStrength.Faint,
        "strong" or "loud" or "strongly" or "booming" => StationStrength.Strong,
        "clear" or "clearly" => StationStrength.Clear,
        _ => null,
    };

    private static double? Field(IReadOnlyList<Token> tokens, int from, int to)
    {
        for (int i = from; i + 1 < to; i++)
        {
            if (tokens[i].Number is { } value && tokens[i + 1].Word is "dbuv" or "dbµv" or "dbμv" or "dbu")
            {
                return value;
            }
        }

        return null;
    }
}
