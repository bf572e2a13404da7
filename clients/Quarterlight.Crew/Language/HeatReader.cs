using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads what a question says about heat.</summary>
public static class HeatReader
{
    // From here on a bare length of time is the day's and not a take's: judgement.
    private const double LongestTakeMin = 110;

    // Above it, a bare "at 30" is no time of day.
    private const int LastHour = 24;

    private static readonly HashSet<string> Soaking = Lexicon.Words("parked standing stands stand stood sat sits sitting left baking soaked soaking been");
    private static readonly HashSet<string> Hot = Lexicon.Words("hot warm heat melt cook roast bake boil sweat stuffy sun");
    private static readonly HashSet<string> Buying = Lexicon.Words("buy buys gain gains help helps worth save saves difference bring brings improve better change changes do does");

    /// <summary>Everything said.</summary>
    /// <param name="text">The question as typed.</param>
    /// <param name="tokens">Its words.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="talking">True when heat is being talked about, so that a bare "at 9" is a time.</param>
    public static HeatSaid Read(string text, IReadOnlyList<Token> tokens, UnitPreference units, bool talking)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tokens);
        bool soaking = tokens.Any(t => t.IsAny(Soaking));
        bool hourAlone = talking || tokens.Any(t => t.Is("since") || t.IsAny(Hot));
        IReadOnlyList<ClockSaid> clocks = ClockReader.Find(tokens, hourAlone);
        ClockSaid? since = clocks.FirstOrDefault(c => Before(tokens, c.Start, "since"));
        ClockSaid? start = clocks.FirstOrDefault(c => c != since && !Before(tokens, c.Start, "until", "till"));
        TemperatureSaid[] temperatures = [.. TemperatureReader.Find(text, tokens, units, talking).Where(t => !clocks.Any(c => t.Index >= c.Start && t.Index < c.Start + c.Count) && (t.InFahrenheit || !IsHour(tokens, t)))];
        TemperatureSaid? setPoint = temperatures.FirstOrDefault(t => tokens.Take(t.Index).TakeLast(4).Any(w => w.IsAny(ForecastWords.Cooling)) && Before(tokens, t.Index, "to"));
        TemperatureSaid? outside = temperatures.FirstOrDefault(t => t != setPoint);
        IReadOnlyList<DurationSaid> durations = DurationReader.Find(tokens);
        DurationSaid? soak = durations.FirstOrDefault(d => soaking && (Before(tokens, d.Start, "for") || (d.Start > 0 && tokens[d.Start - 1].IsAny(Soaking)) || tokens.Any(t => t.Word is "sun" or "parked")))
            ?? durations.FirstOrDefault(d => Before(tokens, d.Start, "after") && tokens.Any(t => t.Is("sun")));
        DurationSaid? other = durations.FirstOrDefault(d => d != soak);
        PeopleSaid people = PeopleReader.Read(tokens);
        return new HeatSaid
        {
            Aspect = Aspect(tokens, other),
            StartMinute = start?.Minute,
            SinceMinute = since is null ? null : SinceMorning(tokens, since),
            SoakMin = soak?.Minutes,
            OutsideC = outside?.Celsius,
            InFahrenheit = outside?.InFahrenheit ?? false,
            HumidityPercent = Humidity(tokens),
            CloudFraction = SunReader.Clouds(tokens),
            LatitudeDeg = Latitude(tokens),
            Shade = SunReader.Shade(tokens),
            Cover = SunReader.Cover(tokens),
            HeadingDeg = SunReader.Heading(tokens),
            Adults = people.Adults,
            Children = people.Children,
            Animals = people.Animals,
            ShutIn = tokens.Any(t => t.Word is "locked" or "trapped" or "childlock" or "childlocks" or "unattended") || (tokens.Any(t => t.Word is "open") && tokens.Any(t => t.Word is "door" or "doors") && tokens.Any(t => t.Word is "not" or "nobody" or "none" or "no")),
            RollMin = other is { Minutes: < LongestTakeMin } ? other.Minutes : null,
            Limit = Limit(tokens),
            DayMin = other is { Minutes: >= LongestTakeMin } ? other.Minutes : null,
            SetPointC = setPoint?.Celsius,
            Earlier = tokens.Any(t => t.Is("earlier")),
        };
    }

    // "In the sun since 6:45" began in the morning: judgement, from five on.
    private static int SinceMorning(IReadOnlyList<Token> tokens, ClockSaid since) =>
        since.Minute is >= 17 * 60 and < 19 * 60 && !ClockReader.SaysHalf(tokens, since) && !tokens.Skip(since.Start).Take(1).Any(t => t.Word.StartsWith('1')) ? since.Minute - (12 * 60) : since.Minute;

    private static HeatAspect Aspect(IReadOnlyList<Token> tokens, DurationSaid? take)
    {
        bool Any(params string[] words) => tokens.Any(t => t.Number is null && words.Contains(t.Word));
        bool shade = Any("shade", "popup", "canopy", "cover", "covers", "tree", "trees", "blankets", "earlier", "later", "covering", "shading", "shaded") || Any("park", "parking") && Any("under", "beneath", "gain", "gains");
        if (shade && tokens.Any(t => t.IsAny(Buying)) && !Any("long", "hot", "warm") && (!Any("if", "whatif") || Any("gain", "gains", "buy", "buys")) && Any("would", "does", "what", "how", "will", "do", "is"))
        {
            return HeatAspect.Gains;
        }

        if (shade && Any("longer", "extra") && Any("how", "what"))
        {
            return HeatAspect.Gains;
        }

        // "How long until it gets too hot" asks for the take, not the temperature.
        if (Any("how") && Any("long") && Any("until", "till", "before") && Any("hot", "warm", "bad"))
        {
            return HeatAspect.Roll;
        }

        bool fanEarly = tokens.Any(t => t.IsAny(Lexicon.Fans)) && Any("early", "soon") && Any("how") && Any("start", "switch", "turn", "run");
        if (fanEarly || (Any("pre") && tokens.Any(t => t.IsAny(ForecastWords.Cooling))))
        {
            return HeatAspect.CoolFirst;
        }

        if (Any("rhythm", "routine", "rotation", "alternate", "schedule", "pattern", "cycle") || (Any("roll", "rolling") && tokens.Any(t => t.IsAny(ForecastWords.Cooling)) && Any("and")))
        {
            return HeatAspect.Rhythm;
        }

        bool longest = Any("max", "maximum", "longest", "limit") && Any("take", "takes", "roll", "rolling", "shot") && !tokens.Any(t => t.IsAny(ForecastWords.Cooling));
        if (longest)
        {
            return HeatAspect.Roll;
        }

        if (Any("between") && Any("takes", "setups", "rolls") || (Any("next") && Any("take") && tokens.Any(t => t.IsAny(ForecastWords.Cooling))))
        {
            return HeatAspect.Between;
        }

        bool cooling = tokens.Any(t => t.IsAny(ForecastWords.Cooling)) || (tokens.Any(t => t.IsAny(Lexicon.Fans)) && Any("before", "between", "first"));
        if (cooling && Any("between", "after", "gap", "gaps"))
        {
            return HeatAspect.Between;
        }

        if (cooling && (Any("first", "before", "need", "long", "much", "many", "must", "should", "have", "start") || tokens.Any(t => t.Word.StartsWith("precool", StringComparison.Ordinal))))
        {
            return HeatAspect.CoolFirst;
        }

        // "How long can she stay in the hot car" asks for the take; "90 F outside, what's it inside" for the temperature.
        bool stays = Any("how") && Any("long") && Any("can", "could", "may", "safe") && Any("stay", "sit", "be", "last", "stand", "take", "stick", "survive", "endure");
        if (stays)
        {
            return HeatAspect.Roll;
        }

        if (!Any("long", "many") && Any("what", "whats") && Any("inside", "cabin") && Any("reach", "reaches", "it", "get", "gets", "be", "like"))
        {
            return HeatAspect.HowHot;
        }

        if (Any("hot", "warm", "temperature", "temperatures", "temp", "temps", "hotter") && Any("how", "what", "whats", "get", "gets", "will", "after", "by", "inside", "cabin") || (Any("heat") && Any("bad") && Any("how")))
        {
            return HeatAspect.HowHot;
        }

        if (take is { Minutes: < LongestTakeMin } && Any("ok", "okay", "safe", "can", "fine", "may", "alright", "shut", "if", "could", "too"))
        {
            return HeatAspect.Enough;
        }

        return Any("long", "takes", "melt", "before", "when", "how") && !Any("whatabout") ? HeatAspect.Roll : HeatAspect.Any;
    }

    private static double? Humidity(IReadOnlyList<Token> tokens)
    {
        int at = IndexOf(tokens, "humidity", "humid", "rh");
        if (at < 0)
        {
            return null;
        }

        Token[] percent = [.. tokens.Where((t, i) => t.Number is >= 1 and <= 100 && Math.Abs(i - at) <= 4 && ((i + 1 < tokens.Count && tokens[i + 1].Is("percent")) || Math.Abs(i - at) <= 2))];
        return percent.Length > 0 ? (percent.FirstOrDefault(t => tokens.Where((n, i) => n.Is("percent") && i > 0 && ReferenceEquals(tokens[i - 1], t)).Any()) ?? percent[^1]).Number : null;
    }

    private static double? Latitude(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is not (>= 0 and <= 90))
            {
                continue;
            }

            IEnumerable<Token> after = tokens.Skip(i + 1).Take(2);
            bool south = after.Any(t => t.Word is "south" or "s"), north = after.Any(t => t.Word is "north" or "n");
            bool said = i > 0 && tokens[i - 1].Word is "latitude" or "lat";
            bool facing = tokens.Take(i).TakeLast(2).Any(t => t.Word is "facing" or "heading");
            if ((said || north || south) && !facing)
            {
                return south ? -tokens[i].Number : tokens[i].Number;
            }
        }

        return null;
    }

    // "until caution instead of comfort": the first named is meant.
    private static HeatLimitKind? Limit(IReadOnlyList<Token> tokens)
    {
        foreach (Token token in tokens)
        {
            switch (token.Word)
            {
                case "caution" or "warning" or "alert":
                    return HeatLimitKind.Caution;
                case "comfort":
                    return HeatLimitKind.Comfort;
            }
        }

        return null;
    }

    private static bool IsHour(IReadOnlyList<Token> tokens, TemperatureSaid t) => tokens[t.Index].Number is <= LastHour && t.Index == tokens.Count - 1 && Before(tokens, t.Index, "at");

    private static bool Before(IReadOnlyList<Token> tokens, int start, params string[] words) => tokens.Take(start).TakeLast(2).Any(t => words.Contains(t.Word));

    private static int IndexOf(IReadOnlyList<Token> tokens, params string[] words)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is null && words.Contains(tokens[i].Word))
            {
                return i;
            }
        }

        return -1;
    }
}
