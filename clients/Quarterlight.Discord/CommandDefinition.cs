namespace Quarterlight.Discord;

/// <summary>What an option takes (Application Command Option Type).</summary>
public enum CommandOptionKind
{
    /// <summary>A subcommand; has options of its own.</summary>
    Subcommand = 1,

    /// <summary>Text.</summary>
    Text = 3,

    /// <summary>A whole number.</summary>
    WholeNumber = 4,

    /// <summary>True or false.</summary>
    Flag = 5,

    /// <summary>A number.</summary>
    Number = 10,

    /// <summary>A file.</summary>
    File = 11,
}

/// <summary>A command as registered with the platform.</summary>
/// <param name="Name">Lower case, 1 to 32 characters; free text for <see cref="CommandKind.Message"/>.</param>
/// <param name="Description">1 to 100 characters; empty for <see cref="CommandKind.Message"/>.</param>
/// <param name="Kind">Slash or message menu.</param>
/// <param name="Options">Its options, required ones first; or nothing but subcommands.</param>
public sealed record CommandDefinition(string Name, string Description, CommandKind Kind, IReadOnlyList<CommandOptionDefinition> Options)
{
    /// <summary>Permission bits a member needs to see it at first; null for everybody. A server's administrators can change it.</summary>
    public ulong? DefaultMemberPermissions { get; init; }
}

/// <summary>An option of a command.</summary>
/// <param name="Name">Lower case, 1 to 32 characters.</param>
/// <param name="Description">1 to 100 characters.</param>
/// <param name="Kind">What it takes.</param>
public sealed record CommandOptionDefinition(string Name, string Description, CommandOptionKind Kind)
{
    /// <summary>True when it must be given.</summary>
    public bool Required { get; init; }

    /// <summary>The only values it takes; empty for any.</summary>
    public IReadOnlyList<OutgoingChoice> Choices { get; init; } = [];

    /// <summary>True asks for choices while it is typed.</summary>
    public bool Autocomplete { get; init; }

    /// <summary>Least value of a number; null for none.</summary>
    public double? Least { get; init; }

    /// <summary>Greatest value of a number; null for none.</summary>
    public double? Most { get; init; }

    /// <summary>Longest text, characters; null for the platform's own.</summary>
    public int? MostCharacters { get; init; }

    /// <summary>Options of a subcommand.</summary>
    public IReadOnlyList<CommandOptionDefinition> Options { get; init; } = [];
}
