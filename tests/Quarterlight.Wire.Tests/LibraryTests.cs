using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>What a team keeps: create, read, update, delete, over the wire.</summary>
public sealed class LibraryTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Cabin_CreateReadUpdateDelete_EachStepSeenByTheNext()
    {
        V1.Cabin made = (await _planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = "round", Cabin = Samples.Cabin("Round trip") }, cancellationToken: Stop)).Cabin;
        Assert.Equal("cabins/round", made.Name);
        Assert.Equal(1, made.Revision);
        Assert.NotNull(made.UpdateTime);
        Assert.Equal(made, (await _planner.Cabins.GetCabinAsync(new GetCabinRequest { Name = made.Name }, cancellationToken: Stop)).Cabin);

        V1.Cabin changed = made.Clone();
        changed.DisplayName = "Changed";
        V1.Cabin kept = (await _planner.Cabins.UpdateCabinAsync(new UpdateCabinRequest { Cabin = changed }, cancellationToken: Stop)).Cabin;
        Assert.Equal(2, kept.Revision);
        Assert.Equal("Changed", (await _planner.Cabins.GetCabinAsync(new GetCabinRequest { Name = made.Name }, cancellationToken: Stop)).Cabin.DisplayName);

        await _planner.Cabins.DeleteCabinAsync(new DeleteCabinRequest { Name = made.Name }, cancellationToken: Stop);
        Refused gone = await Refused.ByAsync(_planner.Cabins.GetCabinAsync(new GetCabinRequest { Name = made.Name }, cancellationToken: Stop));
        Assert.Equal(StatusCode.NotFound, gone.Code);
        Assert.Equal("NOT_FOUND", gone.Info.Reason);
        Assert.Equal("cabins/round", gone.Info.Metadata["name"]);
    }

    [Fact]
    public async Task KitAndScene_CreateReadUpdateDelete_EachStepSeenByTheNext()
    {
        Scene scene = await _planner.KeepSceneAsync("whole");
        Assert.Equal("scenes/whole", scene.Name);
        scene.DisplayName = "Renamed";
        Assert.Equal(2, (await _planner.Scenes.UpdateSceneAsync(new UpdateSceneRequest { Scene = scene }, cancellationToken: Stop)).Scene.Revision);
        Assert.Equal("Renamed", (await _planner.Scenes.GetSceneAsync(new GetSceneRequest { Name = scene.Name }, cancellationToken: Stop)).Scene.DisplayName);

        Kit kit = (await _planner.Kits.GetKitAsync(new GetKitRequest { Name = "kits/whole" }, cancellationToken: Stop)).Kit;
        kit.RecorderInputCount = 6;
        Assert.Equal(2, (await _planner.Kits.UpdateKitAsync(new UpdateKitRequest { Kit = kit }, cancellationToken: Stop)).Kit.Revision);
        Assert.Contains("kits/whole", (await _planner.Kits.ListKitsAsync(new ListKitsRequest { PageSize = 200 }, cancellationToken: Stop)).Kits.Select(k => k.Name));
        Assert.Contains("scenes/whole", (await _planner.Scenes.ListScenesAsync(new ListScenesRequest { PageSize = 200 }, cancellationToken: Stop)).Scenes.Select(s => s.Name));

        await _planner.Scenes.DeleteSceneAsync(new DeleteSceneRequest { Name = scene.Name }, cancellationToken: Stop);
        await _planner.Kits.DeleteKitAsync(new DeleteKitRequest { Name = "kits/whole" }, cancellationToken: Stop);
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Scenes.GetSceneAsync(new GetSceneRequest { Name = scene.Name }, cancellationToken: Stop))).Code);
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Kits.DeleteKitAsync(new DeleteKitRequest { Name = "kits/whole" }, cancellationToken: Stop))).Code);
    }

    [Fact]
    public async Task Create_TakenId_AlreadyExists()
    {
        var request = new CreateCabinRequest { CabinId = "taken", Cabin = Samples.Cabin() };
        await _planner.Cabins.CreateCabinAsync(request, cancellationToken: Stop);
        Refused refused = await Refused.ByAsync(_planner.Cabins.CreateCabinAsync(request, cancellationToken: Stop));
        Assert.Equal(StatusCode.AlreadyExists, refused.Code);
        Assert.Equal("ALREADY_EXISTS", refused.Info.Reason);
    }

    [Fact]
    public async Task Update_StaleRevision_AbortedTellingTheRevisionKept()
    {
        V1.Cabin made = (await _planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = "stale", Cabin = Samples.Cabin() }, cancellationToken: Stop)).Cabin;
        await _planner.Cabins.UpdateCabinAsync(new UpdateCabinRequest { Cabin = made }, cancellationToken: Stop);

        Refused refused = await Refused.ByAsync(_planner.Cabins.UpdateCabinAsync(new UpdateCabinRequest { Cabin = made }, cancellationToken: Stop));

        Assert.Equal(StatusCode.Aborted, refused.Code);
        Assert.Equal("REVISION_CONFLICT", refused.Info.Reason);
        Assert.Equal("2", refused.Info.Metadata["revision"]);
        made.Revision = 0;
        Assert.Equal(3, (await _planner.Cabins.UpdateCabinAsync(new UpdateCabinRequest { Cabin = made }, cancellationToken: Stop)).Cabin.Revision);
    }

    [Theory]
    [InlineData("")]
    [InlineData("Big")]
    [InlineData("two words")]
    [InlineData("9lives")]
    [InlineData("line\n")]
    [InlineData("a/b")]
    [InlineData("ünter")]
    [InlineData("a234567890123456789012345678901234567890123456789012345678901234")]
    public async Task Create_BadId_NamesTheField(string id) =>
        (await Refused.ForFieldsAsync(_planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = id, Cabin = Samples.Cabin() }, cancellationToken: Stop))).Names("cabin_id");

    [Theory]
    [InlineData("")]
    [InlineData("cabins")]
    [InlineData("cabins/")]
    [InlineData("kits/x")]
    [InlineData("x")]
    [InlineData("cabins/a/b")]
    [InlineData("cabins/../kits")]
    public async Task Get_BadName_NamesTheField(string name) =>
        (await Refused.ForFieldsAsync(_planner.Cabins.GetCabinAsync(new GetCabinRequest { Name = name }, cancellationToken: Stop))).Names("name");

    [Fact]
    public async Task Create_NothingSent_NamesTheField()
    {
        (await Refused.ForFieldsAsync(_planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = "a" }, cancellationToken: Stop))).Names("cabin");
        (await Refused.ForFieldsAsync(_planner.Kits.CreateKitAsync(new CreateKitRequest { KitId = "a" }, cancellationToken: Stop))).Names("kit");
        (await Refused.ForFieldsAsync(_planner.Scenes.CreateSceneAsync(new CreateSceneRequest { SceneId = "a" }, cancellationToken: Stop))).Names("scene");
        (await Refused.ForFieldsAsync(_planner.Plans.CreatePlanAsync(new CreatePlanRequest { PlanId = "a" }, cancellationToken: Stop))).Names("plan");
        (await Refused.ForFieldsAsync(_planner.Cabins.UpdateCabinAsync(new UpdateCabinRequest(), cancellationToken: Stop))).Names("cabin");
    }

    [Theory]
    [InlineData("cabins/nowhere", "scene.cabin")]
    [InlineData("nonsense", "scene.cabin")]
    [InlineData("", "scene.cabin")]
    public async Task CreateScene_UnknownCabin_NamesTheField(string cabin, string field)
    {
        Scene scene = Samples.Bundle().Scene;
        scene.Cabin = cabin;
        scene.Kit = "kits/nowhere";
        (await Refused.ForFieldsAsync(_planner.Scenes.CreateSceneAsync(new CreateSceneRequest { SceneId = "lost", Scene = scene }, cancellationToken: Stop))).Names(field);
    }

    [Fact]
    public async Task Delete_CabinOrKitInUse_FailedPreconditionNamingTheScenes()
    {
        Scene scene = await _planner.KeepSceneAsync("used");
        Refused cabin = await Refused.ByAsync(_planner.Cabins.DeleteCabinAsync(new DeleteCabinRequest { Name = "cabins/used" }, cancellationToken: Stop));
        Refused kit = await Refused.ByAsync(_planner.Kits.DeleteKitAsync(new DeleteKitRequest { Name = "kits/used" }, cancellationToken: Stop));
        foreach (Refused refused in new[] { cabin, kit })
        {
            Assert.Equal(StatusCode.FailedPrecondition, refused.Code);
            Assert.Equal("IN_USE", refused.Info.Reason);
            Assert.Contains("scenes/used", refused.Message, StringComparison.Ordinal);
            Assert.Equal("scenes/used", refused.Info.Metadata["users"]);
        }

        await _planner.Scenes.DeleteSceneAsync(new DeleteSceneRequest { Name = scene.Name }, cancellationToken: Stop);
        await _planner.Cabins.DeleteCabinAsync(new DeleteCabinRequest { Name = "cabins/used" }, cancellationToken: Stop);
        await _planner.Kits.DeleteKitAsync(new DeleteKitRequest { Name = "kits/used" }, cancellationToken: Stop);
    }

    [Fact]
    public async Task DeleteCabin_WhileScenesAreMade_NoSceneLeftWithoutItsCar()
    {
        await _planner.Kits.CreateKitAsync(new CreateKitRequest { KitId = "race", Kit = Samples.Bundle().Kit }, cancellationToken: Stop);
        for (int round = 0; round < 8; round++)
        {
            string id = $"race-{round}";
            await _planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = id, Cabin = Samples.Cabin() }, cancellationToken: Stop);
            Scene scene = Samples.Bundle().Scene;
            (scene.Cabin, scene.Kit) = ($"cabins/{id}", "kits/race");
            Task<bool> made = SucceedsAsync(_planner.Scenes.CreateSceneAsync(new CreateSceneRequest { SceneId = id, Scene = scene }, cancellationToken: Stop));
            Task<bool> deleted = SucceedsAsync(_planner.Cabins.DeleteCabinAsync(new DeleteCabinRequest { Name = $"cabins/{id}" }, cancellationToken: Stop));
            Assert.True(await made ^ await deleted, "either the scene keeps its car or there is no scene");
        }
    }

    private static async Task<bool> SucceedsAsync<T>(AsyncUnaryCall<T> call)
    {
        try
        {
            await call;
            return true;
        }
        catch (RpcException)
        {
            return false;
        }
    }
}
