using System.Reflection;
using System.Xml.Linq;

namespace Quarterlight.Architecture.Tests.Rules;

/// <summary>Every public enum, every value of it and every public field says what it means.</summary>
internal static class CommentRules
{
    /// <summary>Members without words in the comment file built beside the assembly.</summary>
    public static IReadOnlyList<string> Offences(IEnumerable<Type> types, XDocument comments)
    {
        var commented = comments.Descendants("member")
            .Where(m => m.Elements().Any(e => e.Name == "inheritdoc" || !string.IsNullOrWhiteSpace(e.Value)))
            .Select(m => (string)m.Attribute("name")!)
            .ToHashSet();
        return [.. types.Where(t => t.IsVisible).SelectMany(Names).Where(n => !commented.Contains(n)).Select(n => $"{n} has no comment")];
    }

    /// <summary>The comment file built beside an assembly.</summary>
    public static XDocument CommentsOf(string project) => XDocument.Load(Path.Combine(AppContext.BaseDirectory, House.AssemblyNameOf(project) + ".xml"));

    private static IEnumerable<string> Names(Type type)
    {
        string name = type.FullName!.Replace('+', '.');
        return type.GetFields(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Where(f => !f.IsSpecialName)
            .Select(f => $"F:{name}.{f.Name}")
            .Prepend($"T:{name}");
    }
}
