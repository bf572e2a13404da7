using Quarterlight.Architecture.Tests.Rules;

namespace Quarterlight.Architecture.Tests.Repository;

/// <summary>Every text file of the repository.</summary>
public sealed class TextTests
{
    private const int LongestFileLines = 500;

    [Fact]
    public void Texts_HoldNoMachinePath() => Offences.None(Offenders(TextChecks.HoldsMachinePath));

    [Fact]
    public void Texts_HoldNoPackageHost() => Offences.None(Offenders(TextChecks.HoldsPackageHost));

    [Fact]
    public void Texts_HoldNoUnfinishedWork() => Offences.None(Offenders(TextChecks.HoldsUnfinishedWork));

    [Fact]
    public void CodeFiles_StayShort() => Offences.None(RepositoryFiles.Texts()
        .Where(f => f.Path.EndsWith(".cs", StringComparison.Ordinal) && f.Text.Split('\n').Length > LongestFileLines)
        .Select(f => f.Path));

    [Fact]
    public void PackageLock_NamesNoSource() =>
        Assert.DoesNotContain("\"resolved\"", File.ReadAllText(Path.Combine(House.Root, "package-lock.json")), StringComparison.Ordinal);

    [Fact]
    public void Solution_HoldsEveryProject()
    {
        string solution = File.ReadAllText(Path.Combine(House.Root, "Quarterlight.slnx"));
        Assert.All(
            RepositoryFiles.All(House.Root).Where(f => f.EndsWith(".csproj", StringComparison.Ordinal)),
            f => Assert.Contains($"\"{f}\"", solution, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("/wo", "rk/main/file")]
    [InlineData("see /ro", "ot/.config")]
    [InlineData("\"/tm", "p/h/clone\"")]
    [InlineData("C:\\Us", "ers\\someone")]
    public void MachinePathCheck_PlantedOffender_IsCaught(string start, string end) => Assert.True(TextChecks.HoldsMachinePath(start + end));

    [Theory]
    [InlineData("services/domain/work/")]
    [InlineData("a tmpfs on /tmp")]
    public void MachinePathCheck_OrdinaryPath_Passes(string text) => Assert.False(TextChecks.HoldsMachinePath(text));

    [Theory]
    [InlineData("https://registry.npm", "js.org/left-pad")]
    [InlineData("https://api.nu", "get.org/v3/index.json")]
    public void PackageHostCheck_PlantedOffender_IsCaught(string start, string end) => Assert.True(TextChecks.HoldsPackageHost(start + end));

    [Theory]
    [InlineData("// TO", "DO: later")]
    [InlineData("throw new Not", "ImplementedException();")]
    public void UnfinishedWorkCheck_PlantedOffender_IsCaught(string start, string end) => Assert.True(TextChecks.HoldsUnfinishedWork(start + end));

    [Fact]
    public void Texts_AreFound()
    {
        string[] paths = [.. RepositoryFiles.Texts().Select(f => f.Path)];
        Assert.Contains("README.md", paths);
        Assert.Contains(".ci/run", paths);
        Assert.Contains("tests/Quarterlight.Architecture.Tests/Repository/TextTests.cs", paths);
        Assert.DoesNotContain(paths, p => p.Contains("/obj/", StringComparison.Ordinal));
    }

    private static IEnumerable<string> Offenders(Func<string, bool> check) => RepositoryFiles.Texts().Where(f => check(f.Text)).Select(f => f.Path);
}
