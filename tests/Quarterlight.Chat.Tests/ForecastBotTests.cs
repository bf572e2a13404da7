using System.Globalization;
using System.Text.RegularExpressions;

namespace Quarterlight.Chat.Tests;

/// <summary>Questions about heat, run time, levels and noise, asked of the whole program with the real planner.</summary>
public sealed partial class ForecastBotTests(SharedPlanner planner)
{
    // What no answer may ever show.
    private static readonly string[] Innards = ["Exception", "   at ", "StatusCode", "RpcException", "_min", "_c:", "setup.", "shoot_day", "NaN", "Infinity"];

    [Theory]
    [InlineData("how long can we roll before they melt?", "demo-school-run", @"^Never leave a child alone in the shut car\. .*limit", true)]
    [InlineData("how long can we roll before they melt?", "demo-lay-by", @"to caution", true)]
    [InlineData("how long do we cool first?", "demo-school-run", @"°C", true)]
    [InlineData("what rhythm of rolling and cooling?", "demo-school-run", @"Roll \d+ min, cool \d+ min: \d+ takes in 4 h|No rhythm", true)]
    [InlineData("how hot will it get?", "demo-lay-by", @"^Standing shut it gets to \d+ °C", true)]
    [InlineData("what would shade buy us?", "demo-lay-by", @"instead of", true)]
    [InlineData("it's 95 out, 40 % humidity, how long can we roll?", "demo-driving-lesson", @"to caution", true)]
    [InlineData("how long can we roll?", "demo-ferry-queue", @"cold|caution|comfortable", true)]
    [InlineData("what runs out first?", "demo-school-run", @"^First to run out: .* at \d\d:\d\d", true)]
    [InlineData("will the recorder last till lunch?", "demo-school-run", @"^(Yes|No)", true)]
    [InlineData("when do I swap batteries?", "demo-school-run", @"swap", true)]
    [InlineData("how many cards do I need?", "demo-driving-lesson", @"card.* for 4 h", true)]
    [InlineData("how long will the batteries last at -10?", "demo-school-run", @"runs? out", true)]
    [InlineData("what gain for a shouted line?", "demo-school-run", @"^Gain: Parent \d+ dB", false)]
    [InlineData("what if she whispers?", "demo-school-run", @"^A whisper ", false)]
    [InlineData("how should I set the transmitter gain?", "demo-school-run", @"^Set .* dB", false)]
    [InlineData("do I need a pad?", "demo-lay-by", @"[Pp]ad", false)]
    [InlineData("how loud is it at 50?", "demo-school-run", @"^About \d+ dB\(A\) ±\d+ at the driver's ear at 50 km/h: the scene ", true)]
    [InlineData("how fast can we go?", "demo-school-run", @"^It works up to \d+ km/h", true)]
    [InlineData("what dominates at 500 Hz?", "demo-school-run", @"^Loudest in the 500 Hz octave: ", true)]
    [InlineData("give the AD a table", "demo-driving-lesson", @"km/h", true)]
    [InlineData("where on the route is it quiet?", "demo-school-run", @"^Roll (on|from) ", false)]
    [InlineData("longest quiet stretch?", "demo-driving-lesson", @"^Roll (on|from) ", false)]
    public async Task Ask_EveryKind_DecidesFirstInFewLines(string question, string scene, string headline, bool picture)
    {
        BotRun run = await planner.AskAsync(question, "--scene", scene);

        Assert.Equal(0, run.Exit);
        Assert.Matches(headline, run.Lines[0]);
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
        Assert.InRange(run.Lines.Count(l => l.Length > 0), 4, 17);
        string? file = run.Lines.FirstOrDefault(l => l.StartsWith("Picture: ", StringComparison.Ordinal))?["Picture: ".Length..];
        Assert.Equal(picture, file is not null && new FileInfo(file).Length > 5_000);
        Assert.Equal(picture, run.Lines.Any(l => l.StartsWith("In words: ", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Ask_Imperial_NoCelsiusAndNoKilometres()
    {
        foreach (string question in new[] { "how hot will it get?", "what runs out first?", "how fast can we go?", "longest quiet stretch?" })
        {
            BotRun run = await planner.AskAsync(question, "--scene", "demo-driving-lesson", "--units", "imperial");

            Assert.Equal(0, run.Exit);
            Assert.DoesNotMatch(@"\d ?(°C|km/h|km|m)\b", string.Join('\n', run.Lines.Where(l => !l.StartsWith("Picture", StringComparison.Ordinal) && !l.StartsWith("In words", StringComparison.Ordinal))));
        }
    }

    [Fact] // The trade's own order: shade is cooler than sun, rain and open windows are louder.
    public async Task Ask_WithAChange_MovesTheRightWay()
    {
        BotRun heat = await planner.RunAsync(["--scene", "demo-school-run"], "how long do we cool first?\nand in deep shade?\nquit\n");
        int[] minutes = [.. heat.Lines.Select(l => Cools().Match(l)).Where(m => m.Success).Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))];
        Assert.True(minutes.Length == 2 && minutes[1] < minutes[0], heat.Output);

        BotRun noise = await planner.RunAsync(["--scene", "demo-school-run"], "how loud is it at 50?\nand with the windows half down?\nquit\n");
        int[] levels = [.. noise.Lines.Select(l => Level().Match(l)).Where(m => m.Success).Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))];
        Assert.True(levels.Length == 2 && levels[1] > levels[0], noise.Output);
    }

    [Theory]
    [InlineData("it's 200 F out, how long can we roll?")]
    [InlineData("how long can we roll at 70 C outside?")]
    [InlineData("will the batteries last 40 hours?")]
    [InlineData("gain with 50 dB of headroom")]
    [InlineData("how loud is it at 300 km/h?")]
    public async Task Ask_BadInput_OnePlainSentenceAndExitCodeOne(string question)
    {
        BotRun run = await planner.AskAsync(question, "--scene", "demo-school-run");

        Assert.Equal(1, run.Exit);
        Assert.StartsWith("Please check ", run.Lines[0], StringComparison.Ordinal);
        Assert.InRange(run.Lines[0].Length, 20, 300);
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
    }

    [GeneratedRegex(@"^(?:Never leave a child alone in the shut car\. )?Cool (\d+) min, from")]
    private static partial Regex Cools();

    [GeneratedRegex(@"^About (\d+) dB\(A\)")]
    private static partial Regex Level();
}
