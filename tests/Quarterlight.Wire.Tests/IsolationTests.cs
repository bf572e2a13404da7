using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Two teams behind one delegate's key, with the same ids for everything: neither can see, change, use or list what is the other's.</summary>
public sealed class IsolationTests
{
    private const string Id = "same";
    private const string Key = "key of the bot";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task TwoTeams_SameIds_EachReadsItsOwnOnly()
    {
        await using RunningPlanner planner = await StartAsync();
        (Caller one, Caller two) = (new Caller(planner, Key, "bot-1"), new Caller(planner, Key, "bot-10"));
        await KeepAsync(one, "One", 30);
        await KeepAsync(two, "Two", 50);
        foreach ((Caller caller, string word, double speed) in new[] { (one, "One", 30.0), (two, "Two", 50.0) })
        {
            Assert.Equal(word, (await caller.Cabins.GetCabinAsync(new() { Name = $"cabins/{Id}" }, cancellationToken: Stop)).Cabin.DisplayName);
            Assert.Equal(word, (await caller.Kits.GetKitAsync(new() { Name = $"kits/{Id}" }, cancellationToken: Stop)).Kit.DisplayName);
            Assert.Equal(word, (await caller.Scenes.GetSceneAsync(new() { Name = $"scenes/{Id}" }, cancellationToken: Stop)).Scene.DisplayName);
            Assert.Equal(word, (await caller.Plans.GetPlanAsync(new() { Name = $"plans/{Id}" }, cancellationToken: Stop)).Plan.Note);
            Assert.Equal(speed, (await caller.Clips.GetClipSettingsAsync(new(), cancellationToken: Stop)).Settings.Thresholds.SpeechToNoiseUseDb);
            Assert.Equal(word[..2].ToUpperInvariant(), (await caller.Teams.GetTeamSettingsAsync(new(), cancellationToken: Stop)).Settings.CountryCode);
            Assert.Equal(word, (await caller.Teams.GetConversationAsync(new() { ConversationId = Id }, cancellationToken: Stop)).Conversation.State.ToStringUtf8());
            Assert.Equal(word, Assert.Single((await caller.Cabins.ListCabinsAsync(new(), cancellationToken: Stop)).Cabins).DisplayName);
            Assert.Equal(word, Assert.Single((await caller.Kits.ListKitsAsync(new(), cancellationToken: Stop)).Kits).DisplayName);
            Assert.Equal(word, Assert.Single((await caller.Scenes.ListScenesAsync(new(), cancellationToken: Stop)).Scenes).DisplayName);
            Assert.Equal(word, Assert.Single((await caller.Plans.ListPlansAsync(new(), cancellationToken: Stop)).Plans).Note);
            Plan planned = (await caller.Placement.PlanPlacementAsync(new() { Scene = $"scenes/{Id}" }, cancellationToken: Stop)).Plan;
            Assert.Contains($"\"{word}\"", planned.ToString(), StringComparison.Ordinal);
        }

        planner.Log.VerifyNoErrors();
    }

    [Fact]
    public async Task OneTeamKeeps_TheOther_FindsAndUsesAndChangesNothing()
    {
        await using RunningPlanner planner = await StartAsync();
        (Caller one, Caller two) = (new Caller(planner, Key, "bot-1"), new Caller(planner, Key, "bot-2"));
        await KeepAsync(one, "One", 30);
        V1.Cabin cabin = Samples.Cabin("Two");
        cabin.Name = $"cabins/{Id}";
        SceneBundle bundle = Samples.Bundle();
        bundle.Kit.Name = $"kits/{Id}";
        bundle.Scene.Name = $"scenes/{Id}";
        await NotFoundAsync(two.Cabins.GetCabinAsync(new() { Name = cabin.Name }, cancellationToken: Stop));
        await NotFoundAsync(two.Cabins.UpdateCabinAsync(new() { Cabin = cabin }, cancellationToken: Stop));
        await NotFoundAsync(two.Cabins.DeleteCabinAsync(new() { Name = cabin.Name }, cancellationToken: Stop));
        await NotFoundAsync(two.Kits.GetKitAsync(new() { Name = bundle.Kit.Name }, cancellationToken: Stop));
        await NotFoundAsync(two.Kits.UpdateKitAsync(new() { Kit = bundle.Kit }, cancellationToken: Stop));
        await NotFoundAsync(two.Kits.DeleteKitAsync(new() { Name = bundle.Kit.Name }, cancellationToken: Stop));
        await NotFoundAsync(two.Scenes.GetSceneAsync(new() { Name = bundle.Scene.Name }, cancellationToken: Stop));
        await NotFoundAsync(two.Scenes.DeleteSceneAsync(new() { Name = bundle.Scene.Name }, cancellationToken: Stop));
        await NotFoundAsync(two.Plans.GetPlanAsync(new() { Name = $"plans/{Id}" }, cancellationToken: Stop));
        await NotFoundAsync(two.Plans.UpdatePlanAsync(new() { Name = $"plans/{Id}", Note = "Two" }, cancellationToken: Stop));
        await NotFoundAsync(two.Plans.DeletePlanAsync(new() { Name = $"plans/{Id}" }, cancellationToken: Stop));
        await NotFoundAsync(two.Placement.PlanPlacementAsync(new() { Scene = bundle.Scene.Name }, cancellationToken: Stop));
        await NotFoundAsync(two.Placement.DrawPlanAsync(new() { Plan = $"plans/{Id}" }, cancellationToken: Stop));
        await NotFoundAsync(two.Teams.GetConversationAsync(new() { ConversationId = Id }, cancellationToken: Stop));
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(() => two.Clips.SendAsync([new() { Header = new() { Plan = $"plans/{Id}" } }]))).Code);
        bundle.Scene.Cabin = cabin.Name;
        bundle.Scene.Kit = bundle.Kit.Name;
        await Refused.ByAsync(two.Scenes.CreateSceneAsync(new() { SceneId = Id, Scene = bundle.Scene }, cancellationToken: Stop));
        await Refused.ByAsync(two.Scenes.UpdateSceneAsync(new() { Scene = bundle.Scene }, cancellationToken: Stop));
        Assert.Equal(0, (await two.Teams.GetTeamSettingsAsync(new(), cancellationToken: Stop)).Settings.Revision);
        Assert.Equal(0, (await two.Clips.GetClipSettingsAsync(new(), cancellationToken: Stop)).Settings.Revision);
        Assert.Empty((await two.Cabins.ListCabinsAsync(new(), cancellationToken: Stop)).Cabins);
        Assert.Empty((await two.Plans.ListPlansAsync(new(), cancellationToken: Stop)).Plans);

        Assert.Equal("One", (await one.Scenes.GetSceneAsync(new() { Name = $"scenes/{Id}" }, cancellationToken: Stop)).Scene.DisplayName);
        Assert.Equal("One", (await one.Plans.GetPlanAsync(new() { Name = $"plans/{Id}" }, cancellationToken: Stop)).Plan.Note);
        planner.Log.VerifyNoErrors();
    }

    private static Task<RunningPlanner> StartAsync() =>
        RunningPlanner.StartAsync(o => o with { KeyHashByDelegate = new Dictionary<string, string> { ["bot"] = Caller.Hash(Key) } });

    private static async Task NotFoundAsync<T>(AsyncUnaryCall<T> call) => Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(call)).Code);

    private static async Task KeepAsync(Caller caller, string word, double speed)
    {
        SceneBundle bundle = Samples.Bundle();
        bundle.Kit.DisplayName = word;
        bundle.Scene.DisplayName = word;
        bundle.Scene.Talkers[0].DisplayName = word;
        bundle.Scene.DriveConditions.SpeedKmPerHour = speed;
        bundle.Scene.Cabin = $"cabins/{Id}";
        bundle.Scene.Kit = $"kits/{Id}";
        await caller.Cabins.CreateCabinAsync(new() { CabinId = Id, Cabin = Samples.Cabin(word) }, cancellationToken: Stop);
        await caller.Kits.CreateKitAsync(new() { KitId = Id, Kit = bundle.Kit }, cancellationToken: Stop);
        await caller.Scenes.CreateSceneAsync(new() { SceneId = Id, Scene = bundle.Scene }, cancellationToken: Stop);
        Plan plan = (await caller.Placement.PlanPlacementAsync(new() { Scene = $"scenes/{Id}" }, cancellationToken: Stop)).Plan;
        await caller.Plans.CreatePlanAsync(new() { PlanId = Id, Plan = plan }, cancellationToken: Stop);
        await caller.Plans.UpdatePlanAsync(new() { Name = $"plans/{Id}", Note = word }, cancellationToken: Stop);
        await caller.Clips.UpdateClipSettingsAsync(new() { Thresholds = new() { SpeechToNoiseUseDb = speed } }, cancellationToken: Stop);
        await caller.Teams.UpdateTeamSettingsAsync(new() { Settings = new() { CountryCode = word[..2] } }, cancellationToken: Stop);
        await caller.Teams.SaveConversationAsync(new() { ConversationId = Id, State = ByteString.CopyFromUtf8(word) }, cancellationToken: Stop);
    }
}
