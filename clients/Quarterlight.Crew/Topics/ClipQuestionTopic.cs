using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Topics;

/// <summary>More about the clip judged last, out of the conversation's memory.</summary>
internal static class ClipQuestionTopic
{
    public static CrewAnswer Answer(Asked asked)
    {
        if (asked.Memory.LastClip is not { } last)
        {
            return ClipTopic.NoClip(asked);
        }

        ClipAspect aspect = asked.Request.Clip.Aspect;
        Scene? scene = asked.Vocabulary.Scenes.FirstOrDefault(s => s.Name == last.ComparedScene);
        (string headline, List<CrewLine> lines) = ClipDetailText.Of(last.Report, aspect, scene, asked.Units);
        return asked.Answer(headline, lines) with
        {
            Understood = $"{Words(aspect)} of {ClipText.FileName(last.Report.FileName)}, the clip judged last",
            FollowUps = FollowUps(asked, last, aspect),
            Data = new Dictionary<string, IMessage> { ["clip"] = last.Report },
            Memory = asked.Memory with { LastClip = last with { Current = true }, LastRadio = null },
        };
    }

    private static string Words(ClipAspect aspect) => aspect switch
    {
        ClipAspect.Why => "reasons",
        ClipAspect.Where => "places",
        ClipAspect.Figures => "figures",
        ClipAspect.Channels => "channels",
        ClipAspect.Comparison => "forecast and measurement",
        ClipAspect.Loudness => "loudness and peaks",
        ClipAspect.EngineSpeed => "engine speed",
        ClipAspect.Heard => "what is heard",
        ClipAspect.Noise => "speech and noise",
        ClipAspect.File => "format and notes",
        _ => "verdict",
    };

    private static IReadOnlyList<string> FollowUps(Asked asked, ClipMemory last, ClipAspect aspect)
    {
        var next = new List<string>();
        if (aspect == ClipAspect.Comparison && last.Report.Comparisons.Count == 0)
        {
            next.AddRange((asked.Scene?.Talkers ?? []).Take(2).Select(ClipTopic.Whose));
        }

        if (aspect == ClipAspect.EngineSpeed && last.File is not null && last.Report.Channels.All(c => c.Engine is null))
        {
            next.Add("it has four cylinders");
        }

        if (last.Report.Comparisons.Any(c => c.NoiseCorrection is not null))
        {
            next.Add("redo the plan with that noise");
        }

        bool placed = last.Report.Verdict?.Reasons.Any(r => r.Stretches.Count > 0) == true;
        next.AddRange(aspect != ClipAspect.Why ? ["why?", "can we use it?"] : placed ? ["where exactly?", "details"] : ["details", "loudness?"]);
        return [.. next.Take(3)];
    }
}
