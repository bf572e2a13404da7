using Google.Protobuf;
using Google.Rpc;
using Grpc.Core;
using Quarterlight.Crew.Clips;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>Whether a test clip can be used.</summary>
internal static class ClipTopic
{
    private const int MostFollowUps = 3;

    public static async Task<CrewAnswer> JudgeAsync(Asked asked)
    {
        if (File(asked) is not { } file)
        {
            return asked.Request.Clip.Again && asked.Memory.LastClip is { } gone ? SendAgain(asked, gone) : NoClip(asked);
        }

        ClipHeader header = ClipSending.Header(asked, file);
        bool planned = header.PlanSourceCase != ClipHeader.PlanSourceOneofCase.None, fromPlan = header.PlanSourceCase == ClipHeader.PlanSourceOneofCase.SentPlan;
        ClipSent sent;
        bool whose = false;
        string noMicrophone = "";
        try
        {
            sent = await ClipUpload.SendAsync(asked.Planner, header, file, asked.Progress, asked.Cancellation).ConfigureAwait(false);
        }
        catch (RpcException e) when (planned && NamesTalker(e))
        {
            // The verdict does not hang on the plan: better without it than not at all.
            (whose, noMicrophone) = (header.TalkerId.Length == 0, header.TalkerId);
            header.ClearPlanSource();
            header.TalkerId = "";
            sent = await ClipUpload.SendAsync(asked.Planner, header, file, asked.Progress, asked.Cancellation).ConfigureAwait(false);
        }

        if (sent.Judged is not { } judged)
        {
            return ClipSending.Problem(asked, file, sent.Problem);
        }

        ClipReport report = judged.Report ?? new ClipReport();
        whose |= planned && noMicrophone.Length == 0 && report.Comparisons.Count == 0 && header.TalkerId.Length == 0 && report.Channels.Count == 1 && asked.Scene?.Talkers.Count > 1;
        List<CrewLine> lines = ClipText.Lines(report, asked.Scene, asked.Units);
        if (whose)
        {
            lines.Insert(Math.Max(0, lines.FindIndex(l => l.Kind == CrewLineKind.Certainty)), new(CrewLineKind.Comparison, $"Not held against the plan yet: say whose microphone it is, such as \"{Whose(asked.Scene!.Talkers[0])}\"."));
        }

        if (noMicrophone.Length > 0)
        {
            lines.Add(new(CrewLineKind.Comparison, $"The plan has no microphone for {Talker(asked.Scene!, noMicrophone)}, so the clip was held against nothing."));
        }

        string? compared = report.Comparisons.Count > 0 ? asked.Request.SceneName : null;
        return asked.Answer(ClipText.Headline(report), lines) with
        {
            Understood = $"clip {ClipText.File(report)}, {Beside(asked, report, planned, fromPlan, whose)}",
            Pictures = Asked.Pictures(judged.Picture, PictureName(report.FileName, header.PictureChannel), asked.Units),
            FollowUps = FollowUps(asked, report, whose),
            Data = new Dictionary<string, IMessage> { ["clip"] = report },
            Memory = Remember(asked, ClipMemory.Of(report, file, compared), planned),
        };
    }

    /// <summary>The picture of one channel: the clip is read once more for it.</summary>
    public static async Task<CrewAnswer> PictureAsync(Asked asked)
    {
        if (asked.Memory.LastClip is not { } last)
        {
            return NoClip(asked);
        }

        int channel = asked.Request.Clip.Channel ?? 0, count = last.Report.Format?.ChannelCount ?? last.Report.Channels.Count;
        if (channel > count)
        {
            return asked.Answer(Say($"The clip has {(count == 1 ? "only one channel" : $"{count} channels")}."), []) with { Outcome = CrewOutcome.Refused, Private = true, FollowUps = ["show me the picture", "details"], Memory = asked.Memory };
        }

        if (last.File is not { } file)
        {
            return SendAgain(asked, last);
        }

        var header = new ClipHeader { FileName = CrewText.Clean(file.FileName, ClipSending.LongestFileName), IncludePicture = true, PictureChannel = channel };
        ClipSent sent = await ClipUpload.SendAsync(asked.Planner, header, file, asked.Progress, asked.Cancellation).ConfigureAwait(false);
        if (sent.Judged is not { } judged)
        {
            return sent.Problem == ClipProblem.NotReadable ? SendAgain(asked, last) : ClipSending.Problem(asked, file, sent.Problem);
        }

        ClipChannel? drawn = channel > 0 ? judged.Report?.Channels.FirstOrDefault(c => c.Number == channel) : ClipText.Channel(judged.Report ?? new ClipReport());
        IReadOnlyList<CrewPicture> pictures = Asked.Pictures(judged.Picture, PictureName(last.Report.FileName, channel), asked.Units);
        string name = ClipText.FileName(last.Report.FileName);
        return asked.Answer(pictures.Count > 0 ? Say($"Channel {drawn?.Number ?? 1} of {name}.") : $"There is no picture of {name}.", drawn is null ? [] : [new(CrewLineKind.Figures, ClipText.Figures(judged.Report!, drawn))]) with
        {
            Understood = Say($"picture of channel {drawn?.Number ?? 1}, {name}"),
            Pictures = pictures,
            FollowUps = ["why?", "details"],
            Memory = asked.Memory with { LastClip = last with { Current = true }, LastRadio = null },
        };
    }

    /// <summary>How to send a clip, in one sentence.</summary>
    public static CrewAnswer NoClip(Asked asked) => asked.Answer("There is no clip yet: give its path in the terminal, such as \"judge ./take3.wav\", or attach the file in the chat.", []) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
        FollowUps = ["judge the demo clip"],
        Memory = asked.Memory,
    };

    public static string Whose(Talker talker) => $"it is the {Name(talker.DisplayName, talker.Id)}'s";

    private static CrewAnswer SendAgain(Asked asked, ClipMemory last) => asked.Answer($"That needs {ClipText.FileName(last.Report.FileName)} itself, and it is not there any more: send it once more with the question.", []) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
        FollowUps = ["details"],
        Memory = asked.Memory,
    };

    private static CrewAttachment? File(Asked asked) => asked.Attachment ?? (asked.Request.Clip.Demo ? DemoClip.Attachment : asked.Request.Clip.Again ? asked.Memory.LastClip?.File : null);

    private static bool NamesTalker(RpcException problem) =>
        problem.GetRpcStatus()?.GetDetail<BadRequest>()?.FieldViolations.Any(v => v.Field.EndsWith("talker_id", StringComparison.Ordinal)) == true;

    private static string Beside(Asked asked, ClipReport report, bool planned, bool fromPlan, bool whose)
    {
        if (!planned)
        {
            return asked.Scene is null ? "beside no plan" : "beside no plan: name its scene for that";
        }

        string scene = Name(asked.Scene!.DisplayName, asked.Scene.Name);
        return whose || report.Comparisons.Count == 0 ? $"not yet beside the plan of {scene}" : $"beside {(fromPlan ? "the plan in force of" : "a new plan of")} {scene}";
    }

    private static CrewMemory Remember(Asked asked, ClipMemory clip, bool planned) => asked.Memory with
    {
        SceneName = planned ? asked.Request.SceneName : asked.Memory.SceneName,
        LastClip = clip,
        LastRadio = null,
    };

    private static IReadOnlyList<string> FollowUps(Asked asked, ClipReport report, bool whose)
    {
        var next = new List<string>();
        if (whose)
        {
            next.AddRange(asked.Scene!.Talkers.Take(MostFollowUps - 1).Select(Whose));
        }

        if (report.Comparisons.Any(c => c.NoiseCorrection is not null))
        {
            next.Add("redo the plan with that noise");
        }

        ClipReason[] reasons = [.. report.Verdict?.Reasons ?? []];
        next.Add(reasons.Any(r => r.Stretches.Count > 0) ? "where exactly?" : reasons.Length > 0 ? "why?" : "loudness?");
        next.Add(report.Channels.Count > 1 ? "which channel?" : "details");
        return [.. next.Take(MostFollowUps)];
    }

    // Asked.Pictures keeps lower-case letters and digits only.
    private static string PictureName(string fileName, int channel)
    {
        string name = new([.. Path.GetFileNameWithoutExtension(fileName).Take(40).Select(char.ToLowerInvariant)]);
        return channel > 0 ? Say($"clip-{name}-channel-{channel}") : $"clip-{name}";
    }
}
