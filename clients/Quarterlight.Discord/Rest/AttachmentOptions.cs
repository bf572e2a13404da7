namespace Quarterlight.Discord.Rest;

/// <summary>How files of interactions are fetched.</summary>
public sealed record AttachmentOptions
{
    /// <summary>
    /// For tests only: a file host on this machine, such as http://127.0.0.1:5000, allowed beside the platform's own. Null, as in every real
    /// deployment, allows none.
    /// </summary>
    public Uri? LoopbackTestHost { get; init; }

    /// <summary>Longest time to the first byte.</summary>
    public TimeSpan FirstByte { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Longest pause between bytes.</summary>
    public TimeSpan Stall { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Longest time for a whole file.</summary>
    public TimeSpan Whole { get; init; } = TimeSpan.FromMinutes(2);
}
