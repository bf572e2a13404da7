using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>A clip from the terminal to the real planner and back.</summary>
public sealed class ClipBotTests(SharedPlanner planner) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("quarterlight-clips-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void DemoClip_Made_SameEveryTimeAndAsLongAsItSays()
    {
        byte[] clip = DemoClip.Make();

        Assert.Equal(clip, DemoClip.Make());
        Assert.Equal(DemoClip.Attachment.ByteCount, clip.Length);
        Assert.Equal(44 + (48_000 * 12 * 3), clip.Length);
        Assert.Contains("invented", DemoClip.FileName, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_DemoClip_JudgedAndTheEngineIsTheOneThatWasMade()
    {
        var desk = new CrewDesk(planner.Invoker, new CrewDeskOptions());
        CrewAnswer answer = await desk.AskAsync(new CrewQuestion { Text = "judge the demo clip, four cylinders" }, TestContext.Current.CancellationToken);

        var report = (ClipReport)answer.Data["clip"];
        Assert.Equal(CrewOutcome.Answered, answer.Outcome);
        Assert.Contains("invented", answer.Understood, StringComparison.Ordinal);
        Assert.Equal((48_000, 1), (report.Format.SampleRateHz, report.Format.ChannelCount));
        Assert.InRange(report.Format.DurationS, 11.99, 12.01);
        Assert.InRange(report.Channels[0].Engine.Rpm, DemoClip.EngineSpeedRpm - 30, DemoClip.EngineSpeedRpm + 30);
        Assert.NotNull(report.Channels[0].SpeechAndNoise.SpeechToNoiseDb);
        Assert.Equal(0, report.Channels[0].Clipping.Count);
        Assert.All(answer.FollowUps, f => Assert.NotEqual(CrewIntent.Unknown, Read(f, answer.Memory)));
    }

    [Theory]
    [InlineData("judge {0}")]
    [InlineData("is \"{0}\" usable?")]
    [InlineData("{0}")]
    public async Task Ask_PathInTheQuestion_Judged(string question)
    {
        BotRun run = await planner.AskAsync(string.Format(System.Globalization.CultureInfo.InvariantCulture, question, Write("take.wav", DemoClip.Make())));

        Assert.Equal(0, run.Exit);
        Assert.Empty(run.Error);
        Assert.Contains("Understood: clip take.wav (", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(folder, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_ClipOption_Judged()
    {
        BotRun run = await planner.AskAsync("this is the driver's mic", "--clip", Write("take 3.wav", DemoClip.Make()), "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.Contains("Beside the plan, Parent: ", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing.wav", "There is no file missing.wav: check the path")]
    [InlineData("empty.wav", "Empty.wav is empty: ")]
    [InlineData("folder.wav", "Folder.wav is a folder: name one file in it.")]
    [InlineData("text.wav", "Please check the file: ")]
    [InlineData("cut.wav", "Please check the file: ")]
    public async Task Ask_BadFile_OneSentenceAndExitCodeOne(string name, string start)
    {
        Write("empty.wav", []);
        Directory.CreateDirectory(Path.Combine(folder, "folder.wav"));
        Write("text.wav", "Dear diary, this is not sound at all."u8.ToArray());
        Write("cut.wav", DemoClip.Make()[..30]);

        BotRun run = await planner.AskAsync($"judge {Path.Combine(folder, name)}");

        Assert.Equal(1, run.Exit);
        Assert.StartsWith(start, run.Output, StringComparison.Ordinal);
        Assert.InRange(run.Lines[0].Length, 20, 300);
        Assert.DoesNotContain("Exception", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_FileLargerThan200MiB_OneSentence()
    {
        string path = Path.Combine(folder, "huge.wav");
        using (FileStream file = File.Create(path))
        {
            file.SetLength(CrewAttachment.LargestBytes + 1);
        }

        Assert.StartsWith("Huge.wav is larger than 200 MiB: ", (await planner.AskAsync($"judge {path}")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_TwoFiles_OneAtATime() =>
        Assert.StartsWith("One clip at a time", (await planner.AskAsync("compare a.wav with b.wav")).Output, StringComparison.Ordinal);

    [Fact]
    public async Task Talk_WholeConversation_AnsweredAllTheWay()
    {
        string path = Write("take 3.wav", DemoClip.Make());
        BotRun run = await planner.RunAsync([], $"where do the mics go for the school run?\n'{path}'\nit is the Parent's\nhow does it compare with the plan\nwhy?\nwhat rpm\nredo the plan with that noise\nquit\n");

        string[] understood = [.. run.Lines.Where(l => l.StartsWith("Understood: ", StringComparison.Ordinal))];
        Assert.Equal(7, understood.Length);
        Assert.Contains("not yet beside the plan of School run", understood[1], StringComparison.Ordinal);
        Assert.Contains("beside the plan in force of School run", understood[2], StringComparison.Ordinal);
        Assert.Contains("forecast and measurement", understood[3], StringComparison.Ordinal);
        Assert.Contains("reasons", understood[4], StringComparison.Ordinal);
        Assert.Contains("engine speed", understood[5], StringComparison.Ordinal);
        Assert.Contains("with the noise of take 3.wav", understood[6], StringComparison.Ordinal);
    }

    [Fact]
    public void Progress_AtATerminal_OneLineThatGoesAway()
    {
        var output = new StringWriter();
        var line = new CrewBot.ProgressLine(output);
        line.Report(new CrewClipProgress(1, 0.1, 0.401));
        line.Report(new CrewClipProgress(1, 0.1, 0.404));
        line.Clear();

        Assert.Equal("\rreading... 40 %\r               \r", output.ToString());
    }

    private static CrewIntent Read(string text, CrewMemory memory) =>
        RequestReader.Read(text, new CrewVocabulary(DemoData.Scenes, DemoData.Cabins, DemoData.Kits), memory, UnitPreference.Metric).Intent;

    private string Write(string name, byte[] bytes)
    {
        string path = Path.Combine(folder, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }
}
