using System.Xml.Linq;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using Quarterlight.Tests.Shared;
using Assembly = System.Reflection.Assembly;

namespace Quarterlight.Architecture.Tests;

/// <summary>The repository as the rules see it: its folder, its projects, and the types built from them.</summary>
internal static class House
{
    private static readonly Lazy<ArchUnitNET.Domain.Architecture> Loaded = new(Load);

    /// <summary>Top folder of the repository: the one that holds the solution file.</summary>
    public static string Root { get; } = RepositoryFolder.Top;

    /// <summary>Path of every product project, by project name.</summary>
    public static IReadOnlyDictionary<string, string> Projects { get; } = RepositoryFiles.All(Root)
        .Where(f => f.EndsWith(".csproj", StringComparison.Ordinal) && !f.StartsWith("tests/", StringComparison.Ordinal))
        .ToDictionary(f => Path.GetFileNameWithoutExtension(f)!, f => f);

    /// <summary>Names of the domain rooms.</summary>
    public static IReadOnlyList<string> DomainRooms { get; } =
        [.. Projects.Where(p => p.Value.StartsWith("services/domain/", StringComparison.Ordinal)).Select(p => p.Key).Order()];

    /// <summary>This assembly's name: the planted offenders live here.</summary>
    public static string Own { get; } = typeof(House).Assembly.GetName().Name!;

    /// <summary>The assembly a project builds.</summary>
    public static Assembly AssemblyOf(string project) => Assembly.Load(AssemblyNameOf(project));

    /// <summary>Name of the assembly a project builds: its own, unless it says otherwise.</summary>
    public static string AssemblyNameOf(string project) => Projects.TryGetValue(project, out string? path)
        ? XDocument.Load(Path.Combine(Root, path)).Descendants("AssemblyName").FirstOrDefault()?.Value ?? project
        : project;

    /// <summary>The types of a project, without what the compiler adds for itself.</summary>
    public static IReadOnlyList<IType> TypesOf(string project)
    {
        string assembly = AssemblyNameOf(project);
        return [.. Loaded.Value.Types.Where(t => ShortName(t.Assembly) == assembly)];
    }

    /// <summary>A planted offender and what the compiler nests in it.</summary>
    public static IReadOnlyList<IType> Offender(System.Type offender) =>
        [.. TypesOf(Own).Where(t => t.FullName.StartsWith(offender.FullName!, StringComparison.Ordinal))];

    /// <summary>Name of an assembly without version.</summary>
    public static string ShortName(ArchUnitNET.Domain.Assembly assembly) => assembly.Name.Split(',')[0];

    private static ArchUnitNET.Domain.Architecture Load() => new ArchLoader()
        .LoadAssemblies([.. Projects.Keys.Where(p => p != "Quarterlight.Protos").Select(AssemblyOf), typeof(House).Assembly])
        .Build();
}
