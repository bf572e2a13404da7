using Google.Protobuf;
using Grpc.Core;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Topics;

/// <summary>From where a clip is used with care or redone: shown and set.</summary>
internal static class ClipLimitTopic
{
    public static async Task<CrewAnswer> ShowAsync(Asked asked)
    {
        ClipSettings settings = await ReadAsync(asked).ConfigureAwait(false);
        return asked.Answer(settings.Revision == 0 ? "Clips are held against the default limits." : "Clips are held against the team's limits.", ClipLimitText.All(settings.InForce ?? new ClipThresholds())) with
        {
            Understood = "limits for clips",
            FollowUps = ["set the least speech over noise to 18 dB", "engine needs care on", "back to the defaults"],
            Data = new Dictionary<string, IMessage> { ["clipSettings"] = settings },
            Memory = asked.Memory,
        };
    }

    public static async Task<CrewAnswer> SetAsync(Asked asked)
    {
        ClipThresholds? said = asked.Request.Clip.ResetsLimits ? null : asked.Request.Clip.Limits;
        if (said is null && !asked.Request.Clip.ResetsLimits)
        {
            return asked.Answer("Say which limit and its value, such as \"set the least speech over noise to 18 dB\".", []) with { Outcome = CrewOutcome.Refused, Private = true, FollowUps = ["what are the limits?"], Memory = asked.Memory };
        }

        (ClipSettings settings, bool followed) = await WriteAsync(asked, said).ConfigureAwait(false);
        ClipThresholds now = settings.InForce ?? new ClipThresholds();
        string headline = said is null ? "Back to the default limits for clips, for the whole team." : $"Set for the whole team: {ClipLimitText.Set(said, now)}.";
        List<CrewLine> lines = followed ? [new(CrewLineKind.Plain, Wordings.Say($"The limit for use with care went along to {now.SpeechToNoiseCareDb:0.#} dB, as it cannot be above."))] : [];
        if (said is null)
        {
            lines.AddRange(ClipLimitText.All(now));
        }

        return asked.Answer(headline, lines) with
        {
            Understood = said is null ? "limits for clips back to the defaults" : "other limits for clips",
            FollowUps = ["what are the limits?", "back to the defaults"],
            Data = new Dictionary<string, IMessage> { ["clipSettings"] = settings },
            Memory = asked.Memory,
        };
    }

    // A colleague may set another limit at the same moment: read again and set ours on top, once.
    private static async Task<(ClipSettings Settings, bool CareFollowed)> WriteAsync(Asked asked, ClipThresholds? said)
    {
        for (int attempt = 1; ; attempt++)
        {
            ClipSettings kept = await ReadAsync(asked).ConfigureAwait(false);
            ClipThresholds wanted = said is null ? new ClipThresholds() : kept.Thresholds?.Clone() ?? new ClipThresholds();
            bool followed = false;
            if (said is not null)
            {
                wanted.MergeFrom(said);
                double care = wanted.HasSpeechToNoiseCareDb ? wanted.SpeechToNoiseCareDb : kept.InForce?.SpeechToNoiseCareDb ?? 0;
                followed = said.HasSpeechToNoiseUseDb && !said.HasSpeechToNoiseCareDb && care > said.SpeechToNoiseUseDb;
                if (followed)
                {
                    wanted.SpeechToNoiseCareDb = said.SpeechToNoiseUseDb;
                }
            }

            try
            {
                UpdateClipSettingsResponse response = await asked.Planner.Clips.UpdateClipSettingsAsync(new() { Thresholds = wanted, Revision = kept.Revision }, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
                return (response.Settings, followed);
            }
            catch (RpcException e) when (e.StatusCode == StatusCode.Aborted && attempt == 1)
            {
                // Once more, on top of what is there now.
            }
        }
    }

    private static async Task<ClipSettings> ReadAsync(Asked asked) =>
        (await asked.Planner.Clips.GetClipSettingsAsync(new GetClipSettingsRequest(), asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false)).Settings ?? new ClipSettings();
}
