namespace Quarterlight.Crew.Commands;

/// <summary>What an option of a command takes.</summary>
public enum CrewOptionKind
{
    /// <summary>Text in plain words, such as a distance with its unit.</summary>
    Text,

    /// <summary>A whole number.</summary>
    WholeNumber,

    /// <summary>A number.</summary>
    Number,

    /// <summary>Yes or no.</summary>
    Flag,

    /// <summary>One of the team's scenes, by name or id.</summary>
    Scene,

    /// <summary>One of the team's cars, by name or id.</summary>
    Cabin,

    /// <summary>One of the team's kits, by name or id.</summary>
    Kit,

    /// <summary>A mount site, in words.</summary>
    Site,

    /// <summary>A talker of the scene.</summary>
    Talker,

    /// <summary>A file.</summary>
    File,
}

/// <summary>A choice offered for an option.</summary>
/// <param name="Name">What is shown; at most 100 characters.</param>
/// <param name="Value">What is sent; at most 100 characters.</param>
public sealed record CrewChoice(string Name, string Value);

/// <summary>An option of a command.</summary>
/// <param name="Name">Lower-case letters and dashes, 1 to 32 characters. The same thing has the same name in every command.</param>
/// <param name="Description">What it is, with its unit or an example; at most 100 characters.</param>
/// <param name="Kind">What it takes.</param>
public sealed record CrewOption(string Name, string Description, CrewOptionKind Kind)
{
    /// <summary>True when it must be given.</summary>
    public bool Required { get; init; }

    /// <summary>The only values it takes; empty for any. Never together with completion.</summary>
    public IReadOnlyList<CrewChoice> Choices { get; init; } = [];

    /// <summary>Least value of a number; null for none.</summary>
    public double? Least { get; init; }

    /// <summary>Greatest value of a number; null for none.</summary>
    public double? Most { get; init; }

    /// <summary>True when choices are offered while it is typed.</summary>
    public bool Completes => Kind is CrewOptionKind.Scene or CrewOptionKind.Cabin or CrewOptionKind.Kit or CrewOptionKind.Site or CrewOptionKind.Talker;
}

/// <summary>Something the crew can tell the desk to do, the same in every transport.</summary>
/// <param name="Name">One or two words of lower-case letters: "plan", "scene new".</param>
/// <param name="Description">What it answers; at most 100 characters.</param>
/// <param name="Options">Its options, required ones first.</param>
public sealed record CrewCommand(string Name, string Description, IReadOnlyList<CrewOption> Options)
{
    /// <summary>True when the answer is for the asker alone even when all goes well.</summary>
    public bool Private { get; init; }

    /// <summary>True when it may open a form instead of answering.</summary>
    public bool OpensForm { get; init; }

    /// <summary>What it is called in the menu of a message with a file; null when it is not offered there.</summary>
    public string? MessageMenuName { get; init; }

    /// <summary>True when it changes what the whole team keeps.</summary>
    public bool Changes { get; init; }
}

/// <summary>A command as given. All text is untrusted.</summary>
/// <param name="Name">Name of the command.</param>
/// <param name="Values">Options given, by name; numbers in invariant form, flags as true or false.</param>
public sealed record CrewCommandCall(string Name, IReadOnlyDictionary<string, string> Values)
{
    /// <summary>The file given; null when none was.</summary>
    public CrewAttachment? File { get; init; }
}
