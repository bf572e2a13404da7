using Quarterlight.Crew.Language;
using static Quarterlight.Crew.Commands.ReadableOption;

namespace Quarterlight.Crew.Commands.Options;

/// <summary>How the car is driven.</summary>
internal static class DriveOptions
{
    // scene.proto, DriveConditions.speed_km_per_hour.
    private const double FastestKmPerHour = 130;

    private static readonly string[] SpeedWords = ["mph", "kmh", "kph", "at", "about", "doing", "speed"];
    private static readonly HashSet<string> Standing = Lexicon.Words("parked stationary standing stopped idle idling still");

    public static readonly ReadableOption Speed = Text("speed", "Road speed: \"60 km/h\", \"40 mph\" or \"parked\"", "say it like \"60 km/h\", \"40 mph\" or \"parked\", up to 130 km/h (80 mph)", (text, said) =>
    {
        if (text.Numbers.Count == 0 && text.HasOnly(Standing))
        {
            return said with { Drive = Over(ConditionReader.Read(text.Tokens, said.Units), said) };
        }

        if (text.OnlyNumber(SpeedWords) is not { } number)
        {
            return OptionReading.NotUnderstood;
        }

        // A bare small number is no speed in a question, but it can be nothing else here.
        double speed = QuantityReader.SpeedKmPerHour(text.Behind("doing"), said.UnitsNamed ?? said.Units) ?? (said.Units == UnitPreference.Imperial ? number * QuantityReader.KilometresPerMile : number);
        return OptionRange.Held(speed, 0, FastestKmPerHour, "0 to 130 km/h (80 mph)", said with { Drive = said.Drive with { SpeedKmPerHour = speed } });
    });

    public static readonly ReadableOption Windows = Condition("windows", "All windows",
        ("shut", "shut", "windows shut"), ("a crack", "a crack", "windows open a crack"), ("half down", "half", "windows half down"), ("all the way down", "down", "windows down"));

    public static readonly ReadableOption Road = Condition("road", "Road surface",
        ("smooth asphalt", "smooth", "smooth asphalt road"), ("coarse or worn asphalt", "coarse", "coarse road"), ("concrete", "concrete", "concrete road"), ("gravel", "gravel", "gravel road"), ("cobbles", "cobbles", "cobbles"));

    public static readonly ReadableOption Rain = Condition("rain", "Rain",
        ("dry", "dry", "dry"), ("light rain", "light", "light rain"), ("heavy rain", "heavy", "heavy rain"));

    public static readonly ReadableOption Fan = Condition("fan", "Fan of the car's air",
        ("off", "off", "fan off"), ("step 1, low", "1", "fan step 1"), ("step 2", "2", "fan step 2"), ("step 3", "3", "fan step 3"), ("step 4, full", "4", "fan step 4"));

    public static readonly ReadableOption Engine = Condition("engine", "Engine",
        ("running", "running", "engine running"), ("off", "off", "engine off"));

    private static ReadableOption Condition(string name, string description, params (string Name, string Value, string Words)[] choices) =>
        Choice(name, description, choices, (text, said) => said with { Drive = Over(ConditionReader.Read(text.Tokens, said.Units), said) });

    private static ConditionChanges Over(ConditionChanges read, CommandSaid said) => read.Over(said.Drive);
}
