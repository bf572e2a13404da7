namespace Quarterlight.Discord.Gateway;

/// <summary>A session that can be gone on with. Its id is as good as a password, so its text never shows it.</summary>
/// <param name="id">Id of the session.</param>
/// <param name="resumeAddress">Where to go on with it; null for the first address.</param>
/// <param name="sequence">Last sequence number seen; null for none.</param>
internal sealed class GatewaySession(string id, Uri? resumeAddress, long? sequence)
{
    /// <summary>Id of the session.</summary>
    public string Id { get; } = id;

    /// <summary>Where to go on with it.</summary>
    public Uri? ResumeAddress { get; } = resumeAddress;

    /// <summary>Last sequence number seen.</summary>
    public long? Sequence { get; } = sequence;

    /// <summary>The same session further on.</summary>
    public GatewaySession At(long? reached) => new(Id, ResumeAddress, reached);
}
