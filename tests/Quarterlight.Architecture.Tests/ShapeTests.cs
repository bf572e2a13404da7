using Quarterlight.Architecture.Tests.Offenders;
using Quarterlight.Architecture.Tests.Rules;

namespace Quarterlight.Architecture.Tests;

/// <summary>Shape of types: values that stay as they are, words on what is public, one place that logs.</summary>
public sealed class ShapeTests
{
    public static TheoryData<string> DomainRooms => [.. House.DomainRooms];

    public static TheoryData<string> ProductProjects => [.. House.Projects.Keys.Where(p => p != "Quarterlight.Protos").Order()];

    [Theory]
    [MemberData(nameof(DomainRooms))]
    public void DomainRoom_HandsOutValuesThatStay(string room) => Offences.None(ValueRules.Offences(House.AssemblyOf(room).GetTypes()));

    [Fact]
    public void ValueRule_PlantedOffender_IsCaught() => Assert.Equal(
        [$"{typeof(ChangesLater).FullName}.LevelDb can be set after construction", $"{typeof(ChangesLater).FullName}.Floor is a writable field"],
        ValueRules.Offences([typeof(ChangesLater)]));

    [Theory]
    [MemberData(nameof(ProductProjects))]
    public void Project_ExplainsItsEnumsAndFields(string project) =>
        Offences.None(CommentRules.Offences(House.AssemblyOf(project).GetTypes(), CommentRules.CommentsOf(project)));

    [Fact]
    public void CommentRule_PlantedOffender_IsCaught() => Assert.Equal(
        [$"T:{typeof(SaysNothing).FullName} has no comment", $"F:{typeof(SaysNothing).FullName}.Unsaid has no comment", $"F:{typeof(SaysHalf).FullName}.Unsaid has no comment"],
        CommentRules.Offences([typeof(SaysNothing), typeof(SaysHalf)], CommentRules.CommentsOf(House.Own)));

    [Fact]
    public void House_LogsFromOneClassAProjectWithUniqueNumbers()
    {
        IReadOnlyList<LogRules.LogLine> lines = LogRules.LinesOf(House.Projects.Keys.SelectMany(p => House.AssemblyOf(p).GetTypes()));
        Assert.NotEmpty(lines);
        Offences.None(LogRules.Offences(lines));
    }

    [Fact]
    public void LogRule_PlantedOffender_IsCaught()
    {
        IReadOnlyList<string> offences = LogRules.Offences(LogRules.LinesOf([typeof(FirstLog), typeof(SecondPlaceThatLogs)]));
        Assert.Contains(offences, o => o.Contains("logs from", StringComparison.Ordinal));
        Assert.Contains(offences, o => o.Contains("is not named ...Log", StringComparison.Ordinal));
        Assert.Contains("event 9001 is used 2 times", offences);
    }
}
