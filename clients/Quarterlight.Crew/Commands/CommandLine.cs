using System.Text.RegularExpressions;
using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Commands;

/// <summary>A typed command: what it says, or what is wrong with how it is typed; exactly one of call and wrong is set.</summary>
/// <param name="Call">The command; a file stands among its values as a path and is for the transport to open.</param>
/// <param name="Wrong">What is wrong and what would be right.</param>
public sealed record TypedCommand(CrewCommandCall? Call, string? Wrong);

/// <summary>
/// Reads commands typed on one line, such as <c>link distance: 300 m country: US</c>. A name and a colon begin an option; what stands before the first one
/// is the command's first option. Quotes round a value are optional.
/// </summary>
public static partial class CommandLine
{
    /// <summary>Longest line that is read, in characters.</summary>
    public const int Longest = 2000;

    /// <summary>True for a line that begins with a stroke and a word, and so means a command and no path.</summary>
    public static bool IsCommand(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return Command().IsMatch(line);
    }

    /// <summary>Reads a line, with or without the stroke. Any text is safe.</summary>
    public static TypedCommand Read(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string text = line.Trim().TrimStart('/').Trim();
        if (text.Length > Longest)
        {
            return new TypedCommand(null, $"The line is longer than {Longest} characters: say it shorter.");
        }

        string[] words = text.Split((char[]?)null, 3, StringSplitOptions.RemoveEmptyEntries);
        string two = string.Join(' ', words.Take(2)).ToLowerInvariant(), one = words.Length > 0 ? words[0].ToLowerInvariant() : "";
        CrewCommand? command = CrewCommands.Find(two) ?? CrewCommands.Find(one);
        if (command is null)
        {
            // The desk says what there is.
            bool known = CrewCommands.All.Any(c => c.Name.StartsWith(one + " ", StringComparison.Ordinal));
            return new TypedCommand(new CrewCommandCall(known ? two : one, new Dictionary<string, string>()), null);
        }

        string rest = text;
        foreach (string word in command.Name.Split(' '))
        {
            rest = rest.TrimStart()[word.Length..];
        }

        return Options(command, rest.Trim());
    }

    private static TypedCommand Options(CrewCommand command, string rest)
    {
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        List<(int Start, int End, string Name)> names = Names(command, rest);
        string first = (names.Count > 0 ? rest[..names[0].Start] : rest).Trim();
        if (first.Length > 0)
        {
            if (command.Options.Count == 0)
            {
                return new TypedCommand(null, $"{command.Name} takes nothing more.");
            }

            if (Unquoted(first) is not { } value)
            {
                return NotClosed(command.Options[0].Name);
            }

            values[command.Options[0].Name] = value;
        }

        for (int i = 0; i < names.Count; i++)
        {
            string written = rest[names[i].End..(i + 1 < names.Count ? names[i + 1].Start : rest.Length)].Trim();
            if (Unquoted(written) is not { } value)
            {
                return NotClosed(names[i].Name);
            }

            if (!values.TryAdd(names[i].Name, value))
            {
                return new TypedCommand(null, $"{CrewText.Clean(names[i].Name, CrewText.LongestName)} is there twice: give it once.");
            }
        }

        foreach (CrewOption flag in command.Options.Where(o => o.Kind == CrewOptionKind.Flag && values.ContainsKey(o.Name)))
        {
            values[flag.Name] = Flag(values[flag.Name]);
        }

        return new TypedCommand(new CrewCommandCall(command.Name, values), null);
    }

    // A call has flags as true or false; what is neither is refused where it is read.
    private static string Flag(string value) => value.ToLowerInvariant() switch
    {
        "yes" or "y" or "on" or "true" => "true",
        "no" or "n" or "off" or "false" => "false",
        _ => value,
    };

    // In the text of a question a colon is just a colon, unless an option of the command goes before it.
    private static List<(int Start, int End, string Name)> Names(CrewCommand command, string rest)
    {
        var names = new List<(int, int, string)>();
        foreach (Match match in Name().Matches(rest))
        {
            string name = match.Groups[1].Value.ToLowerInvariant();
            bool known = command.Options.Any(o => o.Name == name);
            if ((known || command != CrewCommands.Ask) && !IsQuoted(rest, match.Index))
            {
                names.Add((match.Index, match.Index + match.Length, name));
            }
        }

        return names;
    }

    private static bool IsQuoted(string rest, int at)
    {
        bool quoted = false;
        for (int i = 0; i < at; i++)
        {
            bool opens = rest[i] == '"' && !quoted && (i == 0 || char.IsWhiteSpace(rest[i - 1]) || rest[i - 1] == ':');
            quoted = opens || (quoted && rest[i] != '"');
        }

        return quoted;
    }

    private static string? Unquoted(string value) =>
        !value.StartsWith('"') ? value : value.Length > 1 && value.EndsWith('"') ? value[1..^1].Trim() : null;

    private static TypedCommand NotClosed(string name) => new(null, $"{CrewText.Clean(name, CrewText.LongestName)}: the quotation is not closed; end it with \".");

    [GeneratedRegex(@"^\s*/\p{L}[\p{L}-]*(?:\s|$)", RegexOptions.CultureInvariant)]
    private static partial Regex Command();

    // Two letters at least, so that the letter of a drive begins no option; nor does what begins an address.
    [GeneratedRegex(@"(?<![\p{L}\p{N}_/\\.-])([\p{L}][\p{L}\p{N}-]{1,31}):(?![/\\])", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}
