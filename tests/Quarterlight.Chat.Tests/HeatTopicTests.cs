using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about heat: what the planner is asked, and what the crew is told.</summary>
public sealed class HeatTopicTests
{
    private readonly CannedForecasts canned = new();

    [Theory] // The demo's school run has a child in the car, so the warning comes first.
    [InlineData("how long can we roll before they melt?", "About 11 min until they are uncomfortable, 24 to caution, 41 to stop.")]
    [InlineData("what rhythm of rolling and cooling?", "Roll 9 min, cool 6 min: 16 takes in 4 h, 60 % of it rolling.")]
    [InlineData("how long do we cool first?", "Cool 14 min, from 52 °C to 18 °C.")]
    [InlineData("how long between takes to cool?", "Cool 6 min between takes of 9 min: 16 takes in 4 h.")]
    [InlineData("how hot will it get?", "Standing shut it gets to 52 °C; a take of 9 min ends at 27 °C.")]
    [InlineData("what would shade buy us?", "Under a pop-up or in open shade: roll 11 min instead of 11 min, 14 min of cooling first, 60 % of the day rolling instead of 60 %.")]
    [InlineData("would an earlier start help with the heat", "In full shade: roll 34 min instead of 11 min, 4 min of cooling first, 84 % of the day rolling instead of 60 %.")]
    [InlineData("is it ok to shut four people in for 20 minutes?", "No: 20 min is past caution. At worst about 8 min until they are uncomfortable, 18 to caution, 31 to stop.")]
    [InlineData("can we do 8 minute takes", "Yes: 8 min with the fan off stays comfortable, up to 8 min at worst.")]
    [InlineData("can we do 40 minute takes", "No, never: 40 min is past the point to stop. At worst about 8 min until they are uncomfortable, 18 to caution, 31 to stop.")]
    public async Task Ask_Heat_DecisionFirst(string question, string headline)
    {
        CrewAnswer answer = await canned.AskAsync(question);

        Assert.Equal(CrewOutcome.Answered, answer.Outcome);
        Assert.Equal("Never leave a child alone in the shut car. " + headline, answer.Headline);
        Assert.InRange(answer.Lines.Count, 3, 9);
        Assert.Single(answer.Pictures);
    }

    [Fact]
    public async Task Ask_Understood_StatesWeatherPlaceShadePeople()
    {
        CrewAnswer answer = await canned.AskAsync("how long can we roll?", scene: "demo-lay-by");

        Assert.Equal("About 11 min until they are uncomfortable, 24 to caution, 41 to stop.", answer.Headline);
        Assert.Equal("heat for Argument in a lay-by (invented): 31 °C and 40 % outside, clear sky, 14 Jul from 11:30 for 4 h, 41° north, no shade, no cover, facing south, shut for 1 h 30 min before, 2 adults, standing, windows shut and fan off while rolling", answer.Understood);
        Assert.Contains(answer.Lines, l => l.Text.StartsWith("At worst 8 min until they are uncomfortable, 18 to caution, 31 to stop (comfort by ", StringComparison.Ordinal));
        Assert.Contains(answer.Lines, l => l.Text == "What would help: in full shade 34 min; with all glass covered between takes 14 min.");
    }

    [Fact]
    public async Task Ask_Imperial_EverythingInFahrenheit()
    {
        CrewAnswer answer = await canned.AskAsync("how hot will it get?", scene: "demo-lay-by", units: UnitPreference.Imperial);

        Assert.Equal("Standing shut it gets to 126 °F; a take of 9 min ends at 81 °F.", answer.Headline);
        Assert.True(canned.HeatAsked!.PictureInFahrenheit);
        Assert.DoesNotContain("°C", string.Join('\n', answer.Lines.Select(l => l.Text).Append(answer.Understood)), StringComparison.Ordinal);
        Assert.Contains("heat index over 90 °F", answer.Lines[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_OverridesOfEveryKind_ReachThePlannerAndLeaveTheDemoAlone()
    {
        Scene before = DemoData.Scenes.Single(s => s.Name == "scenes/demo-lay-by").Clone();
        await canned.AskAsync("how long can we roll at 9am facing east under the pop-up with the windscreen cover on, 95 F and 60 % humidity, three adults and a dog, takes of 6 minutes until caution, with the windows down", scene: "demo-lay-by");
        HeatSetup setup = canned.HeatAsked!.Setup;

        Assert.Equal(new DateTimeOffset(2026, 7, 14, 9, 0, 0, TimeSpan.FromHours(2)), setup.Day.StartTime.ToDateTimeOffset());
        Assert.Equal((90.0, CarShade.PopUp, SunCover.Windscreen), (setup.Day.HeadingDeg, setup.Day.Shade, setup.Day.Cover));
        Assert.Equal((35.0, 60.0), (setup.Day.Air.TemperatureC, setup.Day.Air.RelativeHumidityPercent));
        Assert.Equal((3, 0, 1), (setup.Day.Occupants.AdultCount, setup.Day.Occupants.ChildCount, setup.Day.Occupants.AnimalCount));
        Assert.Equal((6.0, HeatLimitKind.Caution), (canned.HeatAsked.RollMin, canned.HeatAsked.RhythmLimit));
        Assert.Equal((4.0, 0.0), (setup.OpenWindows, setup.SpeedKmPerHour));
        Assert.Equal("cabins/demo-classic", setup.Cabin.Name);
        Assert.Equal(before, DemoData.Scenes.Single(s => s.Name == "scenes/demo-lay-by"));
    }

    [Theory]
    [InlineData("it has been parked in the sun since 8, how long do we cool first?", 210)]
    [InlineData("it was standing in the sun for two hours, how long can we roll?", 120)]
    public async Task Ask_Parked_CountsFromTheStartOfTheDay(string question, double minutes)
    {
        await canned.AskAsync(question, scene: "demo-lay-by");

        Assert.Equal(minutes, canned.HeatAsked!.Setup.Day.SoakMin);
    }

    [Fact]
    public async Task Ask_NoShootDay_RefusesAndOffersAQuestionThatWorks()
    {
        Scene[] bare = [.. DemoData.Scenes.Select(s => s.Clone())];
        Array.ForEach(bare, s => s.ShootDay = null);
        CrewAnswer answer = await canned.AskAsync("how long can we roll before they melt?", scenes: bare);

        Assert.Equal((CrewOutcome.Refused, true), (answer.Outcome, answer.Private));
        Assert.Equal("School run that goes wrong (invented) has no shoot day, so how warm it is outside is not known.", answer.Headline);
        var clock = new StoppedClock(new DateTimeOffset(2040, 7, 1, 20, 15, 0, TimeSpan.Zero));
        CrewAnswer next = await canned.AskAsync(answer.FollowUps[0], scenes: bare, clock: clock);
        Assert.Equal(CrewOutcome.Answered, next.Outcome);
        ShootDay day = canned.HeatAsked!.Setup.Day;
        Assert.Equal((35.0, 40.0, 40.0), (day.Air.TemperatureC, day.Air.RelativeHumidityPercent, day.LatitudeDeg));
        Assert.Equal(new DateTimeOffset(2040, 7, 1, 12, 0, 0, TimeSpan.Zero), day.StartTime.ToDateTimeOffset());
        Assert.EndsWith("today, noon and 40° north taken for granted, as the scene has no shoot day", next.Understood, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_WeatherAndPlaceSaid_AreTakenInsteadOfAssumed()
    {
        Scene[] bare = [.. DemoData.Scenes.Select(s => s.Clone())];
        Array.ForEach(bare, s => s.ShootDay = null);
        CrewAnswer answer = await canned.AskAsync("it's 95 out, 52 north, how long can we roll at 14:30?", scenes: bare, clock: new StoppedClock(new DateTimeOffset(2040, 7, 1, 20, 15, 0, TimeSpan.Zero)));

        ShootDay day = canned.HeatAsked!.Setup.Day;
        Assert.Equal((35.0, 52.0, 14), (day.Air.TemperatureC, day.LatitudeDeg, day.StartTime.ToDateTimeOffset().Hour));
        Assert.Contains("today and 50 % humidity taken for granted", answer.Understood, StringComparison.Ordinal);
        Assert.StartsWith("heat for School run that goes wrong (invented): 95 °F", answer.Understood, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_EmptyStore_SaysThereIsNoScene()
    {
        CrewAnswer answer = await canned.AskAsync("how long can we roll?", scene: null, empty: true);

        Assert.Equal("There is no scene to plan yet.", answer.Headline);
    }

    [Theory]
    [InlineData("a dog in the car", "Never leave an animal alone in the shut car. ")]
    [InlineData("with a kid and a dog in the car", "Never leave a child or an animal alone in the shut car. ")]
    [InlineData("how long can we roll if nobody can open a door", "Someone stays at the door who can open it at once. ")]
    public async Task Ask_SomeoneAtRisk_WarningFirst(string question, string start) => Assert.StartsWith(start, (await canned.AskAsync(question, scene: "demo-lay-by")).Headline, StringComparison.Ordinal);

    [Fact]
    public async Task Ask_LittleComfort_SaysWhatCautionWouldLeave()
    {
        canned.Heat.Rhythm.RollingFraction = 0.1;
        CrewAnswer answer = await canned.AskAsync("how long can we roll?", scene: "demo-lay-by");

        Assert.Contains(answer.Lines, l => l.Text.StartsWith("Short of caution instead of comfort: roll 9 min, cool 6 min", StringComparison.Ordinal));
        Assert.Equal((HeatLimitKind.Caution, false), (canned.HeatAsked!.RhythmLimit, canned.HeatAsked.IncludePicture));
        Assert.DoesNotContain((await canned.AskAsync("how long can we roll until caution?", scene: "demo-lay-by")).Lines, l => l.Text.StartsWith("Short of", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ask_CoolFirst_SaysWhenTheAirAloneIsThere()
    {
        canned.Heat.Advisories.Add(new Advisory { Code = "trim-still-hot", Message = "The air is at the set point after 6 min, but the trim is still hot then.", Severity = AdvisorySeverity.Note });
        CrewAnswer answer = await canned.AskAsync("how long do we cool first?", scene: "demo-lay-by");

        Assert.Equal("The air is at the set point after 6 min, but the trim is still hot then.", answer.Lines[0].Text);
        Assert.Single(answer.Lines, l => l.Text.Contains("set point", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ask_StrictestLimit_IsTheOnlyOneSaid()
    {
        canned.Heat.Strictest = true;
        CrewAnswer answer = await canned.AskAsync("how long can we roll?");

        Assert.Equal("Never leave a child alone in the shut car. About 11 min to the strictest limit, the only one here.", answer.Headline);
        Assert.DoesNotContain("caution", answer.Lines[0].Text, StringComparison.Ordinal);
        Assert.StartsWith("Never leave a child alone in the shut car. No: 10 min is past comfort.", (await canned.AskAsync("can we do 10 minute takes")).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_UncomfortableAtOnce_SaysWhatWouldHelp()
    {
        (canned.Heat.Limits[0].Minutes, canned.Heat.Rhythm.RollMin) = (0.4, 0.5);

        Assert.Equal("Under 1 min until they are uncomfortable, about 24 min to caution, 41 to stop. In full shade it would be 34 min.", (await canned.AskAsync("how long can we roll?", scene: "demo-lay-by")).Headline);
        Assert.Equal("No rhythm with takes of a minute or more stays within comfort. In full shade it would be 34 min.", (await canned.AskAsync("what rhythm of rolling and cooling?", scene: "demo-lay-by")).Headline);
    }

    [Fact]
    public async Task Ask_TooCold_IsToldApartFromHeat()
    {
        (canned.Heat.Limits[0].Minutes, canned.Heat.Limits[0].Reason) = (0, "cold: PMV under -0.7");

        Assert.Equal("Too cold, not too hot, from the start: warm the car and dress for it; caution all the same after about 24 min (heat index over 32 °C).", (await canned.AskAsync("how long can we roll?", scene: "demo-ferry-queue")).Headline);
    }

    [Theory] // As the planner writes them: a bare C is a temperature, and its Fahrenheit need not be said twice.
    [InlineData(UnitPreference.Metric, "heat index over 39 °C;")]
    [InlineData(UnitPreference.Imperial, "heat index over 102 °F;")]
    public async Task Ask_ReasonWithBareC_InTheCrewsUnits(UnitPreference units, string words)
    {
        canned.Heat.Limits[0].Reason = "heat index over 39 C (103 F)";

        Assert.Contains(words, (await canned.AskAsync("how long can we roll?", units: units)).Lines[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_FourPeople_NamesNoCar() => Assert.StartsWith("heat for Argument in a lay-by (invented): ", (await canned.AskAsync("is it ok to shut four people in for 20 minutes?", scene: "demo-lay-by")).Understood, StringComparison.Ordinal);

    [Fact]
    public async Task Ask_NoLimitMet_SaysSo()
    {
        canned.Heat = new HeatReport { Limits = { new HeatLimitTime { Kind = HeatLimitKind.Comfort }, new HeatLimitTime { Kind = HeatLimitKind.Caution }, new HeatLimitTime { Kind = HeatLimitKind.Stop } }, PrecoolMin = 0, SoakedAirC = 16 };

        CrewAnswer answer = await canned.AskAsync("how long can we roll?", scene: "demo-ferry-queue");

        Assert.Equal("Roll as long as you like: they stay comfortable all 5 h with the fan off.", answer.Headline);
        Assert.Contains(answer.Lines, l => l.Text == "Before the first take: no cooling needed: it stands at 16 °C.");
    }

    [Fact]
    public async Task Ask_CoolingTooWeak_SaysHowLowItGets()
    {
        canned.Heat.ClearPrecoolMin();
        canned.Heat.LowestAirC = 23;
        CrewAnswer answer = await canned.AskAsync("how long do we cool first?", scene: "demo-lay-by");

        Assert.Equal("Cooling does not reach 18 °C: 23 °C is the lowest. It stands at 52 °C to start with; get it out of the sun.", answer.Headline);
    }
}

/// <summary>A clock that stands still, far enough ahead for deadlines not to be over.</summary>
internal sealed class StoppedClock(DateTimeOffset now) : TimeProvider
{
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => now;
}
