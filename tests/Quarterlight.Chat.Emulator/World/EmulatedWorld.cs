namespace Quarterlight.Chat.Emulator.World;

/// <summary>Somebody with an account.</summary>
/// <param name="Id">Id of the account.</param>
/// <param name="Name">Account name.</param>
public sealed record EmulatedUser(ulong Id, string Name)
{
    /// <summary>Language set in the app.</summary>
    public string Locale { get; init; } = "en-US";
}

/// <summary>A server.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
public sealed class EmulatedGuild(ulong Id, string Name)
{
    /// <summary>Its id.</summary>
    public ulong Id { get; } = Id;

    /// <summary>Its name.</summary>
    public string Name { get; } = Name;

    /// <summary>Its language.</summary>
    public string Locale { get; init; } = "en-US";

    /// <summary>Its channels.</summary>
    public IReadOnlyList<EmulatedChannel> Channels => channels;

    private readonly List<EmulatedChannel> channels = [];

    internal void Add(EmulatedChannel channel) => channels.Add(channel);
}

/// <summary>A text channel of a server, or a private conversation with the bot when it belongs to no server.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Guild">The server; null for a private conversation.</param>
public sealed record EmulatedChannel(ulong Id, string Name, EmulatedGuild? Guild)
{
    /// <summary>What the application may do here: by default read, send, embed links and attach files.</summary>
    public ulong AppPermissions { get; set; } = Permissions.ViewChannel | Permissions.SendMessages | Permissions.EmbedLinks | Permissions.AttachFiles;

    /// <summary>What members may do here.</summary>
    public ulong MemberPermissions { get; set; } = Permissions.ViewChannel | Permissions.SendMessages | Permissions.UseApplicationCommands;
}

/// <summary>Permission bits (Permissions reference).</summary>
public static class Permissions
{
    /// <summary>Everything.</summary>
    public const ulong Administrator = 1UL << 3;

    /// <summary>Changing the server.</summary>
    public const ulong ManageGuild = 1UL << 5;

    /// <summary>Seeing the channel.</summary>
    public const ulong ViewChannel = 1UL << 10;

    /// <summary>Writing.</summary>
    public const ulong SendMessages = 1UL << 11;

    /// <summary>Embeds.</summary>
    public const ulong EmbedLinks = 1UL << 14;

    /// <summary>Files.</summary>
    public const ulong AttachFiles = 1UL << 15;

    /// <summary>Commands.</summary>
    public const ulong UseApplicationCommands = 1UL << 31;
}
