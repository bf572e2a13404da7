using System.Globalization;
using Google.Rpc;
using Grpc.Core;
using Quarterlight.Crew.Language;
using GrpcStatusCode = Grpc.Core.StatusCode;

namespace Quarterlight.Crew.Wording;

/// <summary>Turns what the planner refused into plain sentences that say what to change. Never shows an exception's text.</summary>
internal static class ErrorText
{
    private const int MostViolations = 5;

    public static CrewAnswer Of(RpcException problem, CrewRequest request, CrewMemory memory, UnitPreference units, string plannerAddress)
    {
        var answer = new CrewAnswer { Headline = "", Outcome = CrewOutcome.Refused, Intent = request.Intent, Private = true, Memory = memory };
        if (IsAway(problem))
        {
            string where = plannerAddress.Length > 0 ? $" at {plannerAddress}" : "";
            return answer with
            {
                Outcome = CrewOutcome.PlannerUnreachable,
                Headline = $"The planner{where} cannot be reached.",
                Lines = [new(CrewLineKind.Plain, where.Length > 0 ? "Check that it is running and that the address is right, then ask again." : "Ask again in a minute. If it stays, tell whoever runs this.")],
            };
        }

        Google.Rpc.Status? details = problem.GetRpcStatus();
        if (details?.GetDetail<BadRequest>() is { FieldViolations.Count: > 0 } bad)
        {
            return answer with { Headline = First(bad.FieldViolations[0], units), Lines = Rest(bad.FieldViolations, units) };
        }

        ErrorInfo? info = details?.GetDetail<ErrorInfo>();
        if (problem.StatusCode == GrpcStatusCode.DeadlineExceeded && request.Intent is CrewIntent.JudgeClip or CrewIntent.ClipPicture)
        {
            return answer with { Headline = info?.Reason == "STALLED" ? "Nothing more of the clip arrived. Check the connection and send it again, or a shorter piece." : "The clip took too long to send and judge. Send a shorter piece; a minute is plenty." };
        }

        return answer with { Headline = Plain(problem.StatusCode, info, details?.Message, units), FollowUps = problem.StatusCode == GrpcStatusCode.NotFound ? ["list scenes"] : [] };
    }

    // A connection that broke in the middle of a call comes with one of several codes; that it was the connection, and no word of the planner's, shows in the
    // exception that lies below: what a planner says has none.
    private static bool IsAway(RpcException problem) =>
        problem.StatusCode == GrpcStatusCode.Unavailable
        || (problem.StatusCode is GrpcStatusCode.Internal or GrpcStatusCode.Unknown or GrpcStatusCode.Cancelled && problem.Status.DebugException is not (null or OperationCanceledException));

    private static string First(BadRequest.Types.FieldViolation violation, UnitPreference units)
    {
        string sentence = UnitText.Rewrite(CrewText.Clean(violation.Description, CrewText.LongestSentence), units).TrimEnd('.', ' ');
        string field = FieldWords.Of(violation.Field);
        return sentence.Length == 0 ? $"Please check {field}." : $"Please check {field}: {Lower(sentence)}.";
    }

    private static List<CrewLine> Rest(Google.Protobuf.Collections.RepeatedField<BadRequest.Types.FieldViolation> violations, UnitPreference units)
    {
        List<CrewLine> lines = [.. violations.Skip(1).Take(MostViolations - 1).Select(v => new CrewLine(CrewLineKind.Plain, First(v, units)))];
        if (violations.Count > MostViolations)
        {
            lines.Add(new(CrewLineKind.Plain, string.Create(CultureInfo.InvariantCulture, $"And {violations.Count - MostViolations} more of the kind.")));
        }

        return lines;
    }

    private static string Plain(GrpcStatusCode code, ErrorInfo? info, string? message, UnitPreference units) => code switch
    {
        GrpcStatusCode.DeadlineExceeded => "The planner took too long to answer. Ask again; if it keeps happening, drop a camera or a microphone kind from the question.",
        GrpcStatusCode.Unauthenticated => "The planner does not know this key. Check the key that was given.",
        GrpcStatusCode.PermissionDenied => "This key does not open that. Ask whoever gave you the key.",
        GrpcStatusCode.NotFound => $"The planner has no {Missing(info)}. Ask \"list scenes\", \"list cars\" or \"list kits\" to see what there is.",
        GrpcStatusCode.AlreadyExists => "Something of that name is kept already. Choose another name.",
        GrpcStatusCode.Aborted => "Somebody changed it in the meantime. Look at it again, then repeat the change.",
        GrpcStatusCode.ResourceExhausted => "Too many questions at once, or one that is too big. Wait a moment and ask again.",
        GrpcStatusCode.Cancelled => "The question was called off.",
        GrpcStatusCode.InvalidArgument or GrpcStatusCode.FailedPrecondition or GrpcStatusCode.OutOfRange when !string.IsNullOrWhiteSpace(message) =>
            UnitText.Rewrite(CrewText.Clean(message, CrewText.LongestSentence), units).TrimEnd('.') + ".",
        GrpcStatusCode.InvalidArgument or GrpcStatusCode.FailedPrecondition or GrpcStatusCode.OutOfRange => "The planner could not use the question as it was put. Show the scene and check what is in it.",
        GrpcStatusCode.Unimplemented => "This planner is older than this program and cannot do that. Bring both to the same version.",
        _ => $"Something went wrong inside the planner. Ask again, and if it happens again, tell whoever runs the planner{Reference(info)}.",
    };

    private static string Reference(ErrorInfo? info) =>
        info is not null && info.Metadata.TryGetValue("reference", out string? reference) ? $" (reference {CrewText.Clean(reference, 40)})" : "";

    private static string Missing(ErrorInfo? info)
    {
        string? name = info?.Metadata.FirstOrDefault(m => m.Key is "name" or "resource" or "resource_name" or "id").Value;
        return string.IsNullOrWhiteSpace(name) ? "such thing" : $"\"{CrewText.Clean(name, CrewText.LongestName)}\"";
    }

    // The sentence follows a colon, so it starts small, unless its first word is all capitals or a lone letter.
    private static string Lower(string sentence) =>
        sentence.Length > 1 && char.IsUpper(sentence[0]) && char.IsLower(sentence[1]) ? char.ToLowerInvariant(sentence[0]) + sentence[1..] : sentence;
}
