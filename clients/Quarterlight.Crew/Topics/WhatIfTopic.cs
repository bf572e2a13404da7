using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>The plan under changed circumstances, beside the plan in force.</summary>
internal static class WhatIfTopic
{
    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        if (asked.Scene is not { } scene)
        {
            return asked.NoScene();
        }

        Plan before = await PlanTopic.InForceAsync(asked).ConfigureAwait(false);
        SceneChanges changes = asked.Request.AddsToLast && asked.Memory.LastChanges is { } last ? last.Clone() : new SceneChanges();
        var said = new List<string>();
        await ChangeDriveAsync(asked, scene, changes, said).ConfigureAwait(false);
        if (await ChangeSitesAsync(asked, changes, said).ConfigureAwait(false) is { } problem)
        {
            return problem;
        }

        ChangeKit(asked, before, changes, said);
        if (LeavesNothing(asked, changes))
        {
            return asked.Answer("That leaves no microphone in the kit.", [new(CrewLineKind.Plain, "Leave at least one kind in, or name another kit.")]) with { Outcome = CrewOutcome.Refused, Private = true, FollowUps = ["list kits"] };
        }

        return await BesideAsync(asked, scene, before, changes, Join(said)).ConfigureAwait(false);
    }

    /// <summary>Plans with the changes and answers beside the plan in force.</summary>
    public static async Task<CrewAnswer> BesideAsync(Asked asked, Scene scene, Plan before, SceneChanges changes, string change)
    {
        PlanPlacementResponse response = await asked.PlanAsync(changes, asked.IncludePicture).ConfigureAwait(false);
        Plan after = response.Plan;
        return asked.Answer(WhatIfText.Headline(before, after, change), WhatIfText.Lines(before, after, asked.Units)) with
        {
            Understood = PlanTopic.Understood(asked, $"{Name(scene.DisplayName, scene.Name)}, {change}, beside the plan as it stands ({DriveText.Whole(scene.DriveConditions, asked.Units)})"),
            Pictures = Asked.Pictures(response.Picture, scene.Name + "-what-if", asked.Units),
            FollowUps = FollowUps(changes),
            Data = new Dictionary<string, IMessage> { ["plan"] = after, ["planBefore"] = before, ["changes"] = changes },
            Memory = asked.Memory with { SceneName = scene.Name, Plan = before, LastChanges = changes },
        };
    }

    private static async Task ChangeDriveAsync(Asked asked, Scene scene, SceneChanges changes, List<string> said)
    {
        if (asked.Request.Conditions.IsEmpty)
        {
            if (changes.DriveConditions is not null)
            {
                said.Add(DriveText.Change(scene.DriveConditions, changes.DriveConditions, asked.Units));
            }

            return;
        }

        IReadOnlyList<string> panes = asked.Request.Conditions.Windows.Count > 0 ? await PanesAsync(asked, scene.Cabin, asked.DriverOnLeft).ConfigureAwait(false) : [];
        DriveConditions start = changes.DriveConditions ?? scene.DriveConditions ?? new DriveConditions();
        changes.DriveConditions = asked.Request.Conditions.ApplyTo(start, asked.DriverOnLeft, panes);
        said.Add(DriveText.Change(scene.DriveConditions, changes.DriveConditions, asked.Units));
    }

    /// <summary>Panes of a car that wind down.</summary>
    public static async Task<IReadOnlyList<string>> PanesAsync(Asked asked, string cabinName, bool driverOnLeft)
    {
        ListMountSitesResponse sites = await asked.SitesAsync(cabinName).ConfigureAwait(false);
        return [.. sites.Sites.Where(s => s.OnMovingGlass && s.SeatId.Length > 0).Select(s => PaneOf(s.SeatId, driverOnLeft)).Distinct().Order(StringComparer.Ordinal)];
    }

    private static string PaneOf(string seatId, bool driverOnLeft) => seatId switch
    {
        "driver" => driverOnLeft ? "front-left" : "front-right",
        "front-passenger" => driverOnLeft ? "front-right" : "front-left",
        _ => seatId,
    };

    private static async Task<CrewAnswer?> ChangeSitesAsync(Asked asked, SceneChanges changes, List<string> said)
    {
        if (!asked.Request.SiteRemoved || asked.Request.Site is not { } site || asked.Scene is not { } scene)
        {
            return null;
        }

        ListMountSitesResponse all = await asked.SitesAsync(scene.Cabin).ConfigureAwait(false);
        IReadOnlyList<MountSite> found = site.SiteId is null && site.Seat is null && site.Qualifiers.Count == 0 && site.Side == SeatPlace.Any && asked.Request.TalkerId is null && !site.Families.Contains(MountFamily.BodyWorn)
            ? [.. all.Sites.Where(s => site.Families.Contains(s.Family))]
            : SiteFinder.Find(site, scene.Talkers.FirstOrDefault(t => t.Id == asked.Request.TalkerId)?.SeatId, all.Sites, all.Seats, asked.DriverOnLeft);
        if (found.Count == 0)
        {
            return WhySiteTopic.NoSuchPlace(asked, site, all);
        }

        changes.RemovedSiteIds.Add(found.Select(s => s.Id).Except(changes.RemovedSiteIds));
        said.Add(found.Count == 1 ? $"without the {Name(found[0].Words)}" : $"without the {SiteWords.Say(found[0].Family)} ({Say($"{found.Count}")} places)");
        return null;
    }

    private static void ChangeKit(Asked asked, Plan before, SceneChanges changes, List<string> said)
    {
        CrewRequest request = asked.Request;
        Kit? kit = asked.Vocabulary.KitOf(asked.Scene);
        List<string> removed = [.. request.RemovedMicrophoneIds];
        if (request.OnlyMicrophoneIds.Count > 0 && kit is not null)
        {
            removed.AddRange(kit.Microphones.Select(m => m.Id).Except(request.OnlyMicrophoneIds));
            said.Add($"with only {Join([.. request.OnlyMicrophoneIds.Select(id => "the " + Microphone(kit, id))])}");
        }
        else if (request.InsteadMicrophoneIds.Count > 0)
        {
            string[] given = [.. (before.Best?.Placements ?? []).Where(p => request.TalkerId is null || p.TalkerId == request.TalkerId).Select(p => p.MicrophoneId).Distinct().Except(request.InsteadMicrophoneIds)];
            removed.AddRange(given);
            string instead = given.Length == 0 ? "" : $" instead of {Join([.. given.Select(id => "the " + Microphone(kit, id))])}";
            said.Add($"with {Join([.. request.InsteadMicrophoneIds.Select(id => "the " + Microphone(kit, id))])}{instead}");
        }
        else if (removed.Count > 0)
        {
            said.Add($"without {Join([.. removed.Select(id => "the " + Microphone(kit, id))])}");
        }

        changes.RemovedMicrophoneIds.Add(removed.Distinct().Except(changes.RemovedMicrophoneIds));
        if (request.RemovedShotIds.Count > 0)
        {
            changes.RemovedShotIds.Add(request.RemovedShotIds.Except(changes.RemovedShotIds));
            said.Add($"without camera {Join([.. request.RemovedShotIds.Select(Name)])}");
        }

        if (request.KitName is not null)
        {
            changes.Kit = request.KitName;
            said.Add($"with the {Name(asked.Vocabulary.Kits.First(k => k.Name == request.KitName).DisplayName, request.KitName)}");
        }

        if (request.CabinName is not null)
        {
            changes.Cabin = request.CabinName;
            said.Add($"in the {Name(asked.Vocabulary.Cabins.First(c => c.Name == request.CabinName).DisplayName, request.CabinName)}");
        }
    }

    private static bool LeavesNothing(Asked asked, SceneChanges changes)
    {
        string kitName = changes.Kit.Length > 0 ? changes.Kit : asked.Scene?.Kit ?? "";
        return asked.Vocabulary.Kits.FirstOrDefault(k => k.Name == kitName) is { } kit && kit.Microphones.All(m => changes.RemovedMicrophoneIds.Contains(m.Id));
    }

    private static IReadOnlyList<string> FollowUps(SceneChanges changes) => changes.DriveConditions?.Rain is Rain.Light or Rain.Heavy
        ? ["and with the windows shut?", "mount plan"] : ["and in the rain?", "mount plan"];
}
