namespace Quarterlight.Discord.Rest;

/// <summary>How a try went wrong before there was an answer.</summary>
internal enum RestBreak
{
    /// <summary>It did not: there is an answer.</summary>
    None,

    /// <summary>No connection: the request was certainly not taken.</summary>
    NotSent,

    /// <summary>No answer in time: it may have been taken.</summary>
    TimedOut,

    /// <summary>The connection broke: it may have been taken.</summary>
    Broken,
}

/// <summary>How one try went.</summary>
/// <param name="Break">What broke.</param>
/// <param name="Status">Status code; 0 without an answer.</param>
/// <param name="Body">Body of the answer.</param>
/// <param name="Limits">What the answer says about limits.</param>
/// <param name="Detail">Without an answer: the kind of failure, in a word of the runtime.</param>
internal sealed record RestOutcome(RestBreak Break, int Status, byte[] Body, LimitHeaders Limits, string Detail = "")
{
    private RestError? error;

    /// <summary>True when it was done.</summary>
    public bool IsSuccess => Status is >= 200 and < 300;

    /// <summary>True when it may pass by itself: no answer, or a failure of the other side.</summary>
    public bool MayPass => Break != RestBreak.None || Status >= 500;

    /// <summary>What the body of a refusal says.</summary>
    public RestError Error => error ??= RestError.Read(Body);

    /// <summary>The fault a caller is told.</summary>
    public DiscordFault Fault(RestRoute route) => Status switch
    {
        0 or >= 500 => DiscordFault.Unavailable,
        429 => DiscordFault.RateLimited,
        413 => DiscordFault.TooLarge,
        _ => Error.Code switch
        {
            10062 => DiscordFault.TooLate,
            40060 => DiscordFault.AlreadyAnswered,
            50027 => DiscordFault.TokenExpired,
            40005 or 50045 => DiscordFault.TooLarge,
            _ => Status switch
            {
                401 => route.IsBot ? DiscordFault.BadToken : DiscordFault.TokenExpired,
                403 => DiscordFault.Forbidden,
                404 => DiscordFault.NotFound,
                >= 300 and < 400 => DiscordFault.Unavailable,
                _ => DiscordFault.Malformed,
            },
        },
    };

    /// <summary>What happened, in words without content and without secrets.</summary>
    public string Describe(RestRoute route)
    {
        if (Break != RestBreak.None)
        {
            return $"{route}: {(Break == RestBreak.TimedOut ? "no answer in time" : Break == RestBreak.NotSent ? "no connection" : "the connection broke")}{(Detail.Length > 0 ? $" ({Detail})" : "")}";
        }

        string code = Error.Code is { } number ? $", code {number}" : "";
        string fields = Error.Fields.Count > 0 ? $": {string.Join("; ", Error.Fields)}" : "";
        return $"{route}: {Status}{code}{fields}";
    }
}
