using Quarterlight.Crew.Language;
using static Quarterlight.Crew.Commands.ReadableOption;

namespace Quarterlight.Crew.Commands.Options;

/// <summary>Heat in the car. Bounds are those of heat.proto.</summary>
internal static class HeatOptions
{
    private static readonly HashSet<string> BesideClock = Lexicon.Words("at from since the in about");
    private static readonly string[] Degrees = ["c", "f", "celsius", "fahrenheit", "centigrade", "degree", "degrees", "deg", "degs", "out", "outside", "minus", "at", "to"];
    private static readonly HashSet<string> BesideDuration = Lexicon.Words("for about of a the take long");
    private static readonly HashSet<string> BesidePeople = Lexicon.Words("a an one another no and with plus couple of us nobody empty in the");

    public static readonly ReadableOption Start = Clock("start", "Local time the shooting starts: \"14:00\", \"2 pm\"", (said, minute) => Heat(said, h => h with { StartMinute = minute }));

    public static readonly ReadableOption ParkedSince = Clock("parked-since", "Time since when the car stands shut: \"9:30\"", (said, minute) => Heat(said, h => h with { SinceMinute = minute }));

    public static readonly ReadableOption ParkedFor = Duration("parked-for", "How long the car stood shut: \"90 min\", \"2 hours\"", 0, 600, "0 to 600 min (10 hours)", (said, minutes) => Heat(said, h => h with { SoakMin = minutes }));

    public static readonly ReadableOption Roll = Duration("roll", "Length of a take: \"20 min\"", 0.5, 240, "0.5 to 240 min (4 hours)", (said, minutes) => Heat(said, h => h with { RollMin = minutes }));

    public static readonly ReadableOption Day = Duration("day", "How long the shooting lasts: \"6 hours\"", 10, 720, "10 to 720 min (12 hours)", (said, minutes) => Heat(said, h => h with { DayMin = minutes }));

    public static readonly ReadableOption Outside = Temperature("outside", "Air temperature outside in the shade: \"35 C\", \"95 F\"", -30, 55, "-30 to 55 °C (-22 to 131 °F)",
        (said, t) => Heat(said, h => h with { OutsideC = t.Celsius, InFahrenheit = t.InFahrenheit }));

    public static readonly ReadableOption CoolTo = Temperature("cool-to", "What the car is cooled to between takes: \"19 C\", \"66 F\"", 5, 30, "5 to 30 °C (41 to 86 °F)",
        (said, t) => Heat(said, h => h with { SetPointC = t.Celsius }));

    public static readonly ReadableOption Humidity = Number("humidity", "Relative humidity outside in percent", 1, 100, whole: false, ["percent", "humidity"], (said, percent) => Heat(said, h => h with { HumidityPercent = percent }));

    public static readonly ReadableOption Clouds = Choice("clouds", "Sky", [("clear", "clear", "clear sky"), ("half cloudy", "half", "half cloudy"), ("overcast", "overcast", "overcast")],
        (text, said) => Heat(said, h => h with { CloudFraction = SunReader.Clouds(text.Tokens) }));

    public static readonly ReadableOption Shade = Choice("shade", "Shade over the car while it stands",
        [("none, full sun", "none", "full sun"), ("pop-up or awning", "pop-up", "under the pop-up"), ("broken, under trees", "trees", "in the broken shade of trees"), ("full, as in a garage", "full", "in full shade")],
        (text, said) => Heat(said, h => h with { Shade = SunReader.Shade(text.Tokens) }));

    public static readonly ReadableOption Cover = Choice("cover", "Reflecting covers on the glass between takes",
        [("none", "none", "no cover"), ("windscreen", "windscreen", "windscreen cover"), ("all the glass", "all", "covers on all the glass")],
        (text, said) => Heat(said, h => h with { Cover = SunReader.Cover(text.Tokens) }));

    public static readonly ReadableOption Facing = Choice("facing", "Where the bonnet points",
        [.. new[] { "north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest" }.Select(w => (w, w, "facing " + w))],
        (text, said) => Heat(said, h => h with { HeadingDeg = SunReader.Heading(text.Tokens) }));

    public static readonly ReadableOption People = Text("people", "Who is in the car: \"3\", \"2 adults, 1 child, a dog\"; the scene's when left out", "say it like \"3\" or \"2 adults, 1 child, a dog\", at most 9 of each", (text, said) =>
    {
        if (text.Minus || !text.HasOnly(BesidePeople, PeopleReader.Words))
        {
            return OptionReading.NotUnderstood;
        }

        bool bare = text.Tokens is [{ Number: not null }];
        IReadOnlyList<Token> tokens = bare ? [.. text.Tokens, new Token("people")] : text.Tokens;
        PeopleSaid people = PeopleReader.Read(tokens);
        bool counted = text.Numbers.Sum() <= (people.Adults ?? 0) + (people.Children ?? 0) + (people.Animals ?? 0) && !text.Numbers.Any(n => n != Math.Floor(n));
        return text.Numbers.Any(n => n > PeopleReader.Most) ? OptionReading.Refused("is out of range, at most 9 of each")
            : people.IsEmpty || !counted ? OptionReading.NotUnderstood
            : Heat(said, h => h with { Adults = people.Adults, Children = people.Children, Animals = people.Animals });
    });

    public static readonly ReadableOption LockedIn = Flag("locked-in", "Yes when nobody in the car can open a door", (said, on) => Heat(said, h => h with { ShutIn = on }));

    public static readonly ReadableOption Limit = Choice("keep-to", "Which limit the takes keep to", [("comfort", "comfort", "comfort"), ("caution", "caution", "caution")],
        (text, said) => Heat(said, h => h with { Limit = text.Tokens[0].Is("caution") ? V1.HeatLimitKind.Caution : V1.HeatLimitKind.Comfort }));

    /// <summary>A time of day, all of which must be one.</summary>
    public static ClockSaid? OneClock(OptionText text, IReadOnlySet<string> beside)
    {
        IReadOnlyList<Token> tokens = text.Behind("at");
        return text.IsPlain && !text.Minus && ClockReader.Find(tokens, bare: true) is [var clock] && text.HasOnlyBeside(clock.Start - 1, clock.Count, beside) ? clock : null;
    }

    /// <summary>A length of time, all of which must be one.</summary>
    public static DurationSaid? OneDuration(OptionText text, IReadOnlySet<string> beside) =>
        text.IsPlain && !text.Minus && DurationReader.Find(text.Tokens) is [var one] && text.HasOnlyBeside(one.Start, one.Count, beside) ? one : null;

    public static ReadableOption Temperature(string name, string description, double least, double most, string range, Func<CommandSaid, TemperatureSaid, CommandSaid> set) => Text(name, description, $"say it like \"20 C\" or \"68 F\", {range}", (text, said) =>
        text.Numbers.Count == 1 && text.HasOnly(Degrees) && TemperatureReader.Find(text.Text, text.Tokens.Any(t => t.Is("minus")) ? text.Tokens : text.Behind("at"), said.UnitsNamed ?? said.Units, bare: true) is [var one]
            ? OptionRange.Held(one.Celsius, least, most, range, set(said, one)) : OptionReading.NotUnderstood);

    private static ReadableOption Clock(string name, string description, Func<CommandSaid, int, CommandSaid> set) => Text(name, description, "say a time of day like \"14:00\" or \"2 pm\"", (text, said) =>
        OneClock(text, BesideClock) is { } clock ? set(said, clock.Minute) : OptionReading.NotUnderstood);

    public static ReadableOption Duration(string name, string description, double least, double most, string range, Func<CommandSaid, double, CommandSaid> set) => Text(name, description, $"say it like \"20 min\" or \"2 hours\", {range}", (text, said) =>
        OneDuration(text, BesideDuration) is { } length ? OptionRange.Held(length.Minutes, least, most, range, set(said, length.Minutes)) : OptionReading.NotUnderstood);

    private static CommandSaid Heat(CommandSaid said, Func<HeatSaid, HeatSaid> change) => said with { Forecast = said.Forecast with { Heat = change(said.Forecast.Heat) } };
}
