using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>Gain, pad and safety track for the plan's microphones, and the transmitters.</summary>
internal static class LevelTopic
{
    // What the contract takes when nothing is said.
    private const double UsualHeadroomDb = 6;

    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        LevelSaid said = asked.Request.Forecast.Levels;
        if (asked.Scene is not { } scene || Forecasts.KitOf(asked) is not { } kit)
        {
            return asked.NoScene();
        }

        if (kit.RecorderGain is null)
        {
            return NoInputs(asked, kit);
        }

        if (scene.Talkers.Count == 0)
        {
            return asked.Answer("Nobody talks in this scene, so there is no level to set.", []) with { Outcome = CrewOutcome.Refused, Private = true, FollowUps = ["list scenes"], Memory = Forecasts.Remember(asked) };
        }

        var request = new PlanLevelsRequest { Scene = scene.Name, Changes = await Forecasts.ChangesAsync(asked).ConfigureAwait(false) };
        if (said.Effort is { } effort)
        {
            request.Efforts.Add(scene.Talkers.Where(t => said.TalkerId is null || t.Id == said.TalkerId).Select(t => new TalkerEffort { TalkerId = t.Id, Loudest = effort }));
        }

        if (said.HeadroomDb is { } headroom)
        {
            request.HeadroomDb = headroom;
        }

        TransmitterAudio? pack = said.Wireless == true ? kit.TransmitterAudio.FirstOrDefault(t => t.Feed == TransmitterFeed.Microphone) : null;
        request.MicrophoneTransmitterId = pack?.Id ?? "";
        PlanLevelsResponse response = await asked.Planner.Placement.PlanLevelsAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        LevelReport report = response.Report ?? new LevelReport();
        var shown = new LevelShown(report, scene, kit, said, asked.Units);
        return asked.Answer(LevelText.Headline(shown), LevelText.Lines(shown, asked.Request.Detailed)) with
        {
            Understood = Forecasts.Understood(asked, "gain", Details(scene, said, pack)),
            FollowUps = FollowUps(scene, kit, said),
            Data = new Dictionary<string, IMessage> { ["levels"] = report },
            Memory = Forecasts.Remember(asked),
        };
    }

    private static string Details(Scene scene, LevelSaid said, TransmitterAudio? pack)
    {
        string who = said.TalkerId is { } id ? Talker(scene, id) : "everyone";
        string effort = said.Effort is { } loudest ? $"{who} {Effort(loudest)} at the loudest" : $"{who}, one step louder than the scene says in hand";
        return Say($"{effort}, {said.HeadroomDb ?? UsualHeadroomDb:0.#} dB of headroom, {(pack is null ? "microphones on cables" : $"body-worn microphones through the {Name(pack.DisplayName, pack.Id)}")}");
    }

    private static IReadOnlyList<string> FollowUps(Scene scene, Kit kit, LevelSaid said)
    {
        string talker = Talker(scene, scene.Talkers[0].Id);
        string wireless = kit.TransmitterAudio.Count > 0 && said.Wireless != true ? "how should I set the transmitter gain?" : "do I need a pad?";
        return [said.Effort == VocalEffort.Shout ? $"what if the {talker} whispers?" : $"what gain if the {talker} shouts?", wireless, said.HeadroomDb is null ? "and with 10 dB of headroom?" : "what gain for everyone?"];
    }

    private static CrewAnswer NoInputs(Asked asked, Kit kit)
    {
        string[] others = [.. asked.Vocabulary.Kits.Where(k => k.RecorderGain is not null).Take(1).Select(k => $"what gain with the {Name(k.DisplayName, k.Name)}?")];
        return asked.Answer($"The {Name(kit.DisplayName, kit.Name)} says nothing of its recorder's inputs, so no gain can be worked out.", [new(CrewLineKind.Plain, "Give the kit its recorder's full scale, gain range and noise through the planner's API, or name another kit.")]) with
        {
            Outcome = CrewOutcome.Refused,
            Private = true,
            FollowUps = [.. others, "list kits"],
            Memory = Forecasts.Remember(asked),
        };
    }
}
