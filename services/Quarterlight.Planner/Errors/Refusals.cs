using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;
using Quarterlight.Audio;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Errors;

/// <summary>Turns trouble into gRPC rich errors (google.rpc.Status with ErrorInfo and BadRequest).</summary>
internal static class Refusals
{
    // Errors travel in HTTP/2 trailers, which common clients take up to about 8 KiB of (from memory).
    private const int MostFields = 16;
    private const int LongestProblem = 160;
    private const int LongestRemedy = 240;
    private const int MostUsers = 10;

    /// <summary>INVALID_ARGUMENT naming the wrong fields; of more than 16 the first 16.</summary>
    public static RpcException Invalid(IReadOnlyList<Violation> violations)
    {
        var bad = new BadRequest();
        foreach (Violation violation in violations.Take(MostFields).Select(Short))
        {
            bad.FieldViolations.Add(new BadRequest.Types.FieldViolation { Field = violation.Field, Description = $"{violation.Problem}. {violation.Remedy}." });
        }

        string first = Short(violations[0]).ToString();
        string message = violations.Count == 1 ? first : $"{violations.Count} fields are wrong. First, {first}";
        return Make(Code.InvalidArgument, ErrorReasons.InvalidFields, message, [], bad);
    }

    /// <summary>INVALID_ARGUMENT naming one field.</summary>
    public static RpcException Invalid(string field, string problem, string remedy) => Invalid([new Violation(field, problem, remedy)]);

    /// <summary>NOT_FOUND.</summary>
    public static RpcException NotFound(string name) =>
        Make(Code.NotFound, ErrorReasons.NotFound, $"There is no {name}.", new() { ["name"] = name });

    /// <summary>ALREADY_EXISTS.</summary>
    public static RpcException AlreadyExists(string name) =>
        Make(Code.AlreadyExists, ErrorReasons.AlreadyExists, $"{name} is there already: take another id, or update it.", new() { ["name"] = name });

    /// <summary>ABORTED: the revision sent is not the one kept.</summary>
    public static RpcException RevisionConflict(string name, long kept) =>
        Make(Code.Aborted, ErrorReasons.RevisionConflict, $"{name} was changed meanwhile (revision {kept}): read it again and repeat the change.", new() { ["name"] = name, ["revision"] = $"{kept}" });

    /// <summary>FAILED_PRECONDITION: others still use it.</summary>
    public static RpcException InUse(string name, IReadOnlyList<string> users)
    {
        string more = users.Count > MostUsers ? $" and {users.Count - MostUsers} more" : "";
        return Make(
            Code.FailedPrecondition,
            ErrorReasons.InUse,
            $"{name} is still used by {string.Join(", ", users.Take(MostUsers))}{more}: change or delete them first.",
            new() { ["name"] = name, ["users"] = string.Join(",", users.Take(MostUsers)) });
    }

    /// <summary>UNAUTHENTICATED.</summary>
    public static RpcException UnknownKey() =>
        Make(Code.Unauthenticated, ErrorReasons.UnknownKey, "The key is missing or opens no team: send your team's key in the header x-quarterlight-key.", []);

    /// <summary>PERMISSION_DENIED.</summary>
    public static RpcException WrongTeam() =>
        Make(Code.PermissionDenied, ErrorReasons.WrongTeam, "The key does not open the team in the header x-quarterlight-team: name a team of your own, or leave the header out if the key has one team.", []);

    /// <summary>RESOURCE_EXHAUSTED.</summary>
    /// <param name="what">What there is too much of, in the plural, such as "plans".</param>
    public static RpcException Busy(string what) =>
        Make(Code.ResourceExhausted, ErrorReasons.Busy, $"Too many {what} are under way already: try again in a moment.", []);

    /// <summary>DEADLINE_EXCEEDED.</summary>
    public static RpcException TooSlow(TimeSpan limit) =>
        Make(Code.DeadlineExceeded, ErrorReasons.TooSlow, $"The call took longer than {limit.TotalSeconds:0} s and was given up.", []);

    /// <summary>
    /// What is wrong with the bytes of a file: INVALID_ARGUMENT naming the field they came in, FAILED_PRECONDITION when a decoder is missing,
    /// DEADLINE_EXCEEDED when no more came.
    /// </summary>
    public static RpcException Of(AudioFault fault, string field) => fault.Code switch
    {
        AudioFaultCode.NoDecoder => Make(Code.FailedPrecondition, ErrorReasons.NoDecoder, $"{fault.Problem}. {fault.Remedy}.", []),
        AudioFaultCode.Stalled => Make(Code.DeadlineExceeded, ErrorReasons.Stalled, $"{fault.Problem}. {fault.Remedy}.", []),
        _ => Invalid(field, fault.Problem, fault.Remedy),
    };

    /// <summary>DEADLINE_EXCEEDED: an upload was opened and nothing came.</summary>
    public static RpcException Stalled(TimeSpan wait) => Make(
        Code.DeadlineExceeded, ErrorReasons.Stalled, $"No header arrived for {wait.TotalSeconds:0.##} s. Check the connection and upload the clip again.", []);

    /// <summary>CANCELLED: the caller hung up, so nobody reads this.</summary>
    public static RpcException GaveUp() => new(new Grpc.Core.Status(StatusCode.Cancelled, "The caller gave up."));

    /// <summary>INTERNAL with a reference to the log, never the exception's text.</summary>
    public static RpcException Internal(string reference) =>
        Make(Code.Internal, ErrorReasons.Internal, $"Something went wrong inside the planner. If it happens again, report reference {reference}.", new() { ["reference"] = reference });

    private static Violation Short(Violation violation) =>
        violation with { Problem = Cut(violation.Problem, LongestProblem), Remedy = Cut(violation.Remedy, LongestRemedy) };

    private static string Cut(string text, int most) => text.Length <= most ? text : text[..most] + "\u2026";

    private static RpcException Make(Code code, string reason, string message, Dictionary<string, string> metadata, Google.Protobuf.IMessage? detail = null)
    {
        var info = new ErrorInfo { Domain = ErrorReasons.Domain, Reason = reason };
        info.Metadata.Add(metadata);
        var status = new Google.Rpc.Status { Code = (int)code, Message = message, Details = { Any.Pack(info) } };
        if (detail is not null)
        {
            status.Details.Add(Any.Pack(detail));
        }

        return status.ToRpcException();
    }
}
