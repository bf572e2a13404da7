namespace Quarterlight.Planner.Errors;

/// <summary>Stable reasons of refused calls, sent in google.rpc.ErrorInfo with the domain "quarterlight"; listed in docs/errors.md.</summary>
public static class ErrorReasons
{
    /// <summary>Domain of every ErrorInfo.</summary>
    public const string Domain = "quarterlight";

    /// <summary>Fields are wrong; a BadRequest detail names each.</summary>
    public const string InvalidFields = "INVALID_FIELDS";

    /// <summary>There is no resource of that name.</summary>
    public const string NotFound = "NOT_FOUND";

    /// <summary>The id is taken.</summary>
    public const string AlreadyExists = "ALREADY_EXISTS";

    /// <summary>The resource changed since it was read.</summary>
    public const string RevisionConflict = "REVISION_CONFLICT";

    /// <summary>The resource is still in use.</summary>
    public const string InUse = "IN_USE";

    /// <summary>The key is missing or opens no team.</summary>
    public const string UnknownKey = "UNKNOWN_KEY";

    /// <summary>The key does not open the team that the call is for.</summary>
    public const string WrongTeam = "WRONG_TEAM";

    /// <summary>Too many plans or clips are under way already.</summary>
    public const string Busy = "BUSY";

    /// <summary>The call took longer than the server allows.</summary>
    public const string TooSlow = "TOO_SLOW";

    /// <summary>An upload fell silent.</summary>
    public const string Stalled = "STALLED";

    /// <summary>The program that reads such a file is not installed beside the planner.</summary>
    public const string NoDecoder = "NO_DECODER";

    /// <summary>Something went wrong inside; the log has the reference.</summary>
    public const string Internal = "INTERNAL";
}
