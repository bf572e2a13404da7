using Quarterlight.Crew.Commands;

namespace Quarterlight.Crew.Keeping;

/// <summary>Commands that change what the team keeps: scenes, cars, kits and settings.</summary>
public static class KeepingCommands
{
    private static readonly CrewOption Confirm = new("confirm", "Yes removes it; without it you are asked first", CrewOptionKind.Flag);
    private static readonly CrewOption File = new("file", "A file from \"export\", .json, at most 256 KiB", CrewOptionKind.File) { Required = true };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<CrewCommand> All { get; } =
    [
        New("scene", "Describe a new scene in a short form: who talks, cameras, driving",
            new("car", "Car to start with", CrewOptionKind.Cabin), new("kit", "Kit to start with", CrewOptionKind.Kit)),
        Edit("scene", "Change a scene in the same form", CrewOptionKind.Scene),
        Remove("scene", "Remove a scene", CrewOptionKind.Scene),
        new("scene export", "Get a scene as a file, for safe keeping or another team",
        [
            Thing("scene", CrewOptionKind.Scene),
            new("alone", "Yes leaves out its car and kit; they go along otherwise", CrewOptionKind.Flag),
        ]),
        Import("scene", "Take in a scene from a file, with its car and kit if they are in it"),

        New("car", "Describe a new car: shape, driver's side, tape measurements if you have them"),
        Edit("car", "Change a car in the same form", CrewOptionKind.Cabin),
        Remove("car", "Remove a car that no scene uses", CrewOptionKind.Cabin),
        new("car export", "Get a car as a file", [Thing("car", CrewOptionKind.Cabin)]),
        Import("car", "Take in a car from a file"),

        New("kit", "Describe a new kit: microphones, fixings, recorder inputs"),
        Edit("kit", "Change a kit in the same form", CrewOptionKind.Kit),
        Remove("kit", "Remove a kit that no scene uses", CrewOptionKind.Kit),
        new("kit export", "Get a kit as a file", [Thing("kit", CrewOptionKind.Kit)]),
        Import("kit", "Take in a kit from a file"),

        new("settings show", "Units, country and clip limits of the team", []),
        new("settings units", "Metric or imperial for the whole team",
        [
            new("units", "Metric or imperial", CrewOptionKind.Text) { Required = true, Choices = [new("centimetres, metres, km/h", "metric"), new("inches, feet, mph", "imperial")] },
        ]) { Changes = true },
        new("settings country", "Country whose radio rules hold unless you name another",
        [
            new("country", "A country, such as France; \"none\" forgets it", CrewOptionKind.Text) { Required = true },
        ]) { Changes = true },
        new("settings clip-limits", "From where a clip is used with care or redone: shown, set or back to the defaults",
        [
            new("limit", "In words: \"speech over noise 18 dB\", \"hum 12 dB\", \"defaults\"; empty shows them", CrewOptionKind.Text),
        ]) { Changes = true },
    ];

    private static CrewOption Thing(string name, CrewOptionKind kind) => new(name, $"Name or id of the {name}", kind) { Required = true };

    private static CrewCommand New(string what, string description, params CrewOption[] options) => new($"{what} new", description, options) { OpensForm = true, Changes = true };

    private static CrewCommand Edit(string what, string description, CrewOptionKind kind) => new($"{what} edit", description, [Thing(what, kind)]) { OpensForm = true, Changes = true };

    private static CrewCommand Remove(string what, string description, CrewOptionKind kind) => new($"{what} remove", description, [Thing(what, kind), Confirm]) { Changes = true };

    private static CrewCommand Import(string what, string description) => new($"{what} import", description, [File]) { Changes = true };
}
