using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Topics;

/// <summary>The plan again with the noise that a clip measured in the real car.</summary>
internal static class ClipReplanTopic
{
    private const int Octaves = 7;

    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        if (asked.Memory.LastClip is not { } last)
        {
            return ClipTopic.NoClip(asked);
        }

        PlanComparison[] measured = [.. last.Report.Comparisons.Where(c => c.NoiseCorrection?.Shifts is { LevelsDb.Count: Octaves } && (asked.Request.TalkerId is null || c.TalkerId == asked.Request.TalkerId))];
        if (measured.Length == 0)
        {
            return NothingMeasured(asked, last);
        }

        if (asked.Vocabulary.Scenes.FirstOrDefault(s => s.Name == last.ComparedScene) is not { } scene)
        {
            return asked.NoScene();
        }

        // The scene of the clip, whatever else was talked about since.
        asked = asked with { Request = asked.Request with { SceneName = scene.Name }, Memory = asked.Memory.SceneName == scene.Name ? asked.Memory : asked.Memory with { SceneName = scene.Name, Plan = null } };
        Plan before = await PlanTopic.InForceAsync(asked).ConfigureAwait(false);
        DriveConditions drive = scene.DriveConditions?.Clone() ?? new DriveConditions();
        drive.NoiseCorrection = Mean(measured, last.Report.FileName);
        string said = measured.Length == 1 ? $"with the noise of {ClipText.FileName(last.Report.FileName)}" : Wordings.Say($"with the noise of {ClipText.FileName(last.Report.FileName)}, the mean of {measured.Length} channels");
        CrewAnswer answer = await WhatIfTopic.BesideAsync(asked, scene, before, new SceneChanges { DriveConditions = drive }, said).ConfigureAwait(false);
        return answer with
        {
            Lines = answer.Lines.Any(l => l.Kind == CrewLineKind.Caution && l.Text.Contains("corrected", StringComparison.Ordinal)) ? answer.Lines : [.. answer.Lines, new(CrewLineKind.Caution, "Caution: that noise holds for a car driven as it was for the clip.")],
            FollowUps = ["and in the rain?", "is the clip usable?"],
            Memory = answer.Memory with { LastClip = last with { Current = false } },
        };
    }

    // One correction stands for all of the cabin: of several microphones the mean in dB is nearest to all of them.
    private static NoiseCorrection Mean(PlanComparison[] measured, string fileName)
    {
        var shifts = new OctaveLevels();
        for (int i = 0; i < Octaves; i++)
        {
            shifts.LevelsDb.Add(measured.Average(m => m.NoiseCorrection.Shifts.LevelsDb[i]));
        }

        return new NoiseCorrection { Shifts = shifts, Source = CrewText.Clean(fileName, CrewText.LongestName) };
    }

    private static CrewAnswer NothingMeasured(Asked asked, ClipMemory last)
    {
        bool compared = last.Report.Comparisons.Count > 0;
        return asked.Answer(
            compared ? "The noise of that clip could not be told apart, so the plan stays as it is: send one with half a minute of the car as it is driven, and some speech." : "That clip was not held against a plan: say whose microphone it is, or send it again after asking for the plan.",
            []) with
        {
            Outcome = CrewOutcome.Refused,
            Private = true,
            FollowUps = compared ? ["why?"] : [.. (asked.Scene?.Talkers ?? []).Take(2).Select(ClipTopic.Whose), "where do the mics go?"],
            Memory = asked.Memory,
        };
    }
}
