using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Topics;

/// <summary>Mount plans: the standard answer, the long one, the runners-up.</summary>
internal static class PlanTopic
{
    public static async Task<CrewAnswer> PlanAsync(Asked asked)
    {
        if (asked.Scene is null)
        {
            return asked.NoScene();
        }

        PlanPlacementResponse response = await asked.PlanAsync(null, asked.IncludePicture).ConfigureAwait(false);
        Plan plan = response.Plan;
        return asked.Answer(PlanText.Headline(plan), PlanText.Lines(plan, asked.Units)) with
        {
            Understood = Understood(asked, "mount plan, " + PlanText.Inputs(plan, asked.Units)),
            Pictures = Asked.Pictures(response.Picture, plan.Scene.Name + "-plan", asked.Units),
            FollowUps = FollowUps(plan),
            Data = new Dictionary<string, Google.Protobuf.IMessage> { ["plan"] = plan },
            Memory = Remember(asked, plan),
        };
    }

    public static async Task<CrewAnswer> DetailsAsync(Asked asked)
    {
        if (asked.Scene is null)
        {
            return asked.NoScene();
        }

        Plan plan = await InForceAsync(asked).ConfigureAwait(false);
        return asked.Answer(PlanText.Headline(plan), DetailText.Lines(plan, asked.Units)) with
        {
            Understood = "the plan in full, " + PlanText.Inputs(plan, asked.Units),
            FollowUps = FollowUps(plan),
            Data = new Dictionary<string, Google.Protobuf.IMessage> { ["plan"] = plan },
            Memory = Remember(asked, plan),
        };
    }

    public static async Task<CrewAnswer> RunnerUpAsync(Asked asked)
    {
        if (asked.Scene is null)
        {
            return asked.NoScene();
        }

        Plan plan = await InForceAsync(asked).ConfigureAwait(false);
        int index = Math.Min(asked.Request.RunnerUp, plan.RunnersUp.Count) - 1;
        if (index < 0)
        {
            return asked.Answer("There is no runner-up: no other plan is different enough.", []) with { Memory = Remember(asked, plan) };
        }

        PlanOption option = plan.RunnersUp[index];
        List<CrewLine> lines = [.. option.Placements.Select(p => new CrewLine(CrewLineKind.Talker, PlacementText.Line(plan, p, asked.Units)))];
        lines.AddRange(option.Placements.Select(p => new CrewLine(CrewLineKind.Figures, PlacementText.Figures(plan, p))));
        lines.Add(new(CrewLineKind.Certainty, PlanText.Certainty(plan)));
        Picture? picture = asked.IncludePicture
            ? (await asked.Planner.Placement.DrawPlanAsync(new() { Plan = plan, OptionIndex = index + 1 }, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false)).Picture
            : null;
        return asked.Answer(PlanText.RunnerUp(plan, index, asked.Units), lines) with
        {
            Understood = Wordings.Say($"runner-up {index + 1}, {PlanText.Inputs(plan, asked.Units)}"),
            Pictures = Asked.Pictures(picture, Wordings.Say($"{plan.Scene.Name}-runner-up-{index + 1}"), asked.Units),
            FollowUps = plan.RunnersUp.Count > index + 1 ? ["second runner-up", "mount plan"] : ["mount plan"],
            Data = new Dictionary<string, Google.Protobuf.IMessage> { ["runnerUp"] = option, ["plan"] = plan },
            Memory = Remember(asked, plan),
        };
    }

    /// <summary>The plan remembered for this scene as it stands, else a new one.</summary>
    public static async Task<Plan> InForceAsync(Asked asked)
    {
        if (asked.Memory.Plan is { } kept && kept.Scene?.Name == asked.Request.SceneName && kept.Scene?.Revision == asked.Scene?.Revision
            && kept.Cabin?.Revision == asked.Cabin?.Revision && kept.Kit?.Revision == asked.Vocabulary.KitOf(asked.Scene)?.Revision)
        {
            return kept;
        }

        return (await asked.PlanAsync(null, false).ConfigureAwait(false)).Plan;
    }

    /// <summary>What was understood, with the way to another scene when this one was only guessed.</summary>
    public static string Understood(Asked asked, string what) => asked.SceneGuessed
        ? $"{what} (the scene last written; name another to plan it)" : what;

    private static CrewMemory Remember(Asked asked, Plan plan) => asked.Memory with { SceneName = asked.Request.SceneName, Plan = plan };

    private static IReadOnlyList<string> FollowUps(Plan plan)
    {
        string talker = plan.Best?.Placements.Count > 0 ? Wordings.Talker(plan.Scene, plan.Best.Placements[0].TalkerId) : "driver";
        return [plan.RunnersUp.Count > 0 ? "next best" : "what sites are there?", "what if the windows are down?", $"why not the visor for the {talker}?"];
    }
}
