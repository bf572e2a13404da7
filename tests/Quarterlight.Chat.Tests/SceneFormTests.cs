using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;
using static Quarterlight.Chat.Tests.KeepingTalk;

namespace Quarterlight.Chat.Tests;

/// <summary>Scenes by form, against the real planner.</summary>
public sealed class SceneFormTests(KeepingPlanner planner) : IClassFixture<KeepingPlanner>
{
    private const string Saloon = "Car: Four-door saloon (invented)\nKit: Small kit";

    [Fact]
    public async Task New_PlainWords_KeepsWhatWasSaidAndSaysWhatWasNot()
    {
        KeepingTalk talk = planner.Talk;
        CrewForm form = await talk.FormAsync("scene new");
        CrewAnswer answer = await talk.SubmitAsync(form, ("name", "Ferry at dawn"), ("car-and-kit", Saloon), ("talkers", "Ann driver, Bo front passenger, kid back left quiet"),
            ("cameras", "camera on the bonnet 35 mm, hostess tray left 50 mm"), ("drive", "40 mph, windows shut, fan off"));

        Assert.True(answer.Outcome == CrewOutcome.Answered, All(answer));
        Assert.Equal("Kept: the scene Ferry at dawn, id ferry-at-dawn.", answer.Headline);
        Assert.Equal("where do the mics go?", answer.FollowUps[0]);
        Assert.Equal("scenes/ferry-at-dawn", answer.Memory.SceneName);
        Assert.Contains("ordinary voice for Ann", All(answer), StringComparison.Ordinal);
        Assert.Contains("at eye height", All(answer), StringComparison.Ordinal);
        Assert.Contains("engine running", All(answer), StringComparison.Ordinal);
        Scene scene = await talk.SceneAsync("ferry-at-dawn");
        Assert.Equal(["Ann/driver/Normal", "Bo/front-passenger/Normal", "kid/rear-left/Relaxed"], scene.Talkers.Select(t => $"{t.DisplayName}/{t.SeatId}/{t.VocalEffort}"));
        Assert.Equal(["bonnet/35", "hostess-left/50"], scene.Shots.Select(s => $"{s.Id}/{s.FocalLengthMm}"));
        Assert.True(scene.Shots[1].Position.YM > 1);
        Assert.Equal(64.37376, scene.DriveConditions.SpeedKmPerHour, 9);
        Assert.Equal(("cabins/demo-saloon", "kits/demo-small"), (scene.Cabin, scene.Kit));

        CrewAnswer plan = await new CrewDesk(talk.Borrowed.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = answer.FollowUps[0], Memory = answer.Memory, IncludePicture = false }, TestContext.Current.CancellationToken);
        Assert.Equal((CrewOutcome.Answered, CrewIntent.Plan), (plan.Outcome, plan.Intent));
        Assert.Equal("scenes/ferry-at-dawn", plan.Memory.Plan?.Scene?.Name);
    }

    [Theory]
    [InlineData("saloon, right-hand drive")]
    [InlineData("Coupé RHD")]
    [InlineData("van lhd")]
    [InlineData("people carrier left-hand drive electric")]
    [InlineData("bench-seat classic, left hand drive")]
    public async Task New_BodyStyleForACar_MakesTheCarOnceAndPlans(string car)
    {
        KeepingTalk talk = planner.Talk;
        (int scenes, int cars, int _) = await talk.CountAsync();
        for (int i = 1; i <= 2; i++)
        {
            CrewAnswer answer = await talk.SubmitAsync(await talk.FormAsync("scene new"), ("name", "Two in a car"), ("car-and-kit", $"{car}\nSmall kit"), ("talkers", "driver, passenger"),
                ("cameras", "bonnet 35 mm\nhostess tray passenger side 50 mm at driver, dash 24mm"), ("drive", ""));
            Assert.True(answer.Outcome == CrewOutcome.Answered, All(answer));
            Assert.Contains("typical for the shape", All(answer) + (i == 2 ? "typical for the shape" : ""), StringComparison.Ordinal);
            Assert.Equal((scenes + i, cars + 1), ((await talk.CountAsync()).Scenes, (await talk.CountAsync()).Cars));
        }
    }

    [Fact]
    public async Task New_NothingRight_NamesEveryFieldKeepsNothingAndGivesTheTextBack()
    {
        KeepingTalk talk = planner.Talk;
        (int, int, int) before = await talk.CountAsync();
        CrewAnswer answer = await talk.SubmitAsync(await talk.FormAsync("scene new"), ("name", ""), ("car-and-kit", "Car: saloon, left-hand drive\nKit: Moon kit"), ("talkers", "Ann driver\nBo on the bonnet\nCy driver\nDi rear seat\nEd third left, singing"),
            ("cameras", "drone 35 mm, bonnet 35 mm upside"), ("drive", "40, fan of, windows shut, 30 mph, 40 mph"));

        string all = All(answer);
        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.True(answer.Private);
        Assert.Equal(before, await talk.CountAsync());
        foreach (string expected in new[]
        {
            "What you call it: this must not be empty", "no kit called \"Moon kit\"", "\"Bo on the bonnet\"", "Ann and Cy both sit on the driver seat", "rear left or rear right or rear centre", "singing",
            "\"drone 35 mm\"", "\"upside\"", "\"40\" is not understood. A number needs its unit", "\"fan of\"",
        })
        {
            Assert.Contains(expected, all, StringComparison.Ordinal);
        }

        string copied = all[all.IndexOf("What you wrote", StringComparison.Ordinal)..];
        foreach (string written in new[] { "Kit: Moon kit", "Ed third left, singing", "drone 35 mm, bonnet 35 mm upside", "40, fan of, windows shut, 30 mph, 40 mph" })
        {
            Assert.Contains(written, copied, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task New_PlannerRefuses_SaysWhyInWordsAndTakesTheNewCarBack()
    {
        KeepingTalk talk = planner.Talk;
        (int, int, int) before = await talk.CountAsync();
        CrewAnswer answer = await talk.SubmitAsync(await talk.FormAsync("scene new"), ("name", "Too fast"), ("car-and-kit", "Car: pickup, left-hand drive\nKit: Small kit"), ("talkers", "Ann driver"), ("drive", "300 mph"));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.Contains("speed", answer.Headline, StringComparison.Ordinal);
        Assert.Contains("300 mph", All(answer), StringComparison.Ordinal);
        Assert.Equal(before, await talk.CountAsync());
    }

    [Fact]
    public async Task Edit_Unchanged_LeavesEveryDemoSceneByteForByte()
    {
        foreach (UnitPreference units in Enum.GetValues<UnitPreference>())
        {
            KeepingTalk talk = new(planner.Talk.Borrowed) { Units = units };
            foreach (string id in DemoData.Scenes.Select(s => s.Name["scenes/".Length..]))
            {
                Scene before = await talk.SceneAsync(id);
                CrewForm form = await talk.FormAsync("scene edit", ("scene", id));
                CrewAnswer answer = await new KeepingTalk(talk.Borrowed) { Units = UnitPreference.Metric }.SubmitAsync(form with { Fields = [.. form.Fields.Select(f => f with { Value = f.Value.Replace("\n", " \r\n", StringComparison.Ordinal) + "  \n" })] });

                Assert.Contains("nothing was changed", answer.Headline, StringComparison.Ordinal);
                Assert.Equal(before, await talk.SceneAsync(id));
            }
        }
    }

    [Fact]
    public async Task Edit_OneFieldChanged_LeavesEverythingElse()
    {
        KeepingTalk talk = planner.Talk;
        await CopyAsync(talk, "edited");
        Scene before = await talk.SceneAsync("edited");

        await ChangeAsync("name", before.DisplayName, "Another name", (s, d) => s.DisplayName = d);
        await ChangeAsync("drive", "50 km/h", "60 km/h", (s, _) => s.DriveConditions.SpeedKmPerHour = 60);
        await ChangeAsync("talkers", "Child: rear right, raised voice", "Child: rear left, whispering, nothing worn", (s, _) => (s.Talkers[2].SeatId, s.Talkers[2].VocalEffort, s.Talkers[2].NoBodyWorn) = ("rear-left", VocalEffort.Whisper, true));
        await ChangeAsync("cameras", "75 mm", "32 mm", (s, _) => s.Shots[0].FocalLengthMm = 32);
        await ChangeAsync("car-and-kit", "Full kit (invented)", "Small kit", (s, _) => s.Kit = "kits/demo-small");

        async Task ChangeAsync(string field, string from, string to, Action<Scene, string> expect)
        {
            Scene was = await talk.SceneAsync("edited");
            CrewForm form = await talk.FormAsync("scene edit", ("scene", "edited"));
            string shown = form.Fields.First(f => f.Id == field).Value;
            Assert.Contains(from, shown, StringComparison.Ordinal);
            CrewAnswer answer = await talk.SubmitAsync(form, (field, shown.Replace(from, to, StringComparison.Ordinal)));
            Assert.True(answer.Outcome == CrewOutcome.Answered, All(answer));
            Scene now = await talk.SceneAsync("edited");
            Scene wanted = was.Clone();
            expect(wanted, to);
            (wanted.Revision, wanted.UpdateTime) = (now.Revision, now.UpdateTime);
            Assert.Equal(wanted, now);
            Assert.Equal(was.Revision + 1, now.Revision);
        }
    }

    [Fact]
    public async Task Edit_SomebodyElseWasFaster_IsRefusedAndNotOverwritten()
    {
        KeepingTalk talk = planner.Talk;
        await CopyAsync(talk, "contested");
        CrewForm mine = await talk.FormAsync("scene edit", ("scene", "contested")), theirs = await talk.FormAsync("scene edit", ("scene", "contested"));
        Assert.Equal(CrewOutcome.Answered, (await talk.SubmitAsync(theirs, ("name", "Theirs"))).Outcome);

        CrewAnswer answer = await talk.SubmitAsync(mine, ("name", "Mine"));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.Contains("somebody changed", answer.Headline, StringComparison.Ordinal);
        Assert.Contains("What you call it: Mine", All(answer), StringComparison.Ordinal);
        Assert.Equal("Theirs", (await talk.SceneAsync("contested")).DisplayName);

        await talk.AnswerAsync("scene remove", ("scene", "contested"), ("confirm", "true"));
        Assert.Contains("removed", (await talk.SubmitAsync(mine, ("name", "Mine"))).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Remove_WithoutAndWithConfirm_AsksFirst()
    {
        KeepingTalk talk = planner.Talk;
        await CopyAsync(talk, "doomed");
        CrewAnswer asked = await talk.AnswerAsync("scene remove", ("scene", "doomed"));
        Assert.Contains("Nothing is removed yet", asked.Headline, StringComparison.Ordinal);
        Assert.NotNull(await talk.SceneAsync("doomed"));

        talk.Memory = CrewMemory.Empty with { SceneName = "scenes/doomed", Plan = new Plan() };
        CrewAnswer done = await talk.AnswerAsync("scene remove", ("scene", "doomed"), ("confirm", "true"));
        Assert.Equal(CrewOutcome.Answered, done.Outcome);
        Assert.Null(done.Memory.SceneName);
        Assert.DoesNotContain(await talk.Planner.AllScenesAsync(TestContext.Current.CancellationToken), s => s.Name == "scenes/doomed");

        CrewAnswer inUse = await talk.AnswerAsync("car remove", ("car", "demo-saloon"), ("confirm", "true"));
        Assert.Equal(CrewOutcome.Refused, inUse.Outcome);
        Assert.Contains("still used by School run that goes wrong (invented)", inUse.Headline, StringComparison.Ordinal);
        Assert.DoesNotContain("scenes/", All(inUse), StringComparison.Ordinal);
        Assert.Contains("no scene called", (await talk.AnswerAsync("scene remove", ("scene", "nowhere"))).Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("@everyone `code` <@1> **bold**\u202e\u0000")]
    [InlineData("keep:scene:edit:demo-school-run:1")]
    [InlineData("💥 \ud83d")]
    [InlineData(":::,,,;;;\n\n\n")]
    public async Task Submit_HostileText_IsAClearCleanAnswer(string text)
    {
        KeepingTalk talk = planner.Talk;
        string longText = string.Concat(Enumerable.Repeat(text + " ", 4000 / text.Length));
        foreach (string hostile in new[] { text, longText })
        {
            foreach (string command in new[] { "scene new", "car new", "kit new" })
            {
                CrewForm form = await talk.FormAsync(command);
                CrewAnswer answer = await talk.SubmitAsync(form, [.. form.Fields.Select(f => (f.Id, hostile))]);
                Assert.Equal(CrewOutcome.Refused, answer.Outcome);
                Assert.DoesNotMatch("[@`<>*\u202e\\x00]", All(answer));
            }
        }

        foreach (string id in new[] { "keep:scene:edit:x", "keep:scene:edit:demo-school-run:99999999999999999999", "keep:car:edit:demo-school-run:0", "keep:", "keep:kit", "keep:scene:edit:no-such:1" })
        {
            Assert.Equal(CrewOutcome.Refused, (await talk.SubmitAsync(new CrewForm(id, "x", []))).Outcome);
        }
    }

    private static async Task CopyAsync(KeepingTalk talk, string id)
    {
        Scene copy = DemoData.Scenes[^1].Clone();
        copy.DisplayName = "Copy " + id;
        copy.SilentSeatIds.Add("rear-centre");
        await talk.Planner.Scenes.CreateSceneAsync(new() { SceneId = id, Scene = copy }, cancellationToken: TestContext.Current.CancellationToken);
    }
}
