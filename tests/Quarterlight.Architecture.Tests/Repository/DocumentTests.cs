using System.Reflection;

namespace Quarterlight.Architecture.Tests.Repository;

/// <summary>The pages people read: they lead where they say, and leave nothing out.</summary>
public sealed class DocumentTests
{
    public static TheoryData<string> Pages =>
        [.. RepositoryFiles.Texts().Select(f => f.Path).Where(f => f.EndsWith(".md", StringComparison.Ordinal)).Order()];

    public static TheoryData<string> Decisions => [.. Under("docs/decisions/", ".md")];

    public static TheoryData<string> Vectors => [.. Under("tests/vectors/", ".csv")];

    [Fact]
    public void Readme_FirstTwoShellBlocks_HoldOneCommandEach()
    {
        IReadOnlyList<IReadOnlyList<string>> blocks = TextChecks.ShellBlocks(Read("README.md"));
        Assert.True(blocks.Count >= 2);
        Assert.Single(blocks[0]);
        Assert.Single(blocks[1]);
    }

    [Fact]
    public void ShellBlocks_TwoCommandsInOneBlock_AreCounted() =>
        Assert.Equal(2, Assert.Single(TextChecks.ShellBlocks("text\n```sh\n# first\ncd there\nrun it\n```\n```json\n{}\n```\n")).Count);

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_LinksInside_LeadSomewhere(string page)
    {
        string folder = Path.GetDirectoryName(Path.Combine(House.Root, page))!;
        string[] dead = [.. TextChecks.InnerLinks(Read(page)).Where(l => !Path.Exists(Path.Combine(folder, l)))];
        Assert.Empty(dead);
    }

    [Fact]
    public void InnerLinks_OfAPage_AreFound() =>
        Assert.Equal(["a.md", "b.md"], TextChecks.InnerLinks("[a](a.md) [b](b.md#part) [c](#part) [d](https://example.org/d)"));

    [Fact]
    public void DocsIndex_LinksEveryPage()
    {
        IReadOnlyList<string> linked = TextChecks.InnerLinks(Read("docs/README.md"));
        string[] left = [.. Under("docs/", ".md").Select(f => f["docs/".Length..]).Where(f => f != "README.md" && !linked.Contains(f))];
        Assert.Empty(left);
    }

    [Theory]
    [MemberData(nameof(Decisions))]
    public void Decision_HasItsThreeParts(string page)
    {
        string text = Read(page);
        Assert.Contains("\n## Context\n", text, StringComparison.Ordinal);
        Assert.Contains("\n## Decision\n", text, StringComparison.Ordinal);
        Assert.Contains("\n## Consequences\n", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Vectors))]
    public void Vectors_HaveRowsAndASource(string csv)
    {
        Assert.True(TextChecks.DataRows(Read(csv)) > 0);
        Assert.NotEmpty(Read(Path.ChangeExtension(csv, ".source.md")).Trim());
    }

    [Theory]
    [InlineData("", -1)]
    [InlineData("frequency_hz,level_db\n", 0)]
    [InlineData("# from a table\nfrequency_hz,level_db\n125,3\n", 1)]
    public void DataRows_OfATable_AreCounted(string csv, int rows) => Assert.Equal(rows, TextChecks.DataRows(csv));

    [Fact]
    public void ErrorsPage_NamesEveryReason()
    {
        string page = Read("docs/errors.md");
        string[] reasons =
        [
            .. typeof(Planner.Errors.ErrorReasons).GetFields(BindingFlags.Public | BindingFlags.Static)
                .Where(f => f.Name != nameof(Planner.Errors.ErrorReasons.Domain)).Select(f => (string)f.GetRawConstantValue()!),
        ];
        Assert.NotEmpty(reasons);
        Assert.All(reasons, r => Assert.Contains($"`{r}`", page, StringComparison.Ordinal));
    }

    private static string Read(string path) => File.ReadAllText(Path.Combine(House.Root, path));

    private static IEnumerable<string> Under(string folder, string ending) => RepositoryFiles.All(House.Root)
        .Where(f => f.StartsWith(folder, StringComparison.Ordinal) && f.EndsWith(ending, StringComparison.Ordinal)).Order();
}
