using Microsoft.Extensions.Logging;
using Quarterlight.Placement;

namespace Quarterlight.Architecture.Tests.Offenders;

// Each type below breaks one rule, on purpose. The tests hold every rule against its offender, so that a rule that
// catches nothing is found out.

internal static class ReadsAFile
{
    public static int Length(string path) => File.ReadAllBytes(path).Length;
}

internal sealed class AsksTheNetwork
{
    public HttpClient? Client { get; init; }
}

internal static class PrintsToTheConsole
{
    public static void Say() => Console.WriteLine("said");
}

internal sealed class LogsInTheDomain(ILogger logger)
{
    public bool Loud => logger.IsEnabled(LogLevel.Debug);
}

internal sealed class OpensADatabase
{
    public LiteDB.BsonDocument? Document { get; init; }
}

internal sealed class AsksATrainedModel
{
    public Microsoft.ML.MLContext? Context { get; init; }
}

internal sealed class SpeaksTheWire
{
    public V1.Cabin? Cabin { get; init; }
}

internal sealed class AcousticsThatKnowsPlacement
{
    public PlacementOptions? Options { get; init; }
}

internal sealed class CrewThatReachesIntoTheHost
{
    public Planner.PlannerHostOptions? Options { get; init; }
}

internal sealed class BotThatReachesIntoTheStore
{
    public Store.IDocumentStore? Store { get; init; }
}

internal sealed class DiscordThatKnowsTheCrew
{
    public Crew.CrewAnswer? Answer { get; init; }
}

internal sealed class CrewThatKnowsThePlatform
{
    public Discord.Interaction? Interaction { get; init; }
}
