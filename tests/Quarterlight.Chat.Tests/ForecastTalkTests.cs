using Google.Rpc;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>How questions about heat, run time, levels and noise go on from each other, and what goes wrong with them.</summary>
public sealed class ForecastTalkTests
{
    private static readonly CrewVocabulary Vocabulary = new(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);

    private readonly CannedForecasts canned = new();

    [Theory]
    [InlineData("how long can we roll before they melt?", CrewIntent.HeatForecast)]
    [InlineData("what rhythm of rolling and cooling under the pop-up?", CrewIntent.HeatForecast)]
    [InlineData("what would shade buy us?", CrewIntent.HeatForecast)]
    [InlineData("how long can we roll at 7am", CrewIntent.HeatForecast)]
    [InlineData("what runs out first?", CrewIntent.RunTime)]
    [InlineData("when do I swap batteries at -10 C?", CrewIntent.RunTime)]
    [InlineData("only rolling in takes, do the batteries last 6 hours?", CrewIntent.RunTime)]
    [InlineData("gain for the driver", CrewIntent.Levels)]
    [InlineData("what gain for a shouted line with 10 dB of headroom?", CrewIntent.Levels)]
    [InlineData("how should I set the transmitter gain?", CrewIntent.Levels)]
    [InlineData("how loud is it at 50?", CrewIntent.NoiseForecast)]
    [InlineData("how fast can we go in the rain?", CrewIntent.NoiseForecast)]
    [InlineData("where on the route is it quiet?", CrewIntent.QuietStretches)]
    [InlineData("which stretches work in heavy rain", CrewIntent.QuietStretches)]
    public async Task FollowUps_SentBackVerbatim_AreUnderstood(string question, CrewIntent intent)
    {
        CrewAnswer answer = await canned.AskAsync(question);

        Assert.Equal((CrewOutcome.Answered, intent), (answer.Outcome, answer.Intent));
        Assert.InRange(answer.FollowUps.Count, 1, 3);
        foreach (string next in answer.FollowUps)
        {
            CrewAnswer then = await canned.AskAsync(next, memory: answer.Memory);

            Assert.Equal(CrewOutcome.Answered, then.Outcome);
            Assert.InRange(then.Intent, CrewIntent.HeatForecast, CrewIntent.QuietStretches);
        }
    }

    [Fact]
    public async Task FollowUps_AfterEveryRefusal_AreUnderstood()
    {
        Kit[] kits = [.. DemoData.Kits.Select(k => k.Clone())];
        Scene[] scenes = [.. DemoData.Scenes.Select(s => s.Clone())];
        Array.ForEach(kits, k => (k.RecorderGain, k.RecordingMedia) = (null, null));
        Array.ForEach(kits, k => k.PoweredDevices.Clear());
        Array.ForEach(scenes, s => s.ShootDay = null);
        Array.ForEach(scenes, s => s.Route.Clear());
        foreach (string question in new[] { "how long can we roll?", "what runs out first?", "gain", "longest quiet stretch?" })
        {
            CrewAnswer answer = await canned.AskAsync(question, kits: kits, scenes: scenes);

            Assert.Equal((CrewOutcome.Refused, true), (answer.Outcome, answer.Private));
            Assert.NotEmpty(answer.FollowUps);
            Assert.All(answer.FollowUps, next => Assert.NotEqual(CrewIntent.Unknown, RequestReader.Read(next, Vocabulary, answer.Memory, UnitPreference.Metric).Intent));
        }
    }

    [Fact]
    public async Task Ask_AndInShade_AddsToTheLastQuestion()
    {
        CrewAnswer first = await canned.AskAsync("how long can we roll at 9am with three people in it?", scene: "demo-lay-by");
        CrewAnswer shade = await canned.AskAsync("and in shade?", scene: null, memory: first.Memory);
        CrewAnswer later = await canned.AskAsync("and at 14:00?", scene: null, memory: shade.Memory);
        ShootDay day = canned.HeatAsked!.Setup.Day;

        Assert.Equal(CrewIntent.HeatForecast, later.Intent);
        Assert.Equal((CarShade.PopUp, 3, 14), (day.Shade, day.Occupants.AdultCount, day.StartTime.ToDateTimeOffset().ToOffset(TimeSpan.FromHours(2)).Hour));
        Assert.Contains("under a pop-up or in open shade", later.Understood, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_NewHeatQuestion_StartsAfreshButKeepsTheWeather()
    {
        CrewAnswer first = await canned.AskAsync("it's 38 C out, how long can we roll under the pop-up?", scene: "demo-lay-by");
        await canned.AskAsync("how long do we cool first?", scene: null, memory: first.Memory);

        Assert.Equal((38.0, CarShade.None), (canned.HeatAsked!.Setup.Day.Air.TemperatureC, canned.HeatAsked.Setup.Day.Shade));
    }

    [Fact]
    public async Task Ask_NoiseGoesOn_WindowsAndRainAddUp()
    {
        CrewAnswer first = await canned.AskAsync("how loud is it at 70 km/h?");
        CrewAnswer rain = await canned.AskAsync("and in the rain?", memory: first.Memory);
        await canned.AskAsync("and with the windows half down?", memory: rain.Memory);
        DriveConditions drive = canned.NoiseAsked!.Changes.DriveConditions;

        Assert.Equal((70.0, Rain.Light, 4), (drive.SpeedKmPerHour, drive.Rain, drive.OpenWindows.Count));
    }

    [Fact]
    public async Task Ask_LevelsGoOn_TalkerAndEffortAddUp()
    {
        CrewAnswer first = await canned.AskAsync("what gain for a shouted line with 10 dB of headroom?");
        await canned.AskAsync("and for the child?", memory: first.Memory);

        Assert.Equal([("child", VocalEffort.Shout)], canned.LevelsAsked!.Efforts.Select(e => (e.TalkerId, e.Loudest)));
        Assert.Equal(10, canned.LevelsAsked.HeadroomDb);
    }

    [Theory] // The plan, the link and a clip keep their questions.
    [InlineData("what about 60 km/h with windows down?", CrewIntent.WhatIf)]
    [InlineData("what if the windows are down?", CrewIntent.WhatIf)]
    [InlineData("where do the mics go?", CrewIntent.Plan)]
    [InlineData("without the lavs", CrewIntent.WhatIf)]
    [InlineData("why not the visor for the driver?", CrewIntent.WhySite)]
    [InlineData("how far can we fall back?", CrewIntent.LinkCheck)]
    [InlineData("list scenes", CrewIntent.ListScenes)]
    [InlineData("thanks", CrewIntent.Unknown)]
    [InlineData("use imperial", CrewIntent.SetUnits)]
    public void Read_AfterRunTime_OtherQuestionsStayTheirOwn(string text, CrewIntent intent)
    {
        var memory = new CrewMemory { SceneName = DemoData.MainScene, LastForecast = new ForecastMemory(CrewIntent.RunTime, new ForecastSaid()) };

        Assert.Equal(intent, RequestReader.Read(text, Vocabulary, memory, UnitPreference.Metric).Intent);
        Assert.Equal(intent, RequestReader.Read(text, Vocabulary, memory with { LastForecast = null }, UnitPreference.Metric).Intent);
    }

    [Fact]
    public async Task Ask_PlanAfterHeat_EndsTheTalkAboutHeat()
    {
        CrewAnswer first = await canned.AskAsync("how long can we roll?");
        Assert.NotNull(first.Memory.LastForecast);

        Assert.Null((await canned.AskAsync("where do the mics go?", memory: first.Memory)).Memory.LastForecast);
    }

    [Theory]
    [InlineData("setup.day.air.temperature_c", "The value is 80 °C. It must be -30 to 55 °C.", "Please check the day's temperature outside: the value is 80 °C. It must be -30 to 55 °C.")]
    [InlineData("setup.day.takes[1].duration_min", "It is missing.", "Please check the day's second take's length of the day: it is missing.")]
    [InlineData("roll_min", "The value is 500.", "Please check the length of a take: the value is 500.")]
    [InlineData("setup.kit.powered_devices[0].battery_id", "No battery is named.", "Please check the kit's first device's battery: no battery is named.")]
    [InlineData("scene.route[2].speed_limit_km_per_hour", "It is missing.", "Please check the third stretch's speed limit: it is missing.")]
    public async Task Ask_FieldRefused_SaidInPlainWords(string field, string description, string sentence)
    {
        canned.Refusal = () => FakePlanner.Invalid((field, description));

        CrewAnswer answer = await canned.AskAsync("how long can we roll?");

        Assert.Equal((CrewOutcome.Refused, true), (answer.Outcome, answer.Private));
        Assert.Equal(sentence, answer.Headline);
    }

    [Fact]
    public async Task Ask_OlderPlanner_SaysSo()
    {
        await using FakePlanner old = await FakePlanner.StartAsync(_ => new PlanPlacementResponse());
        foreach (string question in new[] { "how long can we roll?", "what runs out first?", "gain", "how fast can we go?", "longest quiet stretch?" })
        {
            CrewAnswer answer = await new CrewDesk(old.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = question, Scene = "demo-school-run" }, TestContext.Current.CancellationToken);

            Assert.StartsWith("This planner is older than this program", answer.Headline, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("how long can we roll?")]
    [InlineData("what rhythm of rolling and cooling?")]
    [InlineData("what would shade buy us?")]
    [InlineData("what runs out first?")]
    [InlineData("how many cards do I need?")]
    [InlineData("gain")]
    [InlineData("do I need a pad?")]
    [InlineData("how loud is it at 50?")]
    [InlineData("what dominates at 500 Hz?")]
    [InlineData("give the AD a table")]
    [InlineData("where on the route is it quiet?")]
    public async Task Ask_BareReport_IsAnsweredWithoutFailing(string question)
    {
        (canned.Heat, canned.RunTime, canned.Levels, canned.Noise, canned.Route) = (new HeatReport(), new RunTimeReport(), new LevelReport(), new NoiseReport(), new RouteReport());

        Assert.Equal(CrewOutcome.Answered, (await canned.AskAsync(question)).Outcome);
    }

    [Fact]
    public async Task Ask_HostileWordsFromThePlanner_AreCleaned()
    {
        const string hostile = "@everyone **now** `x` <b>\u001b[31m";
        canned.Heat.Limits[0].Reason = canned.Heat.Options[0].Words = canned.Heat.Advisories[0].Message = hostile;
        canned.RunTime.Items[0].DisplayName = canned.RunTime.Swaps[0].Words = canned.RunTime.Swaps[0].AfterTake = canned.RunTime.BrokenTake = hostile;
        canned.Levels.Inputs[0].Words = canned.Levels.Inputs[0].LimiterWords = canned.Levels.Inputs[0].MicrophoneId = canned.Levels.Sends[0].Words = hostile;
        (canned.Levels.Inputs[0].Verdict, canned.Noise.Talkers[0].DisplayName, canned.Noise.Table[0].Words) = (ChainVerdict.Tight, hostile, hostile);
        canned.Noise.Noise.Shares[0].Words = canned.Noise.Noise.DominantWords[0] = canned.Route.Stretches[0].Label = canned.Route.QuietRuns[1].FirstLabel = canned.Route.Stretches[0].DominantWords = hostile;

        foreach (string question in new[] { "how long can we roll?", "what would shade buy us?", "what runs out first?", "when do I swap batteries?", "gain", "safety track?", "how loud is it at 50?", "give the AD a table", "where on the route is it quiet?" })
        {
            CrewAnswer answer = await canned.AskAsync(question);

            Assert.DoesNotContain(answer.Lines.Select(l => l.Text).Append(answer.Headline).Append(answer.Understood).Concat(answer.FollowUps), t => t.Any(c => c is '@' or '*' or '`' or '<' or '>' or '\u001b'));
        }
    }

    [Fact]
    public async Task Ask_Refused_KeepsTheExceptionToItself()
    {
        canned.Refusal = () => FakePlanner.Refusal(Code.Internal, "REASON", "reference", "ab12");

        Assert.DoesNotContain("Exception", (await canned.AskAsync("how fast can we go?")).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_SafetyAdvisories_AreNeverCut()
    {
        canned.Heat.Advisories.Add(Enumerable.Range(0, 5).Select(i => new Advisory { Code = "s", Message = $"Danger {i}.", Severity = AdvisorySeverity.Safety }));

        Assert.Equal(5, (await canned.AskAsync("how long can we roll?")).Lines.Count(l => l.Text.StartsWith("Safety: ", StringComparison.Ordinal)));
    }
}
