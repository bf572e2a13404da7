using System.Net;
using System.Security.Cryptography;
using System.Text;
using Grpc.Core;
using Grpc.Health.V1;
using Quarterlight.Planner;
using Quarterlight.Store;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Teams and keys: a key opens one team and nothing else.</summary>
public sealed class AccessTests
{
    private static readonly Dictionary<string, string> s_twoTeams = new() { ["north"] = Hash("key of the north"), ["south"] = Hash("key of the south").ToUpperInvariant() };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    private static Metadata Key(string key) => new() { { "x-quarterlight-key", key } };

    private static PlannerHostOptions Options(string folder) => new() { DataFolder = folder };

    [Fact]
    public async Task AnyCall_TwoTeams_EachSeesItsOwn()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync(o => o with { KeyHashByTeam = s_twoTeams });
        await planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = "ours", Cabin = Samples.Cabin("North's") }, Key("key of the north"), cancellationToken: Stop);
        await planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = "ours", Cabin = Samples.Cabin("South's") }, Key("key of the south"), cancellationToken: Stop);

        Assert.Equal("North's", (await planner.Cabins.GetCabinAsync(new GetCabinRequest { Name = "cabins/ours" }, Key("key of the north"), cancellationToken: Stop)).Cabin.DisplayName);
        Assert.Equal("South's", Assert.Single((await planner.Cabins.ListCabinsAsync(new ListCabinsRequest(), Key("key of the south"), cancellationToken: Stop)).Cabins).DisplayName);
        await planner.Cabins.DeleteCabinAsync(new DeleteCabinRequest { Name = "cabins/ours" }, Key("key of the south"), cancellationToken: Stop);
        Assert.Single((await planner.Cabins.ListCabinsAsync(new ListCabinsRequest(), Key("key of the north"), cancellationToken: Stop)).Cabins);
        planner.Log.VerifyNoErrors();
    }

    [Fact]
    public async Task AnyCall_KeyMissingOrWrong_Unauthenticated()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync(o => o with { KeyHashByTeam = s_twoTeams });
        foreach (Metadata? key in new[] { null, Key(""), Key("north"), Key(Hash("key of the north")), Key("key of the north ") })
        {
            Refused refused = await Refused.ByAsync(planner.Cabins.ListCabinsAsync(new ListCabinsRequest(), key, cancellationToken: Stop));
            Assert.Equal(StatusCode.Unauthenticated, refused.Code);
            Assert.Equal("UNKNOWN_KEY", refused.Info.Reason);
        }

        Assert.Equal(HttpStatusCode.Unauthorized, (await planner.Http.GetAsync("/v1/cabins", Stop)).StatusCode);
        planner.Http.DefaultRequestHeaders.Add("x-quarterlight-key", "key of the south");
        Assert.Equal(HttpStatusCode.OK, (await planner.Http.GetAsync("/v1/cabins", Stop)).StatusCode);
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, (await planner.Health.CheckAsync(new HealthCheckRequest(), cancellationToken: Stop)).Status);
        Assert.DoesNotContain(planner.Log.Lines, l => l.Text.Contains("key of the", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Start_BeyondThisMachineWithoutKeys_RefusedInOneLine()
    {
        using var folder = new TempFolder();
        PlannerStartException refused = await Assert.ThrowsAsync<PlannerStartException>(() => PlannerHost.StartAsync(Options(folder.Path) with { Address = IPAddress.Any }, Stop));
        Assert.DoesNotContain('\n', refused.Message);
        Assert.Contains("Teams:", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("north", "not a hash")]
    [InlineData("north", "")]
    [InlineData("North Team", "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    [InlineData("a/b", "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    public async Task Start_BadTeam_RefusedNamingIt(string team, string hash)
    {
        using var folder = new TempFolder();
        PlannerStartException refused = await Assert.ThrowsAsync<PlannerStartException>(
            () => PlannerHost.StartAsync(Options(folder.Path) with { KeyHashByTeam = new Dictionary<string, string> { [team] = hash } }, Stop));
        Assert.Contains($"Teams:{team}", refused.Message, StringComparison.Ordinal);
        await using PlannerHost after = await PlannerHost.StartAsync(Options(folder.Path) with { Quiet = true }, Stop);
        Assert.StartsWith("http://127.0.0.1:", after.GrpcAddress, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Start_TwoTeamsWithOneKey_Refused()
    {
        using var folder = new TempFolder();
        var teams = new Dictionary<string, string> { ["a"] = Hash("x"), ["b"] = Hash("x").ToUpperInvariant() };
        await Assert.ThrowsAsync<PlannerStartException>(() => PlannerHost.StartAsync(Options(folder.Path) with { KeyHashByTeam = teams }, Stop));
    }

    [Fact]
    public async Task Start_FolderInUse_Refused()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        await Assert.ThrowsAsync<StoreInUseException>(() => PlannerHost.StartAsync(Options(planner.Folder), Stop));
    }
}
