namespace Quarterlight.Discord.Gateway;

/// <summary>Why a connection ended.</summary>
internal enum AttemptEnd
{
    /// <summary>The service ends.</summary>
    Cancelled,

    /// <summary>It could not be opened.</summary>
    NotOpened,

    /// <summary>The other side closed.</summary>
    Closed,

    /// <summary>It broke.</summary>
    Broken,

    /// <summary>The other side asked for a new one (op 7).</summary>
    ReconnectAsked,

    /// <summary>The session is not valid, and may be gone on with (op 9, true).</summary>
    SessionRefusedForNow,

    /// <summary>The session is not valid any more (op 9, false).</summary>
    SessionGone,

    /// <summary>A heartbeat was not acknowledged.</summary>
    NoAcknowledgement,

    /// <summary>No first frame in time.</summary>
    HelloLate,

    /// <summary>No READY or RESUMED in time.</summary>
    ReadyLate,

    /// <summary>Too many unreadable frames in a row.</summary>
    Unreadable,
}

/// <summary>How a connection ended.</summary>
/// <param name="End">Why.</param>
/// <param name="CloseCode">With <see cref="AttemptEnd.Closed"/>: the other side's code; null for none.</param>
/// <param name="Session">The session as far as it got; null when there is none.</param>
/// <param name="ReadyFor">How long interactions could arrive; null when they never could.</param>
internal readonly record struct AttemptResult(AttemptEnd End, int? CloseCode, GatewaySession? Session, TimeSpan? ReadyFor)
{
    /// <summary>What follows.</summary>
    public NextStep Next => End switch
    {
        AttemptEnd.Closed => CloseCodes.Next(CloseCode),
        AttemptEnd.SessionGone => NextStep.Identify,
        _ => NextStep.Resume,
    };
}
