using Google.Protobuf;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>Where on the route the scene works.</summary>
internal static class RouteTopic
{
    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        if (asked.Scene is not { } scene)
        {
            return asked.NoScene();
        }

        if (scene.Route.Count == 0)
        {
            return NoRoute(asked, scene);
        }

        var request = new FindQuietStretchesRequest { Scene = scene.Name, Changes = await Forecasts.ChangesAsync(asked).ConfigureAwait(false) };
        FindQuietStretchesResponse response = await asked.Planner.Noise.FindQuietStretchesAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        RouteReport report = response.Report ?? new RouteReport();
        DriveConditions drive = await Forecasts.DriveAsync(asked, Forecasts.CabinOf(asked) ?? new Cabin()).ConfigureAwait(false);
        return asked.Answer(RouteText.Headline(report, asked.Units), RouteText.Lines(report, asked.Units, asked.Request.Detailed)) with
        {
            Understood = Forecasts.Understood(asked, "quiet stretches", Say($"{scene.Route.Count} stretches, {UnitText.Distance(scene.Route.Sum(r => r.LengthM), asked.Units)}; speed as the road allows, else {DriveText.Whole(drive, asked.Units)}")),
            FollowUps = [drive.Rain is Rain.Light or Rain.Heavy ? "and dry?" : "and in the rain?", "how fast can we go?", "what's the loudest noise?"],
            Data = new Dictionary<string, IMessage> { ["route"] = report },
            Memory = Forecasts.Remember(asked),
        };
    }

    private static CrewAnswer NoRoute(Asked asked, Scene scene) => asked.Answer($"{Name(scene.DisplayName, scene.Name)} has no route.", [new(CrewLineKind.Plain, "Keep its stretches with the scene through the planner's API, or ask how fast you can go.")]) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
        FollowUps = [.. Forecasts.OtherScenes(asked, s => s.Route.Count > 0).Select(s => $"longest quiet stretch of the {s}?"), "how fast can we go?"],
        Memory = Forecasts.Remember(asked),
    };
}
