using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Asks one question of a desk whose planner has this radio service.</summary>
internal static class RadioDesk
{
    public static Task<FakePlanner> StartAsync(CannedRadio radio, IReadOnlyList<Kit>? kits = null) =>
        FakePlanner.StartAsync(_ => new PlanPlacementResponse { Plan = new Plan { Scene = DemoData.Scenes[^1].Clone(), Best = new PlanOption() } }, radio: radio, kits: kits);

    public static async Task<CrewAnswer> AskAsync(this CannedRadio radio, string question, string scene = "demo-school-run", UnitPreference? units = null, bool picture = true, IReadOnlyList<Kit>? kits = null)
    {
        await using FakePlanner fake = await StartAsync(radio, kits);
        return await new CrewDesk(fake.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = question, Scene = scene, Units = units, IncludePicture = picture }, TestContext.Current.CancellationToken);
    }
}
