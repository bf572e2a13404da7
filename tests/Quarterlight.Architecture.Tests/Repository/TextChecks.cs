using System.Text.RegularExpressions;

namespace Quarterlight.Architecture.Tests.Repository;

/// <summary>What no text of ours may hold. Patterns are put together from pieces, so that this file does not hold them either.</summary>
internal static partial class TextChecks
{
    private static readonly Regex MachinePath = new(
        $"(?<![A-Za-z0-9_.])(/{"work"}/|/{"root"}/|/{"tmp"}/h/|/{"opt"}/|/{"home"}/[a-z]|[A-Z]:\\\\{"Users"}\\\\)", RegexOptions.CultureInvariant);

    private static readonly Regex PackageHost = new(
        $@"{"registry"}\.[a-z]+\.(org|com)|{"nuget"}\.org|{"npmjs"}\.(org|com)|{"deb"}\.debian\.org|{"pypi"}\.org", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase);

    private static readonly Regex Unfinished = new($@"\b({"TO"}DO|{"FIX"}ME|{"HA"}CK|{"Not"}ImplementedException)\b", RegexOptions.CultureInvariant);

    /// <summary>A path of one machine.</summary>
    public static bool HoldsMachinePath(string text) => MachinePath.IsMatch(text);

    /// <summary>The host a package comes from; that is each machine's own setting.</summary>
    public static bool HoldsPackageHost(string text) => PackageHost.IsMatch(text);

    /// <summary>A note that work was left undone.</summary>
    public static bool HoldsUnfinishedWork(string text) => Unfinished.IsMatch(text);

    /// <summary>The commands of each fenced block of shell, block by block.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> ShellBlocks(string markdown) =>
    [
        .. ShellBlock().Matches(markdown).Select(m => (IReadOnlyList<string>)
            [.. m.Groups[1].Value.Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0 && !l.StartsWith('#'))]),
    ];

    /// <summary>Targets of the links that stay inside the repository, without anchors.</summary>
    public static IReadOnlyList<string> InnerLinks(string markdown) =>
    [
        .. Link().Matches(markdown).Select(m => m.Groups[1].Value.Split('#')[0])
            .Where(l => l.Length > 0 && !l.Contains(':', StringComparison.Ordinal)),
    ];

    /// <summary>Rows of a table of check values below its heading.</summary>
    public static int DataRows(string csv) =>
        csv.Split('\n').Count(l => l.Trim().Length > 0 && !l.StartsWith('#')) - 1;

    [GeneratedRegex(@"^```sh\n(.*?)^```", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex ShellBlock();

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex Link();
}
