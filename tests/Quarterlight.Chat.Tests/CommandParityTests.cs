using Google.Protobuf;
using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Keeping;

namespace Quarterlight.Chat.Tests;

/// <summary>A command answers as the equal question does, down to the last figure, with the real planner.</summary>
public sealed class CommandParityTests(SharedPlanner planner)
{
    private static readonly CrewQuestion Pattern = new() { Text = "", Scene = "demo-school-run" };

    [Theory]
    [InlineData("plan", "where do the mics go?")]
    [InlineData("plan show: full", "details")]
    [InlineData("plan show: next-best", "next best")]
    [InlineData("plan show: third-best", "second runner-up")]
    [InlineData("plan scene: demo-lay-by", "mount plan for the lay-by")]
    [InlineData("why driver's visor", "why not the driver's visor?")]
    [InlineData("why visor talker: neighbour", "why not the visor for the neighbour?")]
    [InlineData("why site: rear left headrest talker: child", "why not the rear left headrest for the child?")]
    [InlineData("what-if windows: down speed: 40 mph", "what if the windows are down at 40 mph?")]
    [InlineData("what-if windows: half rain: heavy", "what if the windows are half down in heavy rain?")]
    [InlineData("what-if road: gravel fan: 4", "what if the fan is on full and the road is gravel?")]
    [InlineData("what-if engine: off", "what if the engine is off?")]
    [InlineData("what-if speed: parked", "what if we are parked?")]
    [InlineData("what-if without-mic: lavs", "without the lavs")]
    [InlineData("what-if only-mic: lavs", "only the lavs")]
    [InlineData("what-if without-shot: hood", "drop the hood camera")]
    [InlineData("what-if without-site: visor", "without the visor")]
    [InlineData("what-if kit: small kit", "with the small kit")]
    [InlineData("what-if car: people carrier", "in the people carrier")]
    [InlineData("sites", "what sites are there?")]
    [InlineData("link", "how far can we fall back?")]
    [InlineData("link distance: 150 m country: Germany", "will the link hold at 150 m in Germany?")]
    [InlineData("link distance: 1/4 mile surroundings: tunnel", "will the link hold at a quarter mile in a tunnel?")]
    [InlineData("link antenna: roof between: truck stereo: no power: 50 mW frequency: 98.3 MHz", "how far can we fall back with the antenna on the roof, a truck between, in mono, with 50 mW, on 98.3 MHz?")]
    [InlineData("law", "what can I legally radiate?")]
    [InlineData("law country: Japan frequency: 863 MHz", "what's the limit in Japan at 863 MHz?")]
    [InlineData("law frequency: 98.1 MHz power: 50 mW country: DE", "is 50 mW on 98.1 MHz legal in Germany?")]
    [InlineData("channels count: 8 range: 470-494 MHz", "coordinate 8 bodypacks between 470 and 494 MHz")]
    [InlineData("channels check: 600.0 600.6 601.0", "check 600.0 600.6 601.0")]
    [InlineData("channels count: 6 range: 470-494 MHz avoid: 474-482 spacing: 400 kHz fifth-order: yes", "coordinate 6 bodypacks between 470 and 494, keep out of 474 to 482, 400 kHz apart, fifth order too")]
    [InlineData("quiet-channel heard: 97.7 strong, 98.5 faint", "which FM channel is quietest? I hear 97.7 strong and 98.5 faint")]
    [InlineData("heat", "how long can we roll before they melt?")]
    [InlineData("heat outside: 35 C start: 14:00 shade: pop-up", "how long can we roll at 14:00 when it's 35 C out, under the pop-up?")]
    [InlineData("heat outside: 95 F humidity: 40", "it's 95 F out, 40 % humidity, how long can we roll?")]
    [InlineData("heat show: rhythm", "what rhythm of rolling and cooling?")]
    [InlineData("heat show: cool-first", "how long do we cool first?")]
    [InlineData("heat roll: 20 min people: 4", "is it ok to shut four people in for 20 minutes?")]
    [InlineData("levels effort: shout", "what gain for a shouted line?")]
    [InlineData("levels effort: whisper talker: parent", "what gain if the parent whispers?")]
    [InlineData("levels show: pad", "do I need a pad?")]
    [InlineData("run-time", "what runs out first?")]
    [InlineData("run-time show: swaps", "when do I swap batteries?")]
    [InlineData("run-time until: lunch", "will the batteries last till lunch?")]
    [InlineData("noise speed: 50 km/h", "how loud is it at 50 km/h?")]
    [InlineData("noise show: fastest", "how fast can we go?")]
    [InlineData("noise show: table", "give the AD a table")]
    [InlineData("route rain: light", "where on the route is it quiet in light rain?")]
    [InlineData("scene list", "list scenes")]
    [InlineData("car list", "list cars")]
    [InlineData("kit list", "list kits")]
    [InlineData("kit show small kit", "show the small kit")]
    [InlineData("scene use first driving lesson", "use the driving lesson")]
    [InlineData("help", "help")]
    [InlineData("help radio", "help radio")]
    [InlineData("demo", "load demo")]
    [InlineData("ask why not the visor for the neighbour?", "why not the visor for the neighbour?")]
    public async Task Run_Command_AnswersAsTheEqualQuestion(string command, string question)
    {
        TeamDesk desk = Desk();
        CrewAnswer asked = await desk.AskAsync("asked", Pattern with { Text = question }, TestContext.Current.CancellationToken);
        CrewOutput ran = await desk.RunAsync("ran", CommandLine.Read(command).Call!, Pattern, TestContext.Current.CancellationToken);

        Assert.NotEqual(CrewOutcome.NotUnderstood, asked.Outcome);
        Assert.Equal(Whole(asked), Whole(ran.Answer!));
    }

    [Fact]
    public async Task Run_ClipWithAFile_AnswersAsTheClipSentWithAQuestion()
    {
        TeamDesk desk = Desk();
        CrewAnswer asked = await desk.AskAsync("asked", Pattern with { Text = "is this usable for the parent?", Attachment = DemoClip.Attachment }, TestContext.Current.CancellationToken);
        CrewOutput ran = await desk.RunAsync("ran", CommandLine.Read("clip talker: parent").Call! with { File = DemoClip.Attachment }, Pattern, TestContext.Current.CancellationToken);

        Assert.Equal(CrewOutcome.Answered, asked.Outcome);
        Assert.Equal(Whole(asked), Whole(ran.Answer!));
    }

    [Fact]
    public async Task Run_SiteChosenFromTheList_IsThatSite()
    {
        TeamDesk desk = Desk();
        IReadOnlyList<CrewChoice> offered = await desk.CompleteAsync("c", new CrewCommandCall("why", new Dictionary<string, string> { ["site"] = "visor", ["scene"] = "demo-school-run" }), "site", TestContext.Current.CancellationToken);

        Assert.NotEmpty(offered);
        foreach (CrewChoice choice in offered.Take(3))
        {
            CrewOutput output = await desk.RunAsync("ran", new CrewCommandCall("why", new Dictionary<string, string> { ["site"] = choice.Value }), Pattern, TestContext.Current.CancellationToken);
            Assert.Equal(choice.Value, Assert.IsType<V1.MountSite>(output.Answer!.Data["site"]).Id);
        }
    }

    private TeamDesk Desk() => new(planner.Invoker, new CrewDeskOptions(), new RecentConversations());

    // All that a crew sees and a script reads. Counts of how long the planner worked are no part of the answer.
    private static string Whole(CrewAnswer answer) => string.Join('\n',
    [
        $"{answer.Outcome} {answer.Intent} private {answer.Private}", answer.Understood, answer.Headline, .. answer.Lines.Where(l => l.Kind != CrewLineKind.Proof).Select(l => $"{l.Kind}: {l.Text}"),
        .. answer.Pictures.Select(p => $"{p.FileName}: {p.TextAlternative}"), .. answer.FollowUps, .. answer.Data.OrderBy(d => d.Key, StringComparer.Ordinal).Where(d => d.Key is not ("plan" or "planBefore")).Select(d => $"{d.Key}: {JsonFormatter.Default.Format(d.Value)}"),
        answer.Memory.SceneName ?? "no scene", answer.Memory.LastChanges?.ToString() ?? "no changes",
    ]);
}
