using Quarterlight.Architecture.Tests.Offenders;
using Quarterlight.Architecture.Tests.Rules;

namespace Quarterlight.Architecture.Tests;

/// <summary>Dependencies point one way.</summary>
public sealed class ArrowTests
{
    public static TheoryData<string> DomainRooms => [.. House.DomainRooms];

    public static TheoryData<string> RoomsWithoutTheWire =>
        [.. House.Projects.Keys.Where(p => p.StartsWith("Quarterlight.", StringComparison.Ordinal) && !IsOnTheWire(p)).Order()];

    // The offline trainer learns from questions as the crew's own readers see them.
    public static TheoryData<string> RoomsThatLookDown =>
        [.. House.Projects.Keys.Where(p => p.StartsWith("Quarterlight.", StringComparison.Ordinal) && !IsOnTheWire(p) && p != "Quarterlight.Training").Order()];

    public static TheoryData<string> RoomsWithoutModels =>
        [.. House.Projects.Keys.Where(p => p is not ("Quarterlight.Tagger" or "Quarterlight.Training" or "Quarterlight.Protos")).Order()];

    public static TheoryData<string> RoomsWithoutThePlatform =>
        [.. House.Projects.Keys.Where(p => p is not ("Quarterlight.CrewBot" or "Quarterlight.Discord" or "Quarterlight.Protos")).Order()];

    public static TheoryData<string> RoomsWithoutTelemetry =>
        [.. House.Projects.Keys.Where(p => p is not ("Quarterlight.Telemetry" or "Quarterlight.Planner" or "Quarterlight.CrewBot" or "Quarterlight.Protos")).Order()];

    public static TheoryData<Type, string> DomainOffenders => new()
    {
        { typeof(ReadsAFile), "System.IO.File" },
        { typeof(AsksTheNetwork), "System.Net.Http.HttpClient" },
        { typeof(PrintsToTheConsole), "System.Console" },
        { typeof(LogsInTheDomain), "Microsoft.Extensions.Logging.ILogger" },
        { typeof(OpensADatabase), "LiteDB.BsonDocument" },
        { typeof(AsksATrainedModel), "Microsoft.ML.MLContext" },
        { typeof(SpeaksTheWire), "Quarterlight.V1.Cabin" },
        { typeof(AcousticsThatKnowsPlacement), "Quarterlight.Placement.PlacementOptions" },
    };

    [Theory]
    [MemberData(nameof(DomainRooms))]
    public void DomainRoom_LooksOnlyAtRoomsBelow(string room)
    {
        Assert.NotEmpty(House.TypesOf(room));
        Offences.None(HouseRules.Domain(room).Offences(House.TypesOf(room)));
    }

    [Theory]
    [MemberData(nameof(DomainOffenders))]
    public void DomainRule_PlantedOffender_IsCaught(Type offender, string culprit) =>
        Assert.Contains($"{offender.FullName} looks at {culprit}", HouseRules.Domain("Quarterlight.Acoustics").Offences(House.Offender(offender)));

    [Fact]
    public void DomainRule_LookAtAllowedRoom_Passes() =>
        Offences.None(HouseRules.Domain("Quarterlight.Placement").Offences(House.Offender(typeof(AcousticsThatKnowsPlacement))));

    [Theory]
    [MemberData(nameof(RoomsWithoutTheWire))]
    public void RoomBehindTheHost_KnowsNoWireTypes(string room) => Offences.None(HouseRules.NoWireTypes.Offences(House.TypesOf(room)));

    [Fact]
    public void WireRule_PlantedOffender_IsCaught() => Assert.NotEmpty(HouseRules.NoWireTypes.Offences(House.Offender(typeof(SpeaksTheWire))));

    [Theory]
    [MemberData(nameof(RoomsThatLookDown))]
    public void RoomBehindTheHost_DoesNotLookUp(string room) => Offences.None(HouseRules.NobodyLooksUp.Offences(House.TypesOf(room)));

    [Fact]
    public void LookUpRule_PlantedOffender_IsCaught() =>
        Assert.NotEmpty(HouseRules.NobodyLooksUp.Offences(House.Offender(typeof(CrewThatReachesIntoTheHost))));

    [Theory]
    [MemberData(nameof(RoomsWithoutModels))]
    public void RoomOutsideTheTagger_KnowsNoMachineLearning(string room) => Offences.None(HouseRules.NoMachineLearning.Offences(House.TypesOf(room)));

    [Fact]
    public void MachineLearningRule_PlantedOffender_IsCaught() =>
        Assert.NotEmpty(HouseRules.NoMachineLearning.Offences(House.Offender(typeof(AsksATrainedModel))));

    [Theory]
    [MemberData(nameof(RoomsWithoutTelemetry))]
    public void RoomThatIsNoProcess_KnowsNoTelemetry(string room) => Offences.None(HouseRules.NoTelemetry.Offences(House.TypesOf(room)));

    [Fact]
    public void TelemetryRule_PlantedOffender_IsCaught() => Assert.NotEmpty(HouseRules.NoTelemetry.Offences(House.Offender(typeof(WatchesItself))));

    [Fact]
    public void Crew_KnowsOnlyTheContract() =>
        Offences.None(Projects("Quarterlight.Crew").SelectMany(p => HouseRules.CrewKnowsOnlyTheContract.Offences(House.TypesOf(p))));

    [Theory]
    [InlineData(typeof(CrewThatReachesIntoTheHost))]
    [InlineData(typeof(BotThatReachesIntoTheStore))]
    [InlineData(typeof(PrintsToTheConsole))]
    [InlineData(typeof(AsksTheNetwork))]
    public void CrewRule_PlantedOffender_IsCaught(Type offender) =>
        Assert.NotEmpty(HouseRules.CrewKnowsOnlyTheContract.Offences(House.Offender(offender)));

    [Fact]
    public void CrewBot_SeesOnlyTheHost() =>
        Offences.None(Projects("Quarterlight.CrewBot").SelectMany(p => HouseRules.CrewBotSeesOnlyTheHost.Offences(House.TypesOf(p))));

    [Fact]
    public void CrewBotRule_HostOptions_Pass() =>
        Offences.None(HouseRules.CrewBotSeesOnlyTheHost.Offences(House.Offender(typeof(CrewThatReachesIntoTheHost))));

    [Fact]
    public void CrewBotRule_PlantedOffender_IsCaught() =>
        Assert.NotEmpty(HouseRules.CrewBotSeesOnlyTheHost.Offences(House.Offender(typeof(BotThatReachesIntoTheStore))));

    [Fact]
    public void Discord_KnowsOnlyItself()
    {
        Assert.NotEmpty(House.TypesOf("Quarterlight.Discord"));
        Offences.None(HouseRules.DiscordKnowsOnlyItself.Offences(House.TypesOf("Quarterlight.Discord")));
    }

    [Theory]
    [InlineData(typeof(DiscordThatKnowsTheCrew))]
    [InlineData(typeof(CrewThatReachesIntoTheHost))]
    [InlineData(typeof(AcousticsThatKnowsPlacement))]
    [InlineData(typeof(SpeaksTheWire))]
    public void DiscordRule_PlantedOffender_IsCaught(Type offender) =>
        Assert.NotEmpty(HouseRules.DiscordKnowsOnlyItself.Offences(House.Offender(offender)));

    [Fact]
    public void DiscordProject_ReferencesNoOtherProject() => Assert.DoesNotContain("<ProjectReference", File.ReadAllText(Path.Combine(House.Root, House.Projects["Quarterlight.Discord"])), StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(RoomsWithoutThePlatform))]
    public void RoomOutsideTheBot_KnowsNoChatPlatform(string room) => Offences.None(HouseRules.NobodyKnowsThePlatform.Offences(House.TypesOf(room)));

    [Fact]
    public void PlatformRule_PlantedOffender_IsCaught() =>
        Assert.NotEmpty(HouseRules.NobodyKnowsThePlatform.Offences(House.Offender(typeof(CrewThatKnowsThePlatform))));

    private static bool IsOnTheWire(string project) => project is "Quarterlight.Protos" or "Quarterlight.Planner" or "Quarterlight.Crew" or "Quarterlight.CrewBot";

    private static IEnumerable<string> Projects(string name) => House.Projects.Keys.Where(p => p == name);
}
