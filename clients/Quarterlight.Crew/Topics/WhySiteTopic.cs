using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>Why a site was or was not chosen.</summary>
internal static class WhySiteTopic
{
    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        if (asked.Scene is not { } scene)
        {
            return asked.NoScene();
        }

        Plan plan = await PlanTopic.InForceAsync(asked).ConfigureAwait(false);
        if (asked.Request.Site is not { } said)
        {
            return await WhyThereAsync(asked, scene, plan).ConfigureAwait(false);
        }

        ListMountSitesResponse all = await asked.SitesAsync(scene.Cabin).ConfigureAwait(false);
        Talker? talker = TalkerFor(asked, scene, plan, said, all);
        if (talker is null)
        {
            return asked.Answer("Nobody talks in this scene, so no place was weighed.", []) with { Outcome = CrewOutcome.Refused, Private = true };
        }

        IReadOnlyList<MountSite> sites = SiteFinder.Find(said, talker.SeatId, all.Sites, all.Seats, asked.DriverOnLeft);
        if (sites.Count == 0)
        {
            return NoSuchPlace(asked, said, all);
        }

        (MountSite site, ExplainSiteResponse answer) = await BestOfAsync(asked, sites, talker.Id).ConfigureAwait(false);
        List<CrewLine> lines = WhyText.Lines(answer, scene, asked.Vocabulary.KitOf(scene), talker.Id, asked.Units);
        if (sites.Count > 1)
        {
            lines.Add(new(CrewLineKind.Plain, $"That is the best of {sites.Count} such places: {string.Join("; ", sites.Select(s => Name(s.Words)))}."));
        }

        string who = Talker(scene, talker.Id), where = PlacementText.Place(site), headline = WhyText.Headline(answer, who, Capital(where), asked.Units);
        return asked.Answer(headline, [.. lines.Where(l => l.Text != headline)]) with
        {
            Understood = PlanTopic.Understood(asked, $"the {where} for {who}, {Name(scene.DisplayName, scene.Name)}"),
            FollowUps = answer.Chosen ? ["next best", "what sites are there?"] : ["mount plan", "what sites are there?"],
            Data = new Dictionary<string, IMessage> { ["site"] = site, ["explanation"] = answer },
            Memory = asked.Memory with { SceneName = scene.Name, Plan = plan },
        };
    }

    /// <summary>The car has no such place: says so and offers what it has.</summary>
    public static CrewAnswer NoSuchPlace(Asked asked, SiteMention said, ListMountSitesResponse all)
    {
        string kinds = Join([.. all.Sites.Select(s => s.Family).Distinct().Select(SiteWords.Say).Distinct()]);
        return asked.Answer($"This car has no {SiteWords.Say(said.Families[0])} to fix a microphone to.", [new(CrewLineKind.Plain, $"It has: {kinds}.")]) with
        {
            Outcome = CrewOutcome.Refused,
            Private = true,
            FollowUps = ["what sites are there?"],
        };
    }

    // "Why there?" without a place: the chosen place of the talker named, or of everyone.
    private static async Task<CrewAnswer> WhyThereAsync(Asked asked, Scene scene, Plan plan)
    {
        TalkerPlacement[] placed = [.. (plan.Best?.Placements ?? []).Where(p => asked.Request.TalkerId is null || p.TalkerId == asked.Request.TalkerId)];
        if (placed.Length == 0)
        {
            return asked.Answer(PlanText.Headline(plan), PlanText.Uncovered(plan)) with { Memory = asked.Memory with { SceneName = scene.Name, Plan = plan } };
        }

        var lines = new List<CrewLine>();
        var data = new Dictionary<string, IMessage>();
        string headline = "";
        foreach (TalkerPlacement p in placed)
        {
            ExplainSiteResponse answer = await ExplainAsync(asked, p.Site.Id, p.TalkerId).ConfigureAwait(false);
            string sentence = WhyText.Headline(answer, Talker(scene, p.TalkerId), Capital(PlacementText.Place(p.Site)), asked.Units);
            data[$"explanation:{p.TalkerId}"] = answer;
            if (headline.Length == 0)
            {
                headline = sentence;
            }
            else
            {
                lines.Add(new(CrewLineKind.Plain, sentence));
            }

            lines.Add(new(CrewLineKind.Figures, PlacementText.Figures(plan, p)));
        }

        return asked.Answer(headline, lines) with
        {
            Understood = PlanTopic.Understood(asked, $"why the places chosen, {Name(scene.DisplayName, scene.Name)}"),
            FollowUps = ["next best", "details"],
            Data = data,
            Memory = asked.Memory with { SceneName = scene.Name, Plan = plan },
        };
    }

    // Of several places that fit the words, the one that says most: the chosen one, else the best usable, else the first refused.
    private static async Task<(MountSite Site, ExplainSiteResponse Answer)> BestOfAsync(Asked asked, IReadOnlyList<MountSite> sites, string talkerId)
    {
        var answers = new List<(MountSite Site, ExplainSiteResponse Answer)>();
        foreach (MountSite site in sites)
        {
            answers.Add((site, await ExplainAsync(asked, site.Id, talkerId).ConfigureAwait(false)));
        }

        return answers.MaxBy(a => a.Answer.Chosen ? double.MaxValue : a.Answer.Comparison?.There?.Figures?.ScoreDb ?? double.MinValue);
    }

    private static async Task<ExplainSiteResponse> ExplainAsync(Asked asked, string siteId, string talkerId) =>
        await asked.Planner.Placement.ExplainSiteAsync(new() { Scene = asked.Request.SceneName, SiteId = siteId, TalkerId = talkerId }, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);

    // The talker named, else who sits at the place, else who was given such a place, else the nearest.
    private static Talker? TalkerFor(Asked asked, Scene scene, Plan plan, SiteMention said, ListMountSitesResponse all)
    {
        if (scene.Talkers.FirstOrDefault(t => t.Id == asked.Request.TalkerId) is { } named)
        {
            return named;
        }

        if (said.Seat?.SeatIds(asked.DriverOnLeft).Select(id => scene.Talkers.FirstOrDefault(t => t.SeatId == id)).FirstOrDefault(t => t is not null) is { } seated)
        {
            return seated;
        }

        if ((plan.Best?.Placements ?? []).FirstOrDefault(p => p.Site is not null && said.Families.Contains(p.Site.Family)) is { } given)
        {
            return scene.Talkers.FirstOrDefault(t => t.Id == given.TalkerId);
        }

        MountSite? place = SiteFinder.Find(said, null, all.Sites, all.Seats, asked.DriverOnLeft) is { Count: > 0 } found ? found[0] : null;
        return scene.Talkers.MinBy(t => Math.Abs((all.Seats.FirstOrDefault(s => s.Id == t.SeatId)?.ReferencePoint?.XM ?? 0) - (place?.Position?.XM ?? 0)));
    }
}
