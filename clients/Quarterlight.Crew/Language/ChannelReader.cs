namespace Quarterlight.Crew.Language;

/// <summary>Reads what a set of channels is to keep.</summary>
public static class ChannelReader
{
    // More is a channel, not a distance between two.
    private const double WidestSpacingMHz = 20;

    /// <summary>What is said about counts, bands, steps and spacings, with the words used up by it.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="frequencies">Frequencies among them, stations aside.</param>
    public static (RadioSaid Said, IReadOnlySet<int> Used) Read(IReadOnlyList<Token> tokens, IReadOnlyList<FrequencySaid> frequencies)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(frequencies);
        var used = new HashSet<int>();
        int avoiding = IndexOfAvoiding(tokens);
        var ranges = new List<BandSaid>();
        var excluded = new List<BandSaid>();
        foreach ((BandSaid band, int first, int last) in FrequencyReader.Bands(tokens))
        {
            (Avoided(tokens, first, avoiding) || Occupied(tokens, first, last) ? excluded : ranges).Add(band);
            used.UnionWith([first, last]);
        }

        var avoided = new List<double>();
        double? step = null, spacing = null;
        foreach (FrequencySaid f in frequencies.Where(f => !used.Contains(f.Index)))
        {
            if (f.MHz < WidestSpacingMHz && tokens.Skip(f.Index + 1).Take(3).Any(t => t.Word is "apart" or "spacing" or "spaced"))
            {
                spacing = f.MHz * 1000;
                used.Add(f.Index);
            }
            else if (Avoided(tokens, f.Index, avoiding) || Occupied(tokens, f.Index, f.Index))
            {
                avoided.Add(f.MHz);
                used.Add(f.Index);
            }
        }

        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if (tokens[i].Number is not { } number || !tokens[i + 1].Is("khz"))
            {
                continue;
            }

            IEnumerable<Token> after = tokens.Skip(i + 2).Take(2).TakeWhile(t => t.Number is null);
            bool steps = after.Any(IsStep) || (tokens.Take(i).TakeLast(2).Any(IsStep) && !after.Any(t => t.Word is "apart" or "spacing"));
            step = steps ? number : step;
            spacing = steps ? spacing : number;
        }

        var said = new RadioSaid
        {
            TransmitterCount = Count(tokens) ?? (used.Count > 0 || spacing is not null || step is not null ? CountAlone(tokens, used) : null),
            TuningRanges = ranges,
            Excluded = excluded,
            AvoidedMHz = avoided,
            StepKHz = step,
            SpacingKHz = spacing,
            FifthOrder = tokens.Where((t, i) => t.Is("fifth") || (t.Number == 5 && i + 1 < tokens.Count && tokens[i + 1].Is("th"))).Any() && tokens.Any(t => t.Word is "order" or "products" or "too"),
        };
        return (said, used);
    }

    // "eight transmitters", "12 radio mics", "channels for ten".
    private static int? Count(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is not ({ } number and >= 1 and <= 1000) || number != Math.Floor(number))
            {
                continue;
            }

            IEnumerable<Token> next = tokens.Skip(i + 1).Take(3).TakeWhile(t => t.Number is null && t.Word is not ("mhz" or "mw" or "m" or "and" or "mph" or "kmh"));
            bool counted = next.Any(t => t.IsAny(RadioWords.Transmitters) || t.Is("radios")) || (next.Any(t => t.IsAny(Lexicon.Microphones)) && tokens.Any(t => t.Word is "radio" or "wireless" || t.IsAny(RadioWords.Channels) || t.IsAny(RadioWords.Coordinating)))
                || next.Any(t => t.Word is "channels" or "frequencies" or "freqs" or "carriers")
                || (i > 0 && (i == tokens.Count - 1 || !next.Any()) && tokens[i - 1].Is("for") && tokens.Any(t => t.Word is "channels" or "frequencies" or "freqs" || t.IsAny(RadioWords.Coordinating) || (t.Word is "frequency" or "freq" or "channel" && tokens.Any(p => p.IsAny(Lexicon.Plans)))))
                || (i > 0 && tokens[i - 1].Is("for") && next.FirstOrDefault() is { Word: "avoid" or "avoiding" or "please" or "without" or "not" or "in" } && tokens.Any(t => t.Word is "channels" or "frequencies" || t.IsAny(RadioWords.Coordinating)));
            if (counted)
            {
                return (int)number;
            }
        }

        return null;
    }

    // "Six in 470-478", "5 mics at least 600 kHz apart": beside a band or a spacing, what is counted need not be wireless.
    private static int? CountAlone(IReadOnlyList<Token> tokens, HashSet<int> used)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            string next = i + 1 < tokens.Count ? tokens[i + 1].Word : "";
            bool counts = next is "in" or "between" or "from" or "of" || (next.Length > 0 && tokens[i + 1].IsAny(Lexicon.Microphones)) || (i + 2 < tokens.Count && tokens[i + 2].IsAny(Lexicon.Microphones) && tokens[i + 1].Number is null);
            if (!used.Contains(i) && tokens[i].Number is >= 2 and <= 64 and { } number && number == Math.Floor(number) && counts)
            {
                return (int)number;
            }
        }

        return null;
    }

    private static bool IsStep(Token token) => token.Word is "step" or "steps" or "raster" or "tuning";

    private static int IndexOfAvoiding(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            bool clearOf = tokens[i].Word is "clear" or "out" or "off" or "away" && i + 1 < tokens.Count && tokens[i + 1].Word is "of" or "from";
            bool nothingIn = tokens[i].Word is "nothing" or "none" && i + 1 < tokens.Count && tokens[i + 1].Word is "in" or "at" or "on" or "from" or "near";
            bool together = tokens[i].Is("not") && tokens.Skip(i + 1).Take(2).Any(t => t.IsAny(RadioWords.Checking) || t.Word is "fight" or "hit" or "step" or "trip" or "bother");
            bool anythingBut = tokens[i].Is("but") && i > 0 && tokens[i - 1].Word is "anything" or "anywhere" or "everything" or "all" or "any";
            if (anythingBut || (tokens[i].IsAny(RadioWords.Avoiding) && !together) || clearOf || nothingIn)
            {
                return i;
            }
        }

        return -1;
    }

    // "Keep 600 to 606 clear", "the TV mast is on 490 to 498 so not there", "another unit sits on 521.3".
    private static bool Occupied(IReadOnlyList<Token> tokens, int first, int last)
    {
        IEnumerable<Token> before = tokens.Take(first).TakeLast(7).Reverse().TakeWhile(t => t.Number is null), after = tokens.Skip(last + 1).Take(4).TakeWhile(t => t.Number is null);
        bool others = before.Any(t => t.Word is "tv" or "television" or "mast" or "unit" or "someone" or "somebody" or "neighbours" or "theatre" or "church" or "crew" or "broadcaster" or "already") && !before.Any(t => t.Word is "us" or "me" or "we" or "our" or "my" or "them") && before.Any(t => t.Word is "on" or "at" or "uses" or "using" or "has" or "got" or "owns" or "taken");
        bool clear = before.Take(3).Any(t => t.Word is "keep" or "leave" or "keepout") && after.Any(t => t.Word is "clear" or "free" or "alone" or "empty");
        return others || clear || after.Any(t => t.Word is "taken" or "occupied" or "busy" or "reserved");
    }

    // A lead holds until the question turns to where it may go.
    private static bool Avoided(IReadOnlyList<Token> tokens, int at, int avoiding) =>
        avoiding >= 0 && at > avoiding && !tokens.Skip(avoiding + 1).Take(at - avoiding - 1).Any(t => t.Word is "between" or "put" or "use" or "but" or "hear");
}
