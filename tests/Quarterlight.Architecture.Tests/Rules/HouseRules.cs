namespace Quarterlight.Architecture.Tests.Rules;

/// <summary>The arrows of the house, each as a rule.</summary>
internal static class HouseRules
{
    // Files, network, processes, console, environment and clocks: a domain room computes, it does not reach out.
    private static readonly string[] OutsideWorld =
    [
        "System.IO.", "System.Net.", "System.Data.", "System.Console", "System.Diagnostics.Process", "System.Environment",
        "System.Threading.Timer", "System.Diagnostics.Stopwatch",
    ];

    // Every room but the platform's own and the tools of the tests.
    private static readonly string[] Rooms =
    [
        "Quarterlight.Quantities", "Quarterlight.Cabin", "Quarterlight.Acoustics", "Quarterlight.Placement", "Quarterlight.Radio", "Quarterlight.Endurance",
        "Quarterlight.Clips", "Quarterlight.Store", "Quarterlight.Drawing", "Quarterlight.Audio", "Quarterlight.Tagger", "Quarterlight.Training",
        "Quarterlight.Planner", "Quarterlight.Crew", "Quarterlight.CrewBot",
    ];

    // Which other rooms each domain room may look at.
    private static readonly Dictionary<string, string[]> RoomsBelow = new()
    {
        ["Quarterlight.Quantities"] = [],
        ["Quarterlight.Cabin"] = ["Quarterlight.Quantities"],
        ["Quarterlight.Acoustics"] = ["Quarterlight.Quantities"],
        ["Quarterlight.Placement"] = ["Quarterlight.Quantities", "Quarterlight.Cabin", "Quarterlight.Acoustics"],
        ["Quarterlight.Radio"] = ["Quarterlight.Quantities"],
        ["Quarterlight.Endurance"] = ["Quarterlight.Quantities"],
        ["Quarterlight.Clips"] = ["Quarterlight.Quantities"],
    };

    /// <summary>A domain room looks at itself, the rooms below it, numeric packages and the base library without the outside world.</summary>
    /// <exception cref="KeyNotFoundException">A new room has no line in the table of arrows.</exception>
    public static DependencyRule Domain(string room) => new(
        [
            room + ".", .. RoomsBelow[room].Select(r => r + "."), "System.", "MathNet.Numerics.",
            // What the compiler writes into every assembly.
            "Microsoft.CodeAnalysis.Embedded", "<PrivateImplementationDetails>", "<>", "Coverlet.",
        ],
        OutsideWorld);

    /// <summary>Only the host and the clients see the wire's generated types.</summary>
    public static DependencyRule NoWireTypes { get; } = new([""], ["Quarterlight.V1.", "Google.Protobuf.", "Grpc."]);

    /// <summary>The crew's answers know neither a transport nor a service, only the contract.</summary>
    public static DependencyRule CrewKnowsOnlyTheContract { get; } = new(
        [""],
        [
            "Quarterlight.Planner.", "Quarterlight.Store.", "Quarterlight.Drawing.", "Quarterlight.Audio.", "Quarterlight.Tagger.", "Quarterlight.Quantities.", "Quarterlight.Cabin.",
            "Quarterlight.Acoustics.", "Quarterlight.Placement.", "Quarterlight.Radio.", "Quarterlight.Endurance.", "Quarterlight.Clips.", "Quarterlight.CrewBot.", "System.Console", "System.Net.", "Grpc.Net.",
            "Microsoft.AspNetCore.", "Spectre.", "System.CommandLine.",
        ]);

    /// <summary>The crew's process may start the host, and sees nothing behind it.</summary>
    public static DependencyRule CrewBotSeesOnlyTheHost { get; } = new(
        [""],
        [
            "Quarterlight.Store.", "Quarterlight.Drawing.", "Quarterlight.Audio.", "Quarterlight.Tagger.", "Quarterlight.Quantities.", "Quarterlight.Cabin.",
            "Quarterlight.Acoustics.", "Quarterlight.Placement.", "Quarterlight.Radio.", "Quarterlight.Endurance.", "Quarterlight.Clips.",
        ]);

    /// <summary>The chat platform's side knows nothing of what it carries: no other room, and not the wire of the planner.</summary>
    public static DependencyRule DiscordKnowsOnlyItself { get; } = new([""], [.. Rooms.Select(r => r + "."), "Quarterlight.V1.", "Google.Protobuf.", "Grpc."]);

    /// <summary>Only the crew's process knows which chat platform there is.</summary>
    public static DependencyRule NobodyKnowsThePlatform { get; } = new([""], ["Quarterlight.Discord."]);

    /// <summary>Nobody but the crew's process looks into the host.</summary>
    public static DependencyRule NobodyLooksUp { get; } = new([""], ["Quarterlight.Planner.", "Quarterlight.Crew.", "Quarterlight.CrewBot."]);

    /// <summary>Only the tagger and its training know machine learning packages.</summary>
    public static DependencyRule NoMachineLearning { get; } = new([""], ["Microsoft.ML."]);
}
