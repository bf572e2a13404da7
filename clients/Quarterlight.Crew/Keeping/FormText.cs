using System.Text.RegularExpressions;
using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Keeping;

/// <summary>Cuts what was written into a form into clean lines and pieces.</summary>
internal static partial class FormText
{
    /// <summary>Most lines of a field that are read.</summary>
    public const int MostLines = 60;

    /// <summary>Longest line that is read, characters.</summary>
    public const int LongestLine = 300;

    /// <summary>Lines with something in them, each cleaned.</summary>
    public static IReadOnlyList<string> Lines(string text) =>
        [.. text.Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries).Select(l => CrewText.Clean(Plain(l), LongestLine)).Where(l => l.Length > 0).Take(MostLines)];

    /// <summary>Parts of a line between commas and semicolons; a comma inside a number only parts nothing.</summary>
    public static IReadOnlyList<string> Pieces(string line) => [.. Comma().Split(line).Select(p => p.Trim()).Where(p => p.Length > 0)];

    /// <summary>Lines compared as a person would: without regard to capitals, spaces and empty lines.</summary>
    public static bool Same(string one, string other) => Lines(one).SequenceEqual(Lines(other), StringComparer.OrdinalIgnoreCase);

    // Phones turn quotes and dashes into others.
    private static string Plain(string text) => text.Replace('’', '\'').Replace('‘', '\'').Replace('′', '\'').Replace('”', '"').Replace('“', '"').Replace('″', '"').Replace('–', '-').Replace('—', '-').Replace('×', 'x');

    [GeneratedRegex(@"[;]|,(?!\d)|(?<!\d),", RegexOptions.CultureInvariant)]
    private static partial Regex Comma();
}
