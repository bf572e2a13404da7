using Quarterlight.Crew;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about noise and the route: what the planner is asked, and what the crew is told.</summary>
public sealed class NoiseTopicTests
{
    private readonly CannedForecasts canned = new();

    [Theory]
    [InlineData("how loud is it at 50?", "About 64 dB(A) ±4 at the driver's ear at 50 km/h: the scene works with care.")]
    [InlineData("how fast can we go?", "It works up to 40 km/h, with care up to 72 km/h.")]
    [InlineData("fastest speed that still works", "It works up to 40 km/h, with care up to 72 km/h.")]
    [InlineData("what's the loudest noise?", "Loudest: tyres 62 dB(A) (70 %), engine 57 dB(A) (30 %).")]
    [InlineData("what dominates at 500 Hz?", "Loudest in the 500 Hz octave: tyres; all noise there 61 dB.")]
    [InlineData("is the tyre noise or the engine the problem?", "Loudest: tyres 62 dB(A) (70 %), engine 57 dB(A) (30 %).")]
    [InlineData("give the AD a table", "It works up to 40 km/h, with care up to 72 km/h.")]
    public async Task Ask_Noise_DecisionFirst(string question, string headline)
    {
        CrewAnswer answer = await canned.AskAsync(question);

        Assert.Equal(headline, answer.Headline);
        Assert.InRange(answer.Lines.Count, 2, 9);
        Assert.Single(answer.Pictures);
    }

    [Fact]
    public async Task Ask_Table_OneLineARow()
    {
        Assert.Equal("Windows shut, coarse asphalt, dry: yes 0 to 30, care 50, no 80 to 100 km/h.", (await canned.AskAsync("give the AD a table")).Lines[0].Text);
        Assert.Equal("Windows shut, coarse asphalt, dry: yes 0 to 19, care 31, no 50 to 62 mph.", (await canned.AskAsync("give the AD a table", units: UnitPreference.Imperial)).Lines[0].Text);
        Assert.True(canned.NoiseAsked!.PictureInMph);
    }

    [Fact]
    public async Task Ask_Imperial_NeverPromisesMoreThanTheLimit() =>
        Assert.Equal("It works up to 24 mph, with care up to 44 mph.", (await canned.AskAsync("how fast can we go?", units: UnitPreference.Imperial)).Headline);

    [Fact]
    public async Task Ask_Changes_ReachThePlannerOnTopOfTheScene()
    {
        CrewAnswer answer = await canned.AskAsync("how loud with the windows half down in the rain at 70 km/h?");
        DriveConditions drive = canned.NoiseAsked!.Changes.DriveConditions;

        Assert.Equal((70.0, Rain.Light, RoadSurface.CoarseAsphalt), (drive.SpeedKmPerHour, drive.Rain, drive.RoadSurface));
        Assert.Equal(4, drive.OpenWindows.Count(w => w.OpenFraction == 0.5));
        Assert.Equal("noise for School run that goes wrong (invented): 70 km/h, engine running, coarse asphalt, all windows 50 % down, light rain", answer.Understood);
        Assert.Equal("scenes/demo-school-run", canned.NoiseAsked.Scene);
        await canned.AskAsync("how loud is it?");
        Assert.Null(canned.NoiseAsked.Changes);
    }

    [Fact]
    public async Task Ask_NothingWorks_SaysSo()
    {
        canned.Noise.ClearFastestWorksKmPerHour();
        Assert.Equal("No speed is clean; with care up to 72 km/h.", (await canned.AskAsync("how fast can we go?")).Headline);
        canned.Noise.ClearFastestWithCareKmPerHour();
        Assert.Equal("It works at no speed, not even with care.", (await canned.AskAsync("how fast can we go?")).Headline);
    }

    [Theory]
    [InlineData("where on the route is it quiet?")]
    [InlineData("which part of the route can we roll on?")]
    [InlineData("longest quiet stretch?")]
    public async Task Ask_Route_WhereToRollFirst(string question)
    {
        CrewAnswer answer = await canned.AskAsync(question);

        Assert.Equal("Roll on Orchard Street: 1 min 3 s, 700 m; with care on River Road: 2 min 24 s, 2.2 km.", answer.Headline);
        Assert.Equal("Market cobbles: no, 20 km/h for 27 s, 61 dB(A), speech 12 dB over it; loudest tyres.", answer.Lines[1].Text);
        Assert.Equal("scenes/demo-school-run", canned.RouteAsked!.Scene);
    }

    [Fact]
    public async Task Ask_NoRoute_RefusesAndOffersASceneThatHasOne()
    {
        CrewAnswer answer = await canned.AskAsync("longest quiet stretch?", scene: "demo-lay-by");

        Assert.Equal((CrewOutcome.Refused, true), (answer.Outcome, answer.Private));
        Assert.Equal("Argument in a lay-by (invented) has no route.", answer.Headline);
        Assert.Equal(CrewOutcome.Answered, (await canned.AskAsync(answer.FollowUps[0], scene: "demo-lay-by")).Outcome);
        Assert.NotEqual("scenes/demo-lay-by", canned.RouteAsked!.Scene);
    }

    [Fact]
    public async Task Ask_NowhereQuiet_SaysSo()
    {
        canned.Route.QuietRuns.Clear();

        Assert.Equal("Nowhere on this route does the scene work, not even with care.", (await canned.AskAsync("where on the route is it quiet?")).Headline);
    }
}
