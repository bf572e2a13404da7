namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>A file a user gives.</summary>
/// <param name="Name">Its name.</param>
/// <param name="ContentType">Its media type, as the user's app says: it may lie.</param>
/// <param name="Bytes">Its contents.</param>
public sealed record EmulatedFile(string Name, string ContentType, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>Size told to the bot instead of the true one; null for the true one.</summary>
    public long? ClaimedSize { get; init; }

    /// <summary>Link told to the bot instead of the true one, such as one to another host; null for the true one.</summary>
    public string? OtherUrl { get; init; }
}
