namespace Quarterlight.Discord;

/// <summary>Where interactions come from: a gateway connection or signed HTTP requests.</summary>
public interface IInteractionSource
{
    /// <summary>Hands on what comes in until the cancellation is asked for.</summary>
    /// <param name="receive">Called for every interaction; must return at once. False means it could not be taken (the caller is full or stopping).</param>
    /// <param name="cancellation">Ends the service; the connection is closed in order.</param>
    /// <exception cref="DiscordException">It cannot go on and a new try would not help: bad token, bad intents.</exception>
    Task RunAsync(Func<Interaction, bool> receive, CancellationToken cancellation);

    /// <summary>How the way in is, for health checks.</summary>
    SourceHealth Health { get; }
}

/// <summary>How a way in is.</summary>
/// <param name="Ready">True while interactions can arrive.</param>
/// <param name="Detail">In a few words, without secrets: "connected", "resuming".</param>
/// <param name="SinceLastSign">Time since the other side last gave a sign of life; null when there is none to expect.</param>
public sealed record SourceHealth(bool Ready, string Detail, TimeSpan? SinceLastSign);

/// <summary>
/// The way out: first answers, later edits, files in, commands. A client library of the platform could implement it and <see cref="IInteractionSource"/>;
/// nothing else of the bot knows the platform's wire.
/// </summary>
public interface IInteractionResponder
{
    /// <summary>First answer: "thinking"; whether the answer is private is decided here.</summary>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>.</exception>
    Task DeferAsync(InteractionTicket ticket, bool isPrivate, CancellationToken cancellation);

    /// <summary>First answer: the message itself.</summary>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>.</exception>
    Task ReplyAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation);

    /// <summary>First answer to typing: choices, at most <see cref="DiscordLimits.Choices"/>.</summary>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>.</exception>
    Task OfferAsync(InteractionTicket ticket, IReadOnlyList<OutgoingChoice> choices, CancellationToken cancellation);

    /// <summary>First answer: a form.</summary>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>.</exception>
    Task OpenFormAsync(InteractionTicket ticket, OutgoingForm form, CancellationToken cancellation);

    /// <summary>Puts the message in place of the first answer, files included: what it does not hold goes away. Safe to repeat.</summary>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>.</exception>
    Task EditFirstAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation);

    /// <summary>Takes the first answer away. Safe to repeat.</summary>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>.</exception>
    Task DeleteFirstAsync(InteractionTicket ticket, CancellationToken cancellation);

    /// <summary>One more message.</summary>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>.</exception>
    Task FollowUpAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation);

    /// <summary>Fetches a file from the platform's own file hosts and nowhere else.</summary>
    /// <param name="attachment">As named by the interaction.</param>
    /// <param name="mostBytes">Largest size taken; checked before and while reading.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="DiscordException"><see cref="DiscordFault.TooLarge"/>, <see cref="DiscordFault.NotFound"/> (expired), <see cref="DiscordFault.Refused"/> (another host) or <see cref="DiscordFault.Unavailable"/>.</exception>
    /// <remarks>Reading the stream throws the same exceptions.</remarks>
    Task<Stream> OpenAttachmentAsync(DiscordAttachment attachment, long mostBytes, CancellationToken cancellation);
}

/// <summary>Registers commands.</summary>
public interface ICommandRegistry
{
    /// <summary>Makes the platform's list equal to this one; does nothing when it already is.</summary>
    /// <param name="commands">All commands.</param>
    /// <param name="guildId">Only for this server, at once; null for all servers.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>True when anything had to be changed.</returns>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>.</exception>
    Task<bool> RegisterAsync(IReadOnlyList<CommandDefinition> commands, ulong? guildId, CancellationToken cancellation);
}

/// <summary>Why the platform did not do as asked.</summary>
public enum DiscordFault
{
    /// <summary>The token is wrong or was reset: 401, or close 4004.</summary>
    BadToken,

    /// <summary>The gateway refused how we identify: close 4010 to 4014.</summary>
    BadIdentify,

    /// <summary>First answer too late or interaction unknown: 10062.</summary>
    TooLate,

    /// <summary>The interaction was answered before: 40060.</summary>
    AlreadyAnswered,

    /// <summary>The interaction's 15 minutes are over: 50027.</summary>
    TokenExpired,

    /// <summary>A permission is missing: 403.</summary>
    Forbidden,

    /// <summary>What was asked for is not there (any more): 404.</summary>
    NotFound,

    /// <summary>The file or request is too large: 413, 40005, 50045.</summary>
    TooLarge,

    /// <summary>The request was malformed, which is our mistake: 400, 50035.</summary>
    Malformed,

    /// <summary>We refuse to do it, such as to fetch from another host.</summary>
    Refused,

    /// <summary>Still limited after all waiting that was possible: 429.</summary>
    RateLimited,

    /// <summary>Not reachable, too slow or 5xx after all tries.</summary>
    Unavailable,
}

/// <summary>The platform did not do as asked. The message holds no secret and no text of users.</summary>
public sealed class DiscordException(DiscordFault fault, string message, int? code = null, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>Why.</summary>
    public DiscordFault Fault { get; } = fault;

    /// <summary>The platform's own error or close code; null when there is none.</summary>
    public int? Code { get; } = code;
}
