using System.Runtime.CompilerServices;

namespace Quarterlight.Crew.Language;

/// <summary>The words of a name, cut once as long as the name lives: names are held against every word of every question.</summary>
internal static class NameWords
{
    private static readonly ConditionalWeakTable<string, string[]> Cut = [];

    /// <summary>Words of a name, lower case.</summary>
    public static string[] Of(string name) => Cut.GetValue(name, static n => [.. Tokenizer.Split(n).Select(t => t.Word)]);
}
