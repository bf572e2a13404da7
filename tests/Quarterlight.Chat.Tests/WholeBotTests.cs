using System.Text.Json;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;

namespace Quarterlight.Chat.Tests;

/// <summary>Message in, message out: the whole program against the real planner.</summary>
public sealed class WholeBotTests(SharedPlanner planner)
{
    // What no answer may ever show.
    private static readonly string[] Innards = ["Exception", "   at ", "StatusCode", "RpcException", "_m:", "scene.talkers", "drive_conditions", "NaN"];

    [Fact]
    public async Task Demo_ThreeTalkersInAMovingCar_PlanWithPicture()
    {
        BotRun run = await planner.RunAsync(["demo"]);

        Assert.Equal(0, run.Exit);
        Assert.Empty(run.Error);
        Assert.StartsWith("School run that goes wrong (invented): Parent ", run.Lines[0], StringComparison.Ordinal);
        foreach (string talker in new[] { "Parent", "Neighbour", "Child" })
        {
            string line = Assert.Single(run.Lines, l => l.StartsWith(talker + ": ", StringComparison.Ordinal) && l.Contains("from the mouth", StringComparison.Ordinal));
            Assert.Matches(@"(\d+ cm|\d\.\d\d m) from the mouth; aim .+; (null \d+° off the engine|no null in the pattern); input \d\.$", line);
            Assert.Single(run.Lines, l => l.StartsWith(talker + ": SNR ", StringComparison.Ordinal) && l.Contains("SII 0.", StringComparison.Ordinal) && l.Contains('±', StringComparison.Ordinal));
        }

        Assert.Contains(run.Lines, l => l.StartsWith("How sure: ", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("Refused ", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("Runner-up 2: ", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("Proved best of ", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("In words: ", StringComparison.Ordinal));
        string file = run.Lines.Single(l => l.StartsWith("Picture: ", StringComparison.Ordinal))["Picture: ".Length..];
        byte[] png = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], png[..4]);
        Assert.InRange(run.Lines.Count(l => l.Length > 0), 12, 26);
    }

    [Fact]
    public async Task Ask_WithoutScene_AnswersForTheLastWrittenAndSaysSo()
    {
        BotRun run = await planner.AskAsync("where do the mics go?");

        Assert.Equal(0, run.Exit);
        Assert.Contains("the scene last written", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_SafetyCautions_ComeBeforeOthers()
    {
        BotRun run = await planner.RunAsync(["demo"]);

        string[] cautions = [.. run.Lines.Where(l => l.StartsWith("Safety: ", StringComparison.Ordinal) || l.StartsWith("Caution: ", StringComparison.Ordinal) || l.StartsWith("Note: ", StringComparison.Ordinal))];
        Assert.StartsWith("Safety: ", cautions[0], StringComparison.Ordinal);
        Assert.Equal(cautions.OrderBy(c => c[0] == 'S' ? 0 : c[0] == 'C' ? 1 : 2), cautions);
    }

    [Fact]
    public async Task Ask_Imperial_NoMetricLengthOrSpeedIsLeft()
    {
        foreach (string question in new[] { "mount plan for the school run", "details for the school run", "what if we do 60 mph in the school run", "why not the visor for the parent in the school run?", "next best for the school run" })
        {
            BotRun run = await planner.AskAsync(question, "--units", "imperial");

            Assert.Equal(0, run.Exit);
            Assert.DoesNotMatch(@"\d (cm|m|km/h)\b", run.Output);
            Assert.Matches(@"\d (in|ft|mph)\b", run.Output);
        }
    }

    [Fact]
    public async Task Ask_WhyNotTheVisorForThePassenger_AnswersInNumbers()
    {
        BotRun run = await planner.AskAsync("why not the visor for the passenger?", "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.Contains("assenger visor", run.Lines[0], StringComparison.Ordinal);
        Assert.Contains("Neighbour", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"There against chosen: score [-+]\d|Best there for Neighbour|shot|airbag|view", run.Output);
    }

    [Fact]
    public async Task Ask_WhyTheChosenSite_SaysItIsChosen()
    {
        BotRun run = await planner.AskAsync("why there for the child?", "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.Contains("Child", run.Lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_WindowsDownAt40Mph_IsSaidToBeUnusable()
    {
        // Common practice, no source: windows down at 40 mph is unusable.
        BotRun run = await planner.AskAsync("what if the windows are down at 40 mph?", "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.StartsWith("64 km/h and all windows down: ", run.Lines[0], StringComparison.Ordinal);
        Assert.Contains(" loses ", run.Lines[0], StringComparison.Ordinal);
        Assert.Contains("not be usable", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_FanOn_IsNeverAcceptable()
    {
        // Common practice, no source: fan noise is never acceptable in a take.
        BotRun run = await planner.AskAsync("what if the fan is on?", "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.Contains("never acceptable", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("without the lavs", "Without the omni lavalier")]
    [InlineData("what if we lose the hood camera?", "Without camera hood")]
    [InlineData("with the small kit", "With the Small kit (invented)")]
    [InlineData("in the people carrier", "In the Three-row people carrier (invented)")]
    [InlineData("what if we can't use the headliner?", "Without the headliner (")]
    [InlineData("engine off", "Engine off")]
    [InlineData("only the lavs", "With only the omni lavalier")]
    public async Task Ask_WhatIf_SaysWhatChangedFirst(string question, string start)
    {
        BotRun run = await planner.AskAsync(question, "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.StartsWith(start, run.Lines[0], StringComparison.Ordinal);
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Talk_OneConversation_RemembersSceneChangesAndUnits()
    {
        BotRun run = await planner.RunAsync([], "mount plan for the driving lesson\nwhat if it rains?\nand at 50 mph?\nuse imperial\nwhere do the mics go?\nuse the lay-by\nwhy there?\nquit\nwhere do the mics go?\n");

        Assert.Equal(0, run.Exit);
        string[] understood = [.. run.Lines.Where(l => l.StartsWith("Understood: ", StringComparison.Ordinal))];
        Assert.Equal(7, understood.Length);
        Assert.Contains("First driving lesson", understood[0], StringComparison.Ordinal);
        Assert.Contains("light rain", understood[1], StringComparison.Ordinal);
        Assert.Contains("80 km/h and light rain", understood[2], StringComparison.Ordinal);
        Assert.Contains("25 mph", understood[4], StringComparison.Ordinal);
        Assert.Contains("Argument in a lay-by", understood[6], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_Json_IsValidAndKeepsItsFields()
    {
        BotRun run = await planner.AskAsync("mount plan for the school run", "--json");

        Assert.Equal(0, run.Exit);
        using var json = JsonDocument.Parse(run.Output);
        JsonElement root = json.RootElement;
        Assert.Equal(["version", "outcome", "intent", "understood", "headline", "lines", "pictures", "files", "followUps", "private", "data"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal(1, root.GetProperty("version").GetInt32());
        Assert.Equal("answered", root.GetProperty("outcome").GetString());
        Assert.Equal("plan", root.GetProperty("intent").GetString());
        Assert.Equal(3, root.GetProperty("data").GetProperty("plan").GetProperty("best").GetProperty("placements").GetArrayLength());
        Assert.True(File.Exists(root.GetProperty("pictures")[0].GetProperty("file").GetString()));
    }

    [Theory]
    [InlineData("list scenes", "4 scenes.")]
    [InlineData("list cars", "4 cars.")]
    [InlineData("list kits", "2 kits.")]
    [InlineData("show the full kit", "Full kit (invented): 18 microphones of 9 kinds")]
    [InlineData("show the ferry queue scene", "Night ferry queue (invented): Three-row people carrier")]
    [InlineData("what sites are there?", "Four-door saloon (invented): ")]
    [InlineData("load demo", "The demo data is there already")]
    [InlineData("help", "Ask in plain words")]
    public async Task Ask_Command_Answers(string question, string start)
    {
        BotRun run = await planner.AskAsync(question, "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.StartsWith(start, run.Lines[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("what if we do 500 mph?")]
    [InlineData("fan at step 9")]
    [InlineData("engine at 99000 rpm")]
    [InlineData("why not the bulkhead for the driver?")]
    [InlineData("mount plan for the moon scene")]
    [InlineData("tell me a joke")]
    public async Task Ask_BadInput_OnePlainSentenceAndExitCodeOne(string question)
    {
        BotRun run = await planner.AskAsync(question, "--scene", "demo-school-run");

        Assert.Equal(1, run.Exit);
        Assert.EndsWith(".", run.Lines[0], StringComparison.Ordinal);
        Assert.InRange(run.Lines[0].Length, 20, 300);
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ask_UnknownScene_NamesThoseThereAre()
    {
        BotRun run = await planner.AskAsync("where do the mics go?", "--scene", "no-such-scene");

        Assert.Equal(1, run.Exit);
        Assert.StartsWith("There is no scene called \"no-such-scene\".", run.Output, StringComparison.Ordinal);
        Assert.Contains("Night ferry queue", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task FollowUps_OfEveryAnswer_AreUnderstood()
    {
        var vocabulary = new CrewVocabulary(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);
        var desk = new CrewDesk(planner.Invoker, new CrewDeskOptions());
        foreach (string question in new[] { "mount plan for the school run", "what if it rains", "why not the visor for the passenger?", "next best", "what sites are there?", "list scenes", "tell me a joke", "list kits", "load demo", "use the lay-by", "use imperial", "help" })
        {
            CrewAnswer answer = await desk.AskAsync(new CrewQuestion { Text = question, IncludePicture = false }, TestContext.Current.CancellationToken);

            Assert.InRange(answer.FollowUps.Count, 1, 3);
            Assert.All(answer.FollowUps, next => Assert.NotEqual(CrewIntent.Unknown, RequestReader.Read(next, vocabulary, answer.Memory, UnitPreference.Metric).Intent));
        }
    }
}
