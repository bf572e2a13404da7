using Quarterlight.Crew.Commands;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>The desk's commands as commands of the platform: names of two words become subcommands.</summary>
internal static class CommandMapping
{
    /// <summary>Permission to change a server's settings (Permissions, MANAGE_GUILD).</summary>
    public const ulong ManageServer = 1UL << 5;

    private const string Settings = "settings";

    /// <summary>What to register.</summary>
    /// <remarks>
    /// Everybody in a server may do everything at first, also what changes scenes, cars and kits: a crew is small and in a hurry. Only the settings ask for the
    /// permission to manage the server. Its administrators can change both.
    /// </remarks>
    public static IReadOnlyList<CommandDefinition> Definitions(IReadOnlyList<CrewCommand> commands)
    {
        ArgumentNullException.ThrowIfNull(commands);
        var definitions = new List<CommandDefinition>();
        foreach (IGrouping<string, CrewCommand> group in commands.GroupBy(c => c.Name.Split(' ')[0], StringComparer.Ordinal))
        {
            CrewCommand first = group.First();
            CommandDefinition definition = first.Name.Contains(' ', StringComparison.Ordinal)
                ? new(group.Key, GroupDescription(group.Key, group), CommandKind.Slash, [.. group.Select(Subcommand)])
                : new(first.Name, first.Description, CommandKind.Slash, [.. first.Options.Select(Option)]);
            definitions.Add(group.Key == Settings ? definition with { DefaultMemberPermissions = ManageServer } : definition);
        }

        definitions.AddRange(commands.Where(c => c.MessageMenuName is not null).Select(c => new CommandDefinition(c.MessageMenuName!, "", CommandKind.Message, [])));
        return definitions;
    }

    /// <summary>The command meant; null when there is none of that name any more.</summary>
    public static CrewCommand? Find(CommandData data, IReadOnlyList<CrewCommand> commands)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(commands);
        string name = data.Subcommand is { } sub ? $"{data.Name} {sub}" : data.Name;
        return data.Kind == CommandKind.Message ? commands.FirstOrDefault(c => c.MessageMenuName == data.Name) : commands.FirstOrDefault(c => c.Name == name);
    }

    private static CommandOptionDefinition Subcommand(CrewCommand command) =>
        new(command.Name.Split(' ')[1], command.Description, CommandOptionKind.Subcommand) { Options = [.. command.Options.Select(Option)] };

    private static CommandOptionDefinition Option(CrewOption option) => new(option.Name, option.Description, option.Kind switch
    {
        CrewOptionKind.WholeNumber => CommandOptionKind.WholeNumber,
        CrewOptionKind.Number => CommandOptionKind.Number,
        CrewOptionKind.Flag => CommandOptionKind.Flag,
        CrewOptionKind.File => CommandOptionKind.File,
        _ => CommandOptionKind.Text,
    })
    {
        Required = option.Required,
        Choices = [.. option.Choices.Select(c => new OutgoingChoice(c.Name, c.Value))],
        Autocomplete = option.Completes,
        Least = option.Least,
        Most = option.Most,
    };

    // Never shown by the platform, but it must say something.
    private static string GroupDescription(string group, IEnumerable<CrewCommand> commands) =>
        CutText.AtWord($"{group}: {string.Join(", ", commands.Select(c => c.Name.Split(' ')[1]))}", DiscordLimits.ChoiceCharacters);
}
