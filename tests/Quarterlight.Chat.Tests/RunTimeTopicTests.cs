using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about batteries and media: what the planner is asked, and what the crew is told.</summary>
public sealed class RunTimeTopicTests
{
    private readonly CannedForecasts canned = new();

    [Theory] // The school run starts at 10:00 local time.
    [InlineData("what runs out first?", "First to run out: Recorder at 13:15 (after 3.2 h) on one set; the 3 sets are enough for 4 h.")]
    [InlineData("when do I swap batteries?", "One swap at 12:52 after 22 take 1: change the batteries of the recorder.")]
    [InlineData("how many cards do I need?", "2 cards are needed for 4 h; you have 4. One lasts 5.2 h, 2 written at once.")]
    [InlineData("will the recorder last till lunch?", "Yes, with swaps: the recorder lasts 4 h; first swap at 12:52 after 22 take 1.")]
    [InlineData("how long do the batteries last", "Recorder runs out at 13:15 (after 3.2 h) on one set; the 3 sets are enough for 4 h.")]
    public async Task Ask_RunTime_DecisionFirst(string question, string headline)
    {
        CrewAnswer answer = await canned.AskAsync(question);

        Assert.Equal(headline, answer.Headline);
        Assert.InRange(answer.Lines.Count, 2, 9);
        Assert.Single(answer.Pictures);
        Assert.Equal("run time for School run that goes wrong (invented): Full kit (invented), 4 h from 10:00, batteries at 29 °C, 20 % kept back, recording all the time", answer.Understood.Split(", lunch")[0]);
    }

    [Fact]
    public async Task Ask_Lines_EveryThingThenSwapsThenData()
    {
        string[] lines = [.. (await canned.AskAsync("what runs out first?")).Lines.Select(l => l.Text)];

        Assert.Equal(
        [
            "Recorder: 3.2 h a set (4 h to the very end), 2 needed, 3 there, temperature and age leave 81 %.",
            "Card: 5.2 h a set of cards (6.5 h to the very end), 1 needed, 2 there.",
            "Swaps: at 12:52 after 22 take 1, change the batteries of the recorder.",
            "All tracks write 1.44 MB/s; a file reaches 4 GiB after 49 min.",
            "Safety: Swap only with the car parked.",
        ], lines);
    }

    [Fact]
    public async Task Ask_NotEnough_SaysNoAndHowMany()
    {
        (canned.RunTime.Items[0].Enough, canned.RunTime.Items[0].SetsNeeded) = (false, 5);
        (canned.RunTime.Items[1].Enough, canned.RunTime.Items[1].SetsNeeded) = (false, 3);

        Assert.Equal("No: recorder does not last 4 h: one set lasts 3.2 h; 5 needed, 3 there.", (await canned.AskAsync("will the batteries make it to 17:30")).Headline);
        Assert.Equal("6 cards are needed for 4 h, and you have 4: bring 2 more. One lasts 5.2 h, 2 written at once.", (await canned.AskAsync("how many cards do we need")).Headline);
    }

    [Fact]
    public async Task Ask_TooColdToRun_SaysSoAndListsNoSwap()
    {
        (canned.RunTime.Items[0].Hours, canned.RunTime.Items[0].Enough, canned.RunTime.BatteryC) = (0, false, -25);
        canned.RunTime.Swaps.Clear();
        CrewAnswer answer = await canned.AskAsync("how long will the batteries last at -25 C?");

        Assert.Equal("Recorder does not run at -25 °C: keep its batteries warm or take others.", answer.Headline);
        Assert.DoesNotContain(answer.Lines, l => l.Text.StartsWith("No swap", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ask_OverridesOfEveryKind_ReachThePlanner()
    {
        await canned.AskAsync("how long will the batteries last at -10 C for 10 hours with 30 % reserve only in takes, 24 tracks at 96k on 64 gb cards");
        ForecastRunTimeRequest asked = canned.RunTimeAsked!;

        Assert.Equal((-10.0, 600.0, 0.3, true), (asked.BatteryC, asked.DurationMin, asked.MarginFraction, asked.TakesOnly));
        Assert.Equal((24, 96000, 64.0), (asked.Setup.Kit.RecordingMedia.TrackCount, asked.Setup.Kit.RecordingMedia.SampleRateHz, asked.Setup.Kit.RecordingMedia.CardSizeGb));
        Assert.Equal(DemoData.Scenes[^1].ShootDay, asked.Setup.Day);
        Assert.Equal(10, DemoData.Kits.Single(k => k.Name == "kits/demo-full").RecordingMedia.TrackCount);
    }

    [Theory] // Local start 10:00; a meal break six hours after the call.
    [InlineData("will the recorder last till lunch?", 360)]
    [InlineData("will the batteries make it to 17:30", 450)]
    [InlineData("will the recorder run until 4 pm", 360)]
    [InlineData("does the card last 6 hours?", 360)]
    public async Task Ask_Until_CountsFromTheStart(string question, double minutes)
    {
        await canned.AskAsync(question);

        Assert.Equal(minutes, canned.RunTimeAsked!.DurationMin);
    }

    [Fact]
    public async Task Ask_KitWithoutBatteries_RefusesAndSaysWhatToDo()
    {
        Kit[] bare = [.. DemoData.Kits.Select(k => k.Clone())];
        foreach (Kit kit in bare.Where(k => k.Name == "kits/demo-full"))
        {
            kit.PoweredDevices.Clear();
            kit.RecordingMedia = null;
        }

        CrewAnswer answer = await canned.AskAsync("what runs out first?", kits: bare);

        Assert.Equal((CrewOutcome.Refused, true), (answer.Outcome, answer.Private));
        Assert.Equal("The Full kit (invented) says nothing of batteries and cards.", answer.Headline);
        Assert.Equal(CrewOutcome.Answered, (await canned.AskAsync(answer.FollowUps[0], kits: bare)).Outcome);
        Assert.Equal("kits/demo-small", canned.RunTimeAsked!.Setup.Kit.Name);
    }

    [Fact]
    public async Task Ask_UntilWithoutADay_AsksForTheLength()
    {
        Scene[] bare = [.. DemoData.Scenes.Select(s => s.Clone())];
        Array.ForEach(bare, s => s.ShootDay = null);
        CrewAnswer answer = await canned.AskAsync("will the recorder run until 4 pm", scenes: bare);

        Assert.Equal((CrewOutcome.Refused, true), (answer.Outcome, answer.Private));
        Assert.Equal(CrewOutcome.Answered, (await canned.AskAsync(answer.FollowUps[0], scenes: bare)).Outcome);
        Assert.Null(canned.RunTimeAsked!.Setup.Day);
        Assert.Equal(360, canned.RunTimeAsked.DurationMin);
    }

    [Fact]
    public async Task Ask_TakeBrokenWhateverIsDone_IsSaid()
    {
        canned.RunTime.BrokenTake = "22 take 2";

        Assert.Contains((await canned.AskAsync("what runs out first?")).Lines, l => l.Text.Contains("22 take 2", StringComparison.Ordinal));
    }
}
