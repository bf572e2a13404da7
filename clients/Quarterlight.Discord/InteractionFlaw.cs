namespace Quarterlight.Discord;

/// <summary>Why an interaction could not be read. Logged and counted by this code, never with what it held.</summary>
public enum InteractionFlaw
{
    /// <summary>It could be read.</summary>
    None,

    /// <summary>Not JSON, or text that is no Unicode.</summary>
    NotJson,

    /// <summary>Id, application or token is missing: nobody could answer it.</summary>
    NoTicket,

    /// <summary>A type we do not know.</summary>
    UnknownKind,

    /// <summary>Nobody did it.</summary>
    NoUser,

    /// <summary>What was done is missing.</summary>
    NoData,

    /// <summary>A command without name or of a type we do not register.</summary>
    BadCommand,

    /// <summary>An option without name or with a value of no type we know.</summary>
    BadOption,

    /// <summary>A file that is named but not described.</summary>
    BadAttachment,

    /// <summary>A component without id or message.</summary>
    BadComponent,

    /// <summary>A form without id, or with a field without one.</summary>
    BadForm,
}
