using Quarterlight.Crew.Clips;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>What goes before a clip to the planner, and what is said when it does not arrive.</summary>
internal static class ClipSending
{
    /// <summary>Longest file name the contract takes, characters.</summary>
    public const int LongestFileName = 200;

    /// <summary>What comes before the bytes: the plan in force, or the scene that was named or is in use, or neither.</summary>
    public static ClipHeader Header(Asked asked, CrewAttachment file)
    {
        var header = new ClipHeader
        {
            FileName = CrewText.Clean(file.FileName, LongestFileName),
            IncludePicture = asked.IncludePicture,
            PictureChannel = asked.Request.Clip.Channel ?? 0,
        };
        if (file.ByteCount is { } bytes)
        {
            header.ByteCount = bytes;
        }

        if (asked.Request.Clip.Cylinders is { } cylinders)
        {
            header.Cylinders = cylinders;
        }

        bool set = asked.Request.SceneSaid || asked.Memory.SceneName is not null;
        if (asked.Scene is not { } scene || !set)
        {
            return header;
        }

        // Judged once more, it is still the microphone it was.
        PlanComparison? before = asked.Request.Clip.Again && asked.Memory.LastClip is { } last && last.ComparedScene == scene.Name && last.Report.Comparisons.Count == 1 ? last.Report.Comparisons[0] : null;
        header.TalkerId = asked.Request.TalkerId ?? before?.TalkerId ?? "";
        if (asked.Memory.Plan is { } plan && plan.Scene?.Name == scene.Name)
        {
            header.SentPlan = plan;
        }
        else
        {
            header.Scene = scene.Name;
        }

        return header;
    }

    /// <summary>One private sentence on a clip that was not judged.</summary>
    public static CrewAnswer Problem(Asked asked, CrewAttachment file, ClipProblem problem)
    {
        CrewAttachmentProblem? ofFile = problem switch
        {
            ClipProblem.Empty => CrewAttachmentProblem.Empty,
            ClipProblem.TooLarge => CrewAttachmentProblem.TooLarge,
            ClipProblem.NotReadable => CrewAttachmentProblem.NotReadable,
            _ => null,
        };
        if (ofFile is { } known)
        {
            return CrewAttachmentAnswers.Of(known, file.FileName, asked.Memory);
        }

        string name = ClipText.FileName(file.FileName);
        string sentence = problem == ClipProblem.Stalled
            ? Say($"Nothing moved for {asked.Planner.Desk.ClipStall.TotalSeconds:0} s while {name} was sent, so it was given up: check the connection and send it again, or a shorter piece.")
            : $"The planner ended without a verdict on {name}: send it again.";
        return asked.Answer(sentence, []) with { Outcome = CrewOutcome.Refused, Private = true, FollowUps = ["judge the demo clip"], Memory = asked.Memory };
    }
}
