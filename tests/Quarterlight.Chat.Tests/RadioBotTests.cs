using System.Globalization;
using System.Text.RegularExpressions;

namespace Quarterlight.Chat.Tests;

/// <summary>Questions about the link, the law and channels, asked of the whole program with the real planner.</summary>
public sealed partial class RadioBotTests(SharedPlanner planner)
{
    // What no answer may ever show.
    private static readonly string[] Innards = ["Exception", "   at ", "StatusCode", "RpcException", "_m:", "_mhz", "setup.", "follow_car", "NaN", "Infinity"];

    [Fact]
    public async Task Ask_HowFarBack_DecidesFirstAndSaysTheRest()
    {
        BotRun run = await planner.AskAsync("how far can we fall back?", "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.Matches(@"^Keep within \d+ m \(about \d+ car lengths\) for a link that holds 95 % of the time\.$", run.Lines[0]);
        Assert.Contains(run.Lines, l => l.StartsWith("At 60 m and 50 km/h: holds ", StringComparison.Ordinal) && l.Contains("dBm", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("Holds 50 % of the time to ", StringComparison.Ordinal) && l.Contains("99 %", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("To get more: ", StringComparison.Ordinal) && l.Contains(" dB, +", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("Law: not lawful without a licence in the United States: ", StringComparison.Ordinal) && l.Contains("250 µV/m at 3 m", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("For blocking: keep the follow car within ", StringComparison.Ordinal));
        Assert.Contains(run.Lines, l => l.StartsWith("Safety: Local law and the regulator decide", StringComparison.Ordinal));
        string file = run.Lines.Single(l => l.StartsWith("Picture: ", StringComparison.Ordinal))["Picture: ".Length..];
        Assert.True(new FileInfo(file).Length > 5_000);
        Assert.InRange(run.Lines.Count(l => l.Length > 0), 8, 18);
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
    }

    [Theory] // The trade's own order: outside beats inside, a clear road beats a truck, a quiet channel beats a crowded one.
    [InlineData("how far can they drop back with the antenna on the roof?", true)]
    [InlineData("how far back can the follow car be on 88.1?", true)]
    [InlineData("how far can they be with a truck between?", false)]
    public async Task Ask_WithAChange_MovesTheRangeTheRightWay(string question, bool farther)
    {
        double before = Range(await planner.AskAsync("how far can we fall back?", "--scene", "demo-school-run"));
        double after = Range(await planner.AskAsync(question, "--scene", "demo-school-run"));

        Assert.Equal(farther, after > before);
    }

    [Fact]
    public async Task Ask_Imperial_SaysFeetAndNoMetres()
    {
        BotRun run = await planner.AskAsync("can they trail us by a quarter mile?", "--scene", "demo-school-run", "--units", "imperial");

        Assert.Equal(0, run.Exit);
        Assert.StartsWith("No: at ", run.Lines[0], StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\d (m|km|km/h)\b(?! \()", string.Join('\n', run.Lines.Where(l => !l.StartsWith("Picture", StringComparison.Ordinal) && !l.Contains("µV/m", StringComparison.Ordinal))));
        Assert.Contains("ft", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("is 200 mW legal in Germany?", "No, on 98.1 MHz: not lawful without a licence in Germany")]
    [InlineData("what's the limit in Japan at 863 MHz?", "The limit without a licence on 863.0 MHz in Japan is 35 µV/m at 3 m.")]
    [InlineData("what can I legally radiate in France?", "No, on 98.1 MHz")]
    public async Task Ask_TheLaw_SaysYesOrNoWithTheDocument(string question, string start)
    {
        BotRun run = await planner.AskAsync(question, "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.StartsWith(start, run.Lines[0], StringComparison.Ordinal);
        Assert.Contains(run.Lines, l => l.StartsWith("Safety: Local law and the regulator decide", StringComparison.Ordinal));
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ask_ChannelsForEight_GivesEightThatHoldByOurOwnCount()
    {
        BotRun run = await planner.AskAsync("which channels do I put eight transmitters on?", "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        int[] khz = [.. run.Lines.SelectMany(l => Channel().Matches(l)).Select(m => (int)Math.Round(1000 * double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)))];
        Assert.Equal(8, khz.Length);
        foreach (int a in khz)
        {
            foreach (int b in khz)
            {
                foreach (int c in khz.Where(c => c != a && c != b))
                {
                    Assert.All(khz, victim => Assert.True(Math.Abs(a + b - c - victim) >= 50, $"{a} + {b} - {c}"));
                }
            }
        }
    }

    [Theory]
    [InlineData("check 600.0 600.6 601.2", "They do not go together: 3 products")]
    [InlineData("do 470.1, 470.5 and 471.3 clash?", "They go together")]
    [InlineData("coordinate 30 transmitters between 470 and 472", "Only ")]
    [InlineData("which FM channel is quietest?", "Quietest: ")]
    public async Task Ask_Channels_Decides(string question, string start)
    {
        BotRun run = await planner.AskAsync(question, "--scene", "demo-school-run");

        Assert.Equal(0, run.Exit);
        Assert.StartsWith(start, run.Lines[0], StringComparison.Ordinal);
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("how far can we fall back on 27 MHz?")]
    [InlineData("will the link hold at 1 m?")]
    [InlineData("will the link hold at 80 km?")]
    [InlineData("how far can they follow with 0 mW?")]
    public async Task Ask_BadInput_OnePlainSentenceAndExitCodeOne(string question)
    {
        BotRun run = await planner.AskAsync(question, "--scene", "demo-school-run");

        Assert.Equal(1, run.Exit);
        Assert.EndsWith(".", run.Lines[0], StringComparison.Ordinal);
        Assert.InRange(run.Lines[0].Length, 20, 300);
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ask_SceneWithoutFollowCar_SaysWhatIsMissing()
    {
        BotRun run = await planner.AskAsync("how far can we fall back?", "--scene", "demo-lay-by");

        Assert.Contains("follow car", run.Lines[0], StringComparison.Ordinal);
        Assert.DoesNotContain(Innards, i => run.Output.Contains(i, StringComparison.Ordinal));
    }

    private static double Range(BotRun run) =>
        Within().Match(run.Lines[0]) is { Success: true } match ? double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) : 0;

    [GeneratedRegex(@"\d: (\d{3}\.\d{3}) MHz")]
    private static partial Regex Channel();

    [GeneratedRegex(@"[Kk]eep within (\d+) m")]
    private static partial Regex Within();
}
