namespace Quarterlight.Discord;

/// <summary>What a user did (type numbers of the API, Interaction Type).</summary>
public enum InteractionKind
{
    /// <summary>The platform asks whether the endpoint is there; only over HTTP.</summary>
    Ping = 1,

    /// <summary>A command was sent.</summary>
    Command = 2,

    /// <summary>A button was pressed or a select was used.</summary>
    Component = 3,

    /// <summary>An option is being typed; wants choices.</summary>
    Autocomplete = 4,

    /// <summary>A form was sent.</summary>
    FormSubmit = 5,
}

/// <summary>What it takes to answer an interaction: as good as a password for 15 minutes, so its text never shows the token.</summary>
/// <param name="ApplicationId">The application.</param>
/// <param name="InteractionId">The interaction.</param>
/// <param name="Token">Credential for the answer.</param>
public sealed record InteractionTicket(ulong ApplicationId, ulong InteractionId, string Token)
{
    /// <summary>
    /// When the interaction was received, a timestamp of the <see cref="TimeProvider"/> in use: how long a first answer may be tried counts from here.
    /// Null counts from the first try.
    /// </summary>
    public long? ReceivedTimestamp { get; init; }

    /// <inheritdoc/>
    public override string ToString() => $"interaction {InteractionId}";
}

/// <summary>One thing a user did, as received.</summary>
public sealed record Interaction
{
    /// <summary>What it takes to answer.</summary>
    public required InteractionTicket Ticket { get; init; }

    /// <summary>What was done.</summary>
    public required InteractionKind Kind { get; init; }

    /// <summary>The server it happened in; null in a private conversation.</summary>
    public ulong? GuildId { get; init; }

    /// <summary>The channel or thread it happened in.</summary>
    public ulong? ChannelId { get; init; }

    /// <summary>Who did it.</summary>
    public required ulong UserId { get; init; }

    /// <summary>Permission bits of the user in the channel; 0 when not told.</summary>
    public ulong MemberPermissions { get; init; }

    /// <summary>Permission bits of the application in the channel; null when not told.</summary>
    public ulong? AppPermissions { get; init; }

    /// <summary>Language the user chose, such as en-US; null when not told. Used as a first guess of units only.</summary>
    public string? Locale { get; init; }

    /// <summary>Largest file that may be attached to the answer, bytes.</summary>
    public long AttachmentSizeLimitBytes { get; init; } = DiscordLimits.DefaultAttachmentBytes;

    /// <summary>The command, for <see cref="InteractionKind.Command"/> and <see cref="InteractionKind.Autocomplete"/>.</summary>
    public CommandData? Command { get; init; }

    /// <summary>The component, for <see cref="InteractionKind.Component"/>.</summary>
    public ComponentData? Component { get; init; }

    /// <summary>The form, for <see cref="InteractionKind.FormSubmit"/>.</summary>
    public FormData? Form { get; init; }

    /// <summary>
    /// When it was received, a timestamp of the <see cref="TimeProvider"/> in use. Deadlines count from here on the monotonic clock, never from the
    /// time inside the id: clocks of laptops are often wrong.
    /// </summary>
    public required long ReceivedTimestamp { get; init; }
}

/// <summary>What kind of command (Application Command Types).</summary>
public enum CommandKind
{
    /// <summary>Typed with a slash.</summary>
    Slash = 1,

    /// <summary>From the menu of a message.</summary>
    Message = 3,
}

/// <summary>A command as sent, or as far as it is typed.</summary>
public sealed record CommandData
{
    /// <summary>Name of the command.</summary>
    public required string Name { get; init; }

    /// <summary>Slash or message menu.</summary>
    public required CommandKind Kind { get; init; }

    /// <summary>Subcommand; null when the command has none.</summary>
    public string? Subcommand { get; init; }

    /// <summary>Options given, those of the subcommand when there is one.</summary>
    public IReadOnlyList<CommandOptionValue> Options { get; init; } = [];

    /// <summary>The files options and the target message refer to, by id.</summary>
    public IReadOnlyDictionary<ulong, DiscordAttachment> Attachments { get; init; } = new Dictionary<ulong, DiscordAttachment>();

    /// <summary>Files of the message the menu was opened on; empty for a slash command.</summary>
    public IReadOnlyList<DiscordAttachment> TargetAttachments { get; init; } = [];
}

/// <summary>An option as given.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Text">Its value as text: numbers in invariant form, true or false, the id of a file.</param>
/// <param name="Focused">True on the option being typed.</param>
public sealed record CommandOptionValue(string Name, string Text, bool Focused = false);

/// <summary>A file on the platform's file host. The address is signed and soon expires: fetch at once.</summary>
/// <param name="Id">Its id.</param>
/// <param name="FileName">Its name, as the user wrote it: untrusted.</param>
/// <param name="ByteCount">Its size as the platform says, bytes.</param>
/// <param name="Url">Where it is: untrusted until checked.</param>
public sealed record DiscordAttachment(ulong Id, string FileName, long ByteCount, string Url)
{
    /// <inheritdoc/>
    public override string ToString() => $"attachment {Id}";
}

/// <summary>A component as used.</summary>
/// <param name="CustomId">The id it was made with: untrusted, perhaps of another version.</param>
/// <param name="Values">What was selected; empty for a button.</param>
/// <param name="MessageId">Message it stands in.</param>
public sealed record ComponentData(string CustomId, IReadOnlyList<string> Values, ulong MessageId);

/// <summary>A form as sent.</summary>
/// <param name="CustomId">The id it was opened with: untrusted.</param>
/// <param name="Fields">What was written, by the id of the field.</param>
/// <param name="Files">Files given, by the id of the field.</param>
public sealed record FormData(string CustomId, IReadOnlyDictionary<string, string> Fields, IReadOnlyDictionary<string, IReadOnlyList<DiscordAttachment>> Files);
