namespace Quarterlight.Crew;

/// <summary>Files that are embedded in this assembly.</summary>
internal static class EmbeddedFile
{
    /// <summary>Opens one.</summary>
    /// <param name="path">Path within the project with dots between, such as "Language.common-words.txt".</param>
    /// <exception cref="InvalidOperationException">There is none of that name.</exception>
    public static Stream Open(string path)
    {
        string name = $"{typeof(EmbeddedFile).Namespace}.{path}";
        return typeof(EmbeddedFile).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"{name} is not in the assembly.");
    }
}
