using System.Reflection;
using System.Runtime.CompilerServices;

namespace Quarterlight.Architecture.Tests.Rules;

/// <summary>What a domain room hands out cannot be changed by whoever gets it.</summary>
internal static class ValueRules
{
    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>Public properties that can be set after construction, and public fields that can be written.</summary>
    public static IReadOnlyList<string> Offences(IEnumerable<Type> types) =>
    [
        .. types.Where(t => t.IsVisible && !t.IsEnum).SelectMany(t => t.GetProperties(Everything)
            .Where(p => p.SetMethod is { IsPublic: true } set && !IsInitOnly(set))
            .Select(p => $"{t.FullName}.{p.Name} can be set after construction")),
        .. types.Where(t => t.IsVisible && !t.IsEnum).SelectMany(t => t.GetFields(Everything)
            .Where(f => !f.IsInitOnly && !f.IsLiteral)
            .Select(f => $"{t.FullName}.{f.Name} is a writable field")),
    ];

    private static bool IsInitOnly(MethodInfo set) => set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));
}
