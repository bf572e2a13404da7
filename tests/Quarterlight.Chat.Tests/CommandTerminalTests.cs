using System.Text.Json;
using Quarterlight.Crew.Demo;
using Quarterlight.CrewBot;

namespace Quarterlight.Chat.Tests;

/// <summary>Commands in the terminal, with the real planner.</summary>
public sealed class CommandTerminalTests(SharedPlanner planner)
{
    [Fact]
    public async Task Run_Command_AnswersAsTheQuestionDoes()
    {
        BotRun asked = await planner.AskAsync("will the link hold at 150 m in Germany?", "--scene", "demo-school-run");
        BotRun ran = await planner.RunAsync(["run", "link distance: 150 m country: Germany", "--scene", "demo-school-run"]);

        Assert.Equal(0, ran.Exit);
        Assert.Equal(asked.Output, ran.Output);
    }

    [Fact]
    public async Task Talk_CommandsAndQuestionsMixed_GoOnFromEachOther()
    {
        BotRun run = await planner.RunAsync(["--scene", "demo-school-run"], "/link 150 m country: Germany\nand at 200 m?\n/link distance: bananas\n/plann\nquit\n");

        Assert.Equal(0, run.Exit);
        Assert.Contains("gap 150 m", run.Output, StringComparison.Ordinal);
        Assert.Contains("gap 200 m", run.Output, StringComparison.Ordinal);
        Assert.Contains("distance: \"bananas\" was not understood", run.Output, StringComparison.Ordinal);
        Assert.Contains("did you mean plan?", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Clip_TakesAPath()
    {
        string folder = Directory.CreateTempSubdirectory("quarterlight-commands-").FullName;
        try
        {
            string path = Path.Combine(folder, "take 3.wav");
            await File.WriteAllBytesAsync(path, DemoClip.Make(), TestContext.Current.CancellationToken);
            BotRun run = await planner.RunAsync(["run", $"clip file: \"{path}\" talker: parent", "--scene", "demo-school-run", "--json"]);

            Assert.Equal(0, run.Exit);
            JsonElement answer = JsonDocument.Parse(run.Output).RootElement;
            Assert.Equal("judgeClip", answer.GetProperty("intent").GetString());
            Assert.Equal(JsonValueKind.Array, answer.GetProperty("files").ValueKind);
            Assert.True(File.Exists(answer.GetProperty("pictures")[0].GetProperty("file").GetString()));

            BotRun gone = await planner.RunAsync(["run", $"clip {path}.gone"]);
            Assert.Equal(CrewBotProgram.NotAnswered, gone.Exit);
            Assert.StartsWith("There is no file ", gone.Output, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task Run_Refused_ExitsOneAndSaysHow()
    {
        BotRun run = await planner.RunAsync(["run", "law frequency: high"]);

        Assert.Equal(CrewBotProgram.NotAnswered, run.Exit);
        Assert.Contains("say it like \"98.1 MHz\"", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Export_WritesTheFileAndNamesIt()
    {
        BotRun run = await planner.RunAsync(["run", "car export demo-classic"]);

        Assert.Equal(0, run.Exit);
        string file = run.Lines.Single(l => l.StartsWith("File: ", StringComparison.Ordinal))["File: ".Length..];
        Assert.Contains("Bench-seat classic", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Talk_Form_IsShownFieldByFieldAndCanBeLeft()
    {
        BotRun run = await planner.RunAsync([], "/car edit demo-classic\n\ncancel\nlist cars\nquit\n");

        Assert.Equal(0, run.Exit);
        Assert.Contains("An empty line keeps what is shown, \"cancel\" leaves.", run.Output, StringComparison.Ordinal);
        Assert.Contains("[Bench-seat classic (invented)]", run.Output, StringComparison.Ordinal);
        Assert.Contains("Left as it was.", run.Output, StringComparison.Ordinal);
        Assert.Contains("4 cars.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_FormAsJson_ListsItsFieldsAndTakesThemByName()
    {
        BotRun form = await planner.RunAsync(["run", "car new", "--json"]);
        BotRun wrong = await planner.RunAsync(["run", "car new", "--field", "colour=grey"]);
        BotRun bad = await planner.RunAsync(["run", "car new", "--field", "name=Grey one", "--field", "shape=flying saucer"]);

        Assert.Equal(0, form.Exit);
        JsonElement fields = JsonDocument.Parse(form.Output).RootElement.GetProperty("form").GetProperty("fields");
        Assert.Contains(fields.EnumerateArray(), f => f.GetProperty("id").GetString() == "name");
        Assert.Equal(CrewBotProgram.WrongUsage, wrong.Exit);
        Assert.Contains("name", wrong.Error, StringComparison.Ordinal);
        Assert.Equal(CrewBotProgram.NotAnswered, bad.Exit);
    }
}
