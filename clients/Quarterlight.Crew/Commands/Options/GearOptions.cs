using Quarterlight.Crew.Language;
using static Quarterlight.Crew.Commands.ReadableOption;

namespace Quarterlight.Crew.Commands.Options;

/// <summary>Levels, batteries, media and clips. Bounds are those of placement_service.proto, endurance_service.proto, run_time.proto and clip.proto.</summary>
internal static class GearOptions
{
    private static readonly HashSet<string> BesideUntil = Lexicon.Words("until till to at the");
    private static readonly HashSet<string> SizeWords = Lexicon.Words("gb gig gigs gigabyte gigabytes tb terabyte terabytes card cards of");
    private static readonly HashSet<string> RateWords = Lexicon.Words("k khz hz at");

    public static readonly ReadableOption Effort = Choice("effort", "Loudest the voice will get",
        [("whisper", "whisper", "whispering"), ("relaxed", "relaxed", "relaxed"), ("normal", "normal", "normal voice"), ("raised", "raised", "raised"), ("loud", "loud", "loud voice"), ("shout", "shout", "shouting")],
        (text, said) => Levels(said, l => l with { Effort = LevelReader.Effort(text.Tokens) }));

    public static readonly ReadableOption Headroom = Number("headroom", "Headroom above the highest peak in dB; 6 when left out", 0, 30, whole: false, ["db"], (said, db) => Levels(said, l => l with { HeadroomDb = db }));

    public static readonly ReadableOption Wireless = Flag("wireless", "Yes for body-worn microphones on transmitters, no for cables", (said, on) => Levels(said, l => l with { Wireless = on }));

    public static readonly ReadableOption Until = Text("until", "When it must last until: \"18:30\", \"6 pm\", \"lunch\"", "say a time of day like \"18:30\", or \"lunch\"", (text, said) =>
    {
        if (text.Numbers.Count == 0 && text.HasOnly(BesideUntil, ["lunch"]))
        {
            return text.Tokens.Any(t => t.Is("lunch")) ? RunTime(said, r => r with { UntilLunch = true }) : OptionReading.NotUnderstood;
        }

        return HeatOptions.OneClock(text, BesideUntil) is { } clock ? RunTime(said, r => r with { UntilMinute = clock.Minute }) : OptionReading.NotUnderstood;
    });

    public static readonly ReadableOption For = HeatOptions.Duration("for", "How long it must last: \"10 hours\"", 1, 1440, "1 to 1440 min (24 hours)", (said, minutes) => RunTime(said, r => r with { NeedMin = minutes }));

    public static readonly ReadableOption BatteryTemperature = HeatOptions.Temperature("battery-temperature", "How warm the batteries are: \"5 C\", \"41 F\"; as outside when left out", -40, 80, "-40 to 80 °C (-40 to 176 °F)",
        (said, t) => RunTime(said, r => r with { BatteryC = t.Celsius }));

    public static readonly ReadableOption TakesOnly = Flag("takes-only", "Yes when it records in takes only, no when all the time", (said, on) => RunTime(said, r => r with { TakesOnly = on }));

    public static readonly ReadableOption Reserve = Number("reserve", "Share kept back for safety in percent; 20 when left out", 0, 60, whole: false, ["percent"], (said, percent) => RunTime(said, r => r with { MarginFraction = percent / 100 }));

    public static readonly ReadableOption Tracks = Number("tracks", "Tracks recorded; the kit's when left out", 1, 64, whole: true, ["tracks", "track"], (said, tracks) => RunTime(said, r => r with { TrackCount = (int)tracks }));

    public static readonly ReadableOption SampleRate = Text("sample-rate", "Samples a second: \"48 kHz\"; the kit's when left out", "say it like \"48 kHz\", 8 to 384 kHz", (text, said) =>
    {
        if (text.OnlyNumber(RateWords) is not { } number || !text.Tokens.Any(t => t.Word is "k" or "khz" or "hz"))
        {
            return OptionReading.NotUnderstood;
        }

        double hertz = Math.Round(text.Tokens.Any(t => t.Is("hz")) ? number : number * 1000);
        return OptionRange.Held(hertz, 8000, 384000, "8 to 384 kHz", RunTime(said, r => r with { SampleRateHz = (int)Math.Min(hertz, int.MaxValue) }));
    });

    public static readonly ReadableOption CardSize = Text("card-size", "Size of one card: \"256 GB\"; the kit's when left out", "say it like \"256 GB\", 0.5 to 16000 GB", (text, said) =>
    {
        if (text.OnlyNumber(SizeWords) is not { } number || !text.Tokens.Any(t => t.Word.StartsWith('g') || t.Word.StartsWith('t')))
        {
            return OptionReading.NotUnderstood;
        }

        double gigabytes = text.Tokens.Any(t => t.Word.StartsWith('t')) ? number * 1000 : number;
        return OptionRange.Held(gigabytes, 0.5, 16000, "0.5 to 16000 GB", RunTime(said, r => r with { CardSizeGb = gigabytes }));
    });

    public static readonly ReadableOption Cylinders = Number("cylinders", "Cylinders of the engine, for its speed out of the sound", 2, 12, whole: true, ["cylinders", "cylinder"], (said, n) => said with { Clip = said.Clip with { Cylinders = (int)n } });

    private static CommandSaid Levels(CommandSaid said, Func<LevelSaid, LevelSaid> change) => said with { Forecast = said.Forecast with { Levels = change(said.Forecast.Levels) } };

    private static CommandSaid RunTime(CommandSaid said, Func<RunTimeSaid, RunTimeSaid> change) => said with { Forecast = said.Forecast with { RunTime = change(said.Forecast.RunTime) } };
}
