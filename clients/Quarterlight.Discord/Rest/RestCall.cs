namespace Quarterlight.Discord.Rest;

/// <summary>One request to send.</summary>
/// <param name="Route">Where to.</param>
/// <param name="Body">What; null for nothing.</param>
internal sealed record RestCall(RestRoute Route, RestBody? Body = null)
{
    /// <summary>No try begins after this timestamp, and no wait reaches beyond it; null for no such moment.</summary>
    public long? LastStart { get; init; }
}

/// <summary>What came back from a request that went well.</summary>
/// <param name="Status">Status code.</param>
/// <param name="Body">Body; empty when there was none.</param>
internal sealed record RestAnswer(int Status, byte[] Body);
