namespace Quarterlight.Architecture.Tests;

/// <summary>The files somebody wrote: everything but what building and running leaves behind.</summary>
internal static class RepositoryFiles
{
    private static readonly string[] LeftBehind =
        [".git", "bin", "obj", "node_modules", "TestResults", "BenchmarkDotNet.Artifacts", ".vs", ".idea", "quarterlight-data", "quarterlight-pictures"];

    private static readonly string[] TextEndings =
        [".cs", ".csproj", ".props", ".targets", ".slnx", ".proto", ".md", ".csv", ".json", ".yml", ".yaml", ".js", ".mjs", ".sh", ".txt", ".editorconfig", ".gitignore", ".gitattributes"];

    /// <summary>Paths under a folder, with forward slashes, relative to it.</summary>
    public static IEnumerable<string> All(string root)
    {
        var folders = new Stack<string>([root]);
        while (folders.TryPop(out string? folder))
        {
            foreach (string inner in Directory.EnumerateDirectories(folder).Where(d => !LeftBehind.Contains(Path.GetFileName(d))))
            {
                folders.Push(inner);
            }

            foreach (string file in Directory.EnumerateFiles(folder))
            {
                yield return Path.GetRelativePath(root, file).Replace('\\', '/');
            }
        }
    }

    /// <summary>Path and text of every text file of our own.</summary>
    public static IEnumerable<(string Path, string Text)> Texts() => All(House.Root)
        .Where(f => !f.StartsWith("protos/third_party/", StringComparison.Ordinal) && IsText(f))
        .Select(f => (f, File.ReadAllText(Path.Combine(House.Root, f))));

    private static bool IsText(string path) =>
        TextEndings.Any(e => path.EndsWith(e, StringComparison.Ordinal)) || !Path.GetFileName(path).Contains('.', StringComparison.Ordinal)
        || path.StartsWith(".ci/", StringComparison.Ordinal);
}
