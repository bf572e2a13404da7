namespace Quarterlight.Tests.Shared;

/// <summary>Where the repository lies that a test runs in.</summary>
internal static class RepositoryFolder
{
    /// <summary>Its top folder.</summary>
    /// <exception cref="InvalidOperationException">It runs elsewhere.</exception>
    public static string Top { get; } = Find();

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Quarterlight.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("No folder above this program holds Quarterlight.slnx: run it inside the repository.");
    }
}
