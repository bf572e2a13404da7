namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>Bits of a message's flags (Message resource, Message Flags).</summary>
internal static class MessageFlags
{
    /// <summary>Links are not unfolded.</summary>
    public const long SuppressEmbeds = 1 << 2;

    /// <summary>Only the asker sees it.</summary>
    public const long Ephemeral = 1 << 6;

    /// <summary>Deferred, "thinking". Set by the platform alone.</summary>
    public const long Loading = 1 << 7;

    /// <summary>No sound.</summary>
    public const long SuppressNotifications = 1 << 12;

    /// <summary>Made of components alone.</summary>
    public const long ComponentsV2 = 1 << 15;

    /// <summary>What a new answer may carry.</summary>
    public const long OfAnswer = SuppressEmbeds | Ephemeral | SuppressNotifications;

    /// <summary>What a change may carry.</summary>
    public const long OfEdit = SuppressEmbeds;
}
