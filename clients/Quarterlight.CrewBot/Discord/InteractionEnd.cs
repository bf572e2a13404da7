namespace Quarterlight.CrewBot.Discord;

/// <summary>How an interaction ended, for the audit and for counting.</summary>
internal enum InteractionEnd
{
    /// <summary>Nothing happened yet.</summary>
    None,

    /// <summary>Answered.</summary>
    Answered,

    /// <summary>Answered: not understood.</summary>
    NotUnderstood,

    /// <summary>Answered: refused.</summary>
    Refused,

    /// <summary>Answered: the planner is away.</summary>
    PlannerUnreachable,

    /// <summary>A form was opened.</summary>
    FormOpened,

    /// <summary>Choices were offered.</summary>
    Offered,

    /// <summary>Told: asked too often.</summary>
    Limited,

    /// <summary>Told: too much at once.</summary>
    Busy,

    /// <summary>Told: works in servers.</summary>
    OutsideServer,

    /// <summary>Told: a command, button or form of another version.</summary>
    Outdated,

    /// <summary>Told: being restarted.</summary>
    Restarting,

    /// <summary>Told: took too long.</summary>
    TookTooLong,

    /// <summary>Told: a mistake of ours.</summary>
    Failed,

    /// <summary>The platform no longer took the first answer.</summary>
    TooLate,

    /// <summary>Somebody else had answered.</summary>
    AlreadyAnswered,

    /// <summary>The 15 minutes were over.</summary>
    TokenExpired,

    /// <summary>The platform could not be reached, or had nowhere to put it.</summary>
    NotDelivered,

    /// <summary>The process ended first; the next one tells.</summary>
    LeftForRestart,
}
