namespace Quarterlight.Crew.Language;

/// <summary>Reads what a question says about batteries and media.</summary>
public static class RunTimeReader
{
    /// <summary>Everything said.</summary>
    /// <param name="text">The question as typed.</param>
    /// <param name="tokens">Its words.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="talking">True when run time is being talked about, so that a bare "at 5" is a temperature.</param>
    public static RunTimeSaid Read(string text, IReadOnlyList<Token> tokens, UnitPreference units, bool talking)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tokens);
        bool cold = talking || tokens.Any(t => t.IsAny(ForecastWords.Batteries));
        IReadOnlyList<DurationSaid> durations = DurationReader.Find(tokens);
        ClockSaid? until = ClockReader.Find(tokens, tokens.Any(t => t.Word is "until" or "till")).FirstOrDefault(c => tokens.Take(c.Start).TakeLast(2).Any(t => t.Word is "until" or "till" or "to"));
        IReadOnlyList<TemperatureSaid> temperatures = TemperatureReader.Find(text, tokens, units, cold);
        return new RunTimeSaid
        {
            Aspect = Aspect(tokens, durations.Count > 0 || until is not null),
            NeedMin = durations.Count > 0 ? durations[0].Minutes : null,
            UntilMinute = until is null ? null : UntilEvening(tokens, until),
            UntilLunch = tokens.Any(t => t.Word is "lunch" or "dinner" && t.Number is null),
            BatteryC = temperatures.Count > 0 ? temperatures[0].Celsius : null,
            MarginFraction = Margin(tokens),
            TakesOnly = TakesOnly(tokens),
            Thing = Thing(tokens),
            TrackCount = Before(tokens, "track", "tracks") is { } tracks and >= 1 and <= 64 ? (int)tracks : null,
            SampleRateHz = SampleRate(tokens),
            CardSizeGb = Before(tokens, "tb", "terabyte", "terabytes") * 1000 ?? Before(tokens, "gb", "gig", "gigs", "gigabyte", "gigabytes"),
        };
    }

    // "Until half seven": a shooting day ends in the evening, so 7 to 9 are the evening's (judgement).
    private static int UntilEvening(IReadOnlyList<Token> tokens, ClockSaid until) =>
        until.Minute is >= 7 * 60 and < 10 * 60 && !ClockReader.SaysHalf(tokens, until) ? until.Minute + (12 * 60) : until.Minute;

    private static RunTimeAspect Aspect(IReadOnlyList<Token> tokens, bool length)
    {
        bool Any(params string[] words) => tokens.Any(t => t.Number is null && words.Contains(t.Word));
        if (Any("swaps") || Any("swap", "change", "changes", "replace", "swapping", "swapped", "changing", "changed", "replacing", "replaced") && Any("when", "how", "what", "time", "times", "often", "schedule", "plan", "list", "sheet"))
        {
            return RunTimeAspect.Swaps;
        }

        if (Any("space", "storage") && tokens.Any(t => t.IsAny(ForecastWords.Media)))
        {
            return RunTimeAspect.Cards;
        }

        if (length || Any("lunch", "wrap", "dinner") || (Any("enough") && !Any("many")))
        {
            return RunTimeAspect.Lasts;
        }

        return tokens.Any(t => t.IsAny(ForecastWords.Media)) || Any("space") ? RunTimeAspect.Cards : tokens.Any(t => t.IsAny(ForecastWords.Batteries)) ? RunTimeAspect.Batteries : RunTimeAspect.Any;
    }

    // "Cards" are an aspect of their own.
    private static string? Thing(IReadOnlyList<Token> tokens) => tokens.Select(t => t.Word switch
    {
        "recorder" or "mixer" => "recorder",
        "bodypack" or "bodypacks" or "beltpack" or "beltpacks" or "pack" or "packs" => "pack",
        "transmitter" or "transmitters" => "transmitter",
        "receiver" or "receivers" => "receiver",
        "lamp" or "lamps" or "light" or "lights" => "light",
        _ => null,
    }).FirstOrDefault(t => t is not null);

    private static bool? TakesOnly(IReadOnlyList<Token> tokens)
    {
        bool Any(params string[] words) => tokens.Any(t => t.Number is null && words.Contains(t.Word));
        return Any("takes", "take") && Any("only", "just", "during", "in", "for") ? true
            : Any("continuous", "continuously", "nonstop", "unattended") || (Any("all") && Any("day", "time")) ? false : null;
    }

    private static double? Margin(IReadOnlyList<Token> tokens)
    {
        if (!tokens.Any(t => t.Word is "reserve" or "margin" or "spare" or "hand"))
        {
            return null;
        }

        return tokens.Any(t => t.Word is "no" or "without") ? 0 : Before(tokens, "percent") is { } percent and >= 0 and <= 100 ? percent / 100 : null;
    }

    // "96k", "96 kHz", "48000 Hz".
    private static int? SampleRate(IReadOnlyList<Token> tokens)
    {
        double? thousands = Before(tokens, "k", "khz"), hertz = Before(tokens, "hz");
        return thousands is >= 8 and <= 384 ? (int)Math.Round(thousands.Value * 1000) : hertz is >= 8000 and <= 384000 ? (int)hertz.Value : null;
    }

    private static double? Before(IReadOnlyList<Token> tokens, params string[] units)
    {
        for (int i = 1; i < tokens.Count; i++)
        {
            if (tokens[i].Number is null && units.Contains(tokens[i].Word) && tokens[i - 1].Number is { } number)
            {
                return number;
            }
        }

        return null;
    }
}
