using ArchUnitNET.Domain;

namespace Quarterlight.Architecture.Tests.Rules;

/// <summary>What the types of one room may look at. Anything not allowed is an offence; names are full type names.</summary>
/// <param name="Allowed">Beginnings of names that are allowed.</param>
/// <param name="Forbidden">Beginnings that are forbidden even so.</param>
internal sealed record DependencyRule(IReadOnlyList<string> Allowed, IReadOnlyList<string> Forbidden)
{
    /// <summary>Each look at something the rule does not allow, in words.</summary>
    public IReadOnlyList<string> Offences(IEnumerable<IType> types) =>
    [
        .. types.SelectMany(t => t.Dependencies
            .Select(d => d.Target.FullName)
            .Where(target => !IsTypeParameter(target))
            .Where(target => !target.StartsWith(t.FullName, StringComparison.Ordinal) && !Allows(target))
            .Select(target => $"{t.FullName} looks at {target}"))
            .Distinct(),
    ];

    // "T <Owner>" or "T& <Owner>": says nothing about who is looked at.
    private static bool IsTypeParameter(string target) => target.Contains(" <", StringComparison.Ordinal);

    private bool Allows(string target) =>
        Allowed.Any(a => target.StartsWith(a, StringComparison.Ordinal)) && !Forbidden.Any(f => target.StartsWith(f, StringComparison.Ordinal));
}
