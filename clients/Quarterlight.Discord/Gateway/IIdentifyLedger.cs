namespace Quarterlight.Discord.Gateway;

/// <summary>Keeps when the bot identified, over restarts, so that a bot that is started again and again cannot use up its day.</summary>
public interface IIdentifyLedger
{
    /// <summary>Times kept; none when there are none yet.</summary>
    Task<IReadOnlyList<DateTimeOffset>> ReadAsync(CancellationToken cancellation);

    /// <summary>Keeps these times and no others.</summary>
    Task WriteAsync(IReadOnlyList<DateTimeOffset> identifies, CancellationToken cancellation);
}
