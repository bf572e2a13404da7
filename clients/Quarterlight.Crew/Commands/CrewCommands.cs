using Quarterlight.Crew.Keeping;
using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Commands;

/// <summary>The catalogue: every command of the desk, the same in every transport.</summary>
public static class CrewCommands
{
    /// <summary>Command that asks in plain words.</summary>
    public static CrewCommand Ask { get; } = new("ask", "Ask anything in plain words, such as \"how far can they trail us?\"",
    [
        new CrewOption("question", "Your question; typing slips and any units are fine", CrewOptionKind.Text) { Required = true },
        new CrewOption("file", "Sound file it is about, up to 200 MiB", CrewOptionKind.File),
        new CrewOption("scene", "Scene it is about; the one talked about last when left out", CrewOptionKind.Scene),
    ]);

    /// <summary>All of them, in the order they are offered.</summary>
    public static IReadOnlyList<CrewCommand> All { get; } = InOrder();

    /// <summary>The command of that name; null when there is none.</summary>
    public static CrewCommand? Find(string name) => All.FirstOrDefault(c => c.Name == name);

    /// <summary>The name nearest to what was typed, slips forgiven; null when none is near.</summary>
    internal static string? Nearest(string typed, IEnumerable<string> names)
    {
        // A swapped or shortened word is nearer than its letters say.
        string said = CrewText.Clean(typed, 40).ToLowerInvariant().Replace(' ', '-');
        if (said.Length == 0)
        {
            return null;
        }

        (string Name, int Slips)[] near = [.. names.Select(n => (n, Slips: n.StartsWith(said, StringComparison.Ordinal) && said.Length > 1 ? 0 : EditDistance.Between(said, n.Replace(' ', '-')))).OrderBy(n => n.Slips)];
        return near.Length > 0 && near[0].Slips <= Math.Max(1, EditDistance.Forgiven(said.Length)) ? near[0].Name : null;
    }

    // Commands of one first word stay together, as a transport lays them out so.
    private static List<CrewCommand> InOrder()
    {
        List<CrewCommand> all = [.. CommandTable.All.Select(c => c.Offered), .. KeepingCommands.All];
        all.Insert(all.FindIndex(c => c.Name == "demo"), Ask);
        return [.. all.GroupBy(c => c.Name.Split(' ')[0]).SelectMany(g => g)];
    }
}
