using System.Net;
using System.Text;
using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>PlanLevels over real gRPC and JSON. Kits are invented.</summary>
public sealed class LevelTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly Ranged<PlanLevelsRequest>[] s_ranged =
    [
        .. LevelTable.Ranged.Select(r => new Ranged<PlanLevelsRequest>($"bundle.{r.Field}", r.Min, r.Max, (q, v) => r.Set(q.Bundle.Kit, v), r.Whole)),
        new("headroom_db", 0, 30, (r, v) => r.HeadroomDb = v),
    ];

    private static readonly Dictionary<string, (Action<PlanLevelsRequest> Spoil, string Field)> s_wrong = new(
    [
        .. s_ranged.SelectMany(r => r.Outside()),
        .. LevelTable.Wrong.Select(w => Wrong(w.Key, r => w.Value.Spoil(r.Bundle.Kit), $"bundle.{w.Value.Field}")),
        Wrong("nothing", r => r.ClearSource(), "source"),
        Wrong("an empty bundle", r => r.Bundle = new SceneBundle(), "bundle"),
        Wrong("no inputs known", r => r.Bundle.Kit.RecorderGain = null, "bundle.kit.recorder_gain"),
        Wrong("somebody else gets louder", r => r.Efforts.Add(Effort("nobody", VocalEffort.Shout)), "efforts[0].talker_id"),
        Wrong("somebody gets louder twice", r => r.Efforts.Add([Effort("driver", VocalEffort.Shout), Effort("driver", VocalEffort.Loud)]), "efforts[1].talker_id"),
        Wrong("loudest not said", r => r.Efforts.Add(Effort("driver", VocalEffort.Unspecified)), "efforts[0].loudest"),
        Wrong("loudest unknown", r => r.Efforts.Add(Effort("driver", (VocalEffort)17)), "efforts[0].loudest"),
        Wrong("an unknown transmitter", r => r.MicrophoneTransmitterId = "smoke", "microphone_transmitter_id"),
        Wrong("a transmitter that no microphone feeds", r => r.MicrophoneTransmitterId = "hop", "microphone_transmitter_id"),
        Wrong("a microphone left out that is not there", r => r.Changes = new SceneChanges { RemovedMicrophoneIds = { "gone" } }, "changes.removed_microphone_ids[0]"),
    ]);

    private static readonly Dictionary<string, Action<PlanLevelsRequest>> s_ends = new(s_ranged.SelectMany(r => r.Ends()));

    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> WrongOnes => [.. s_wrong.Keys];

    public static TheoryData<string> Ends => [.. s_ends.Keys];

    private static PlanLevelsRequest Request()
    {
        SceneBundle bundle = Samples.Bundle();
        bundle.Kit.WithLevels();
        return new PlanLevelsRequest { Bundle = bundle };
    }

    private static TalkerEffort Effort(string talker, VocalEffort loudest) => new() { TalkerId = talker, Loudest = loudest };

    private static KeyValuePair<string, (Action<PlanLevelsRequest> Spoil, string Field)> Wrong(string what, Action<PlanLevelsRequest> spoil, string field) => KeyValuePair.Create(what, (spoil, field));

    private async Task<LevelReport> AskAsync(PlanLevelsRequest request) => (await _planner.Placement.PlanLevelsAsync(request, cancellationToken: Stop)).Report;

    [Fact]
    public async Task Levels_Bundle_EveryInputOfThePlanHasItsGain()
    {
        LevelReport report = await AskAsync(Request());
        Plan plan = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = Request().Bundle }, cancellationToken: Stop)).Plan;
        Assert.Equal(plan.Best.Placements.Select(p => p.RecorderInput).Distinct().Order(), report.Inputs.Select(i => i.RecorderInput));
        Assert.Equal(["back", "driver", "front"], report.Inputs.SelectMany(i => i.TalkerIds).Order(StringComparer.Ordinal));
        Assert.All(report.Inputs, i =>
        {
            Assert.InRange(i.GainDb, 0, 70);
            Assert.Equal(6, i.HeadroomDb);
            Assert.True(i.PeakDbfs <= 0 && i.SpeechDbfs < i.PeakDbfs, $"peak {i.PeakDbfs}, speech {i.SpeechDbfs}");
            Assert.Equal(
                [VocalEffort.Whisper, VocalEffort.Relaxed, VocalEffort.Normal, VocalEffort.Raised, VocalEffort.Loud, VocalEffort.Shout],
                i.Efforts.Select(e => e.Effort));
            Assert.Equal(i.Efforts.Select(e => e.PeakLevelDb).Order(), i.Efforts.Select(e => e.PeakLevelDb));
            Assert.NotEqual("", i.Words);
            Assert.NotEqual(ChainVerdict.Unspecified, i.Verdict);
            Assert.Null(i.Transmitter);
        });
        Assert.Equal(["hop"], report.Sends.Select(s => s.TransmitterId));
    }

    [Fact]
    public async Task Levels_Shout_LessGainThanAWhisper()
    {
        PlanLevelsRequest shout = Request(), whisper = Request();
        shout.Efforts.Add(Effort("driver", VocalEffort.Shout));
        whisper.Efforts.Add(Effort("driver", VocalEffort.Whisper));
        Assert.True(DriverIn(await AskAsync(shout)).GainDb < DriverIn(await AskAsync(whisper)).GainDb);

        static InputLevels DriverIn(LevelReport report) => report.Inputs.Single(i => i.TalkerIds.Contains("driver"));
    }

    [Fact]
    public async Task Levels_WhisperedScene_PlansAndReadsBack()
    {
        PlanLevelsRequest request = Request();
        request.Bundle.Scene.Talkers[0].VocalEffort = VocalEffort.Whisper;
        Assert.NotEmpty((await AskAsync(request)).Inputs);
    }

    [Fact]
    public async Task Levels_HeadroomAndTransmitter_AreHeeded()
    {
        PlanLevelsRequest request = Request();
        request.HeadroomDb = 0;
        Assert.All((await AskAsync(request)).Inputs, i => Assert.Equal(0, i.HeadroomDb));
        foreach (string other in new[] { "cardioid", "supercardioid" })
        {
            (request.Changes ??= new SceneChanges()).RemovedMicrophoneIds.Add(other);
        }

        string site = Worn(request.Bundle).First();
        Assert.NotEqual("", site);
        request.MicrophoneTransmitterId = "pack";
        request.Changes.RemovedSiteIds.Add((await SitesAsync(request.Bundle.Cabin)).Where(s => !Worn(request.Bundle).Contains(s)));
        LevelReport worn = await AskAsync(request);
        Assert.All(worn.Inputs, i => Assert.Equal("pack", i.Transmitter.TransmitterId));
    }

    [Fact]
    public async Task Levels_OverJson_SameAnswer()
    {
        using var body = new StringContent(JsonFormatter.Default.Format(Request()), Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await _planner.Http.PostAsync("/v1/placement:levels", body, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(await AskAsync(Request()), JsonParser.Default.Parse<PlanLevelsResponse>(await answer.Content.ReadAsStringAsync(Stop)).Report);
    }

    [Fact]
    public async Task Levels_PlanSceneAndBundle_Agree()
    {
        Scene scene = await _planner.KeepWholeSceneAsync("levels");
        Plan plan = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Scene = scene.Name, Keep = true }, cancellationToken: Stop)).Plan;
        LevelReport fromPlan = await AskAsync(new PlanLevelsRequest { Plan = plan.Name });
        Assert.Equal(fromPlan, await AskAsync(new PlanLevelsRequest { Scene = scene.Name }));
        Assert.Equal(fromPlan, await AskAsync(new PlanLevelsRequest { Bundle = new SceneBundle { Scene = scene, Cabin = plan.Cabin, Kit = plan.Kit } }));

        // The plan keeps its own copies: what happens to the scene later is not its business.
        scene.Talkers.RemoveAt(0);
        await _planner.Scenes.UpdateSceneAsync(new UpdateSceneRequest { Scene = scene }, cancellationToken: Stop);
        Assert.Equal(fromPlan, await AskAsync(new PlanLevelsRequest { Plan = plan.Name }));
        Assert.NotEqual(fromPlan, await AskAsync(new PlanLevelsRequest { Scene = scene.Name }));
    }

    [Fact]
    public async Task Levels_Changes_OfASceneAnsweredOfAPlanRefused()
    {
        Scene scene = await _planner.KeepWholeSceneAsync("levels-changed");
        Plan plan = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Scene = scene.Name, Keep = true }, cancellationToken: Stop)).Plan;
        var changes = new SceneChanges { RemovedMicrophoneIds = { plan.Best.Placements[0].MicrophoneId } };
        Assert.DoesNotContain(changes.RemovedMicrophoneIds[0], (await AskAsync(new PlanLevelsRequest { Scene = scene.Name, Changes = changes })).Inputs.Select(i => i.MicrophoneId));
        (await Refused.ForFieldsAsync(_planner.Placement.PlanLevelsAsync(new PlanLevelsRequest { Plan = plan.Name, Changes = changes }, cancellationToken: Stop))).Names("changes");
        Assert.NotEmpty((await AskAsync(new PlanLevelsRequest { Plan = plan.Name, Changes = new SceneChanges() })).Inputs);
    }

    [Fact]
    public async Task Levels_KitWithoutInputs_SaysWhatToAdd()
    {
        Scene scene = await _planner.KeepSceneAsync("levels-bare");
        Plan plan = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Scene = scene.Name, Keep = true }, cancellationToken: Stop)).Plan;
        foreach (PlanLevelsRequest request in new[] { new PlanLevelsRequest { Scene = scene.Name }, new PlanLevelsRequest { Plan = plan.Name } })
        {
            Refused refused = await Refused.ForFieldsAsync(_planner.Placement.PlanLevelsAsync(request, cancellationToken: Stop));
            Assert.Equal(["kit.recorder_gain"], refused.Fields.Select(f => f.Field));
            Assert.Contains("Add its full scale", refused.Fields[0].Description, StringComparison.Ordinal);
        }

        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Placement.PlanLevelsAsync(new PlanLevelsRequest { Plan = "plans/nowhere" }, cancellationToken: Stop))).Code);
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Placement.PlanLevelsAsync(new PlanLevelsRequest { Scene = "scenes/nowhere" }, cancellationToken: Stop))).Code);
    }

    [Theory]
    [MemberData(nameof(WrongOnes))]
    public async Task Levels_WrongRequest_NamesTheField(string what)
    {
        PlanLevelsRequest request = Request();
        s_wrong[what].Spoil(request);
        Refused refused = await Refused.ForFieldsAsync(_planner.Placement.PlanLevelsAsync(request, cancellationToken: Stop));
        Assert.Equal([s_wrong[what].Field], refused.Fields.Select(f => f.Field));
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public async Task Levels_AtTheEndOfARange_Answers(string what)
    {
        PlanLevelsRequest request = Request();
        s_ends[what](request);
        Assert.All((await AskAsync(request)).Inputs, i => Assert.True(double.IsFinite(i.GainDb + i.PeakDbfs + i.SpeechDbfs + i.CabinNoiseDbfs + i.SelfNoiseDbfs + i.ChainNoiseDbfs), $"input {i.RecorderInput}"));
    }

    private static IEnumerable<string> Worn(SceneBundle bundle) => bundle.Scene.Talkers.Select(t => $"body-worn-{t.Id}");

    private async Task<IEnumerable<string>> SitesAsync(V1.Cabin cabin) =>
        (await _planner.Placement.ListMountSitesAsync(new ListMountSitesRequest { Cabin = cabin }, cancellationToken: Stop)).Sites.Select(s => s.Id);
}
