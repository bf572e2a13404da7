using System.Net;
using Grpc.Core;
using Quarterlight.Planner;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>One key for many teams: it opens those that begin with its name and no other.</summary>
public sealed class DelegateTests
{
    private static readonly Dictionary<string, string> s_teams = new() { ["north"] = Caller.Hash("key of the north"), ["chat"] = Caller.Hash("key of chat") };
    private static readonly Dictionary<string, string> s_delegates = new() { ["bot"] = Caller.Hash("key of the bot"), ["chat"] = Caller.Hash("key of the chat bot").ToUpperInvariant() };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string?, string?, string> Reached => new()
    {
        { "key of the north", null, "north" },
        { "key of the north", "north", "north" },
        { "key of chat", "chat", "chat" },
        { "key of the bot", "bot-1", "bot-1" },
        { "key of the bot", "bot-104857600000000001", "bot-104857600000000001" },
        { "key of the bot", "bot--", "bot--" },
        { "key of the chat bot", "chat-7", "chat-7" },
    };

    public static TheoryData<string?, string?, StatusCode, string> Unreached => new()
    {
        { "key of the north", "chat", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the north", "bot-1", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the north", "north-1", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the north", "North", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the north", "", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the bot", null, StatusCode.InvalidArgument, "INVALID_FIELDS" },
        { "key of the bot", "", StatusCode.InvalidArgument, "INVALID_FIELDS" },
        { "key of the bot", "bot-A", StatusCode.InvalidArgument, "INVALID_FIELDS" },
        { "key of the bot", "bot-1/scenes", StatusCode.InvalidArgument, "INVALID_FIELDS" },
        { "key of the bot", "bot-1 ,chat-1", StatusCode.InvalidArgument, "INVALID_FIELDS" },
        { "key of the bot", "bot-0123456789012345678901234567890123456789012345678901234567890", StatusCode.InvalidArgument, "INVALID_FIELDS" },
        { "key of the bot", "bot", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the bot", "bot-", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the bot", "bots-1", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the bot", "north", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the bot", "local", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the bot", "chat-7", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "key of the chat bot", "chat", StatusCode.PermissionDenied, "WRONG_TEAM" },
        { "somebody's", "bot-1", StatusCode.Unauthenticated, "UNKNOWN_KEY" },
        { null, "bot-1", StatusCode.Unauthenticated, "UNKNOWN_KEY" },
        { null, "north", StatusCode.Unauthenticated, "UNKNOWN_KEY" },
    };

    [Fact]
    public async Task Call_KeyOpensTheTeam_ActsAsThatTeamOverGrpcAndJson()
    {
        await using RunningPlanner planner = await StartAsync();
        foreach (TheoryDataRow<string?, string?, string> row in Reached)
        {
            (string? key, string? team, string expected) = row.Data;
            planner.Log.Lines.Clear();
            var caller = new Caller(planner, key, team);
            await caller.Cabins.ListCabinsAsync(new(), cancellationToken: Stop);
            using HttpResponseMessage json = await caller.HttpAsync(HttpMethod.Get, "/v1/cabins");
            using HttpResponseMessage clip = await caller.HttpAsync(HttpMethod.Post, "/v1/clips:judge", new ByteArrayContent(Waves.Talk(0.1)));
            Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (json.StatusCode, clip.StatusCode));
            Assert.Equal(3, planner.Log.Lines.Count(l => l.Text.Contains($"for team {expected}: OK", StringComparison.Ordinal)));
        }

        Assert.DoesNotContain(planner.Log.Lines, l => l.Text.Contains("key of", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Call_KeyDoesNotOpenTheTeam_RefusedOverGrpcAndJson()
    {
        await using RunningPlanner planner = await StartAsync();
        foreach (TheoryDataRow<string?, string?, StatusCode, string> row in Unreached)
        {
            (string? key, string? team, StatusCode code, string reason) = row.Data;
            var caller = new Caller(planner, key, team);
            Refused refused = await Refused.ByAsync(caller.Cabins.ListCabinsAsync(new(), cancellationToken: Stop));
            Assert.Equal((code, reason), (refused.Code, refused.Info.Reason));
            if (code == StatusCode.InvalidArgument)
            {
                refused.Names("x-quarterlight-team");
            }

            HttpStatusCode expected = code switch
            {
                StatusCode.PermissionDenied => HttpStatusCode.Forbidden,
                StatusCode.Unauthenticated => HttpStatusCode.Unauthorized,
                _ => HttpStatusCode.BadRequest,
            };
            using HttpResponseMessage json = await caller.HttpAsync(HttpMethod.Get, "/v1/cabins");
            using HttpResponseMessage clip = await caller.HttpAsync(HttpMethod.Post, "/v1/clips:judge", new ByteArrayContent(Waves.Talk(0.1)));
            Assert.Equal((expected, expected), (json.StatusCode, clip.StatusCode));
        }

        planner.Log.VerifyNoErrors();
    }

    [Fact]
    public async Task Call_TeamNamedTwice_Refused()
    {
        await using RunningPlanner planner = await StartAsync();
        var twice = new Metadata { { "x-quarterlight-key", "key of the bot" }, { "x-quarterlight-team", "bot-1" }, { "x-quarterlight-team", "bot-2" } };
        Assert.Equal(StatusCode.InvalidArgument, (await Refused.ByAsync(planner.Cabins.ListCabinsAsync(new(), twice, cancellationToken: Stop))).Code);
    }

    [Fact]
    public async Task Call_NoKeysConfigured_AnyTeamByNameAndLocalWithout()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        await new Caller(planner, null, "one").Cabins.CreateCabinAsync(new() { CabinId = "a", Cabin = Samples.Cabin("One's") }, cancellationToken: Stop);
        Assert.Empty((await planner.Cabins.ListCabinsAsync(new(), cancellationToken: Stop)).Cabins);
        Assert.Empty((await new Caller(planner, null, "two").Cabins.ListCabinsAsync(new(), cancellationToken: Stop)).Cabins);
        Assert.Equal("One's", Assert.Single((await new Caller(planner, "any", "one").Cabins.ListCabinsAsync(new(), cancellationToken: Stop)).Cabins).DisplayName);
        await planner.Cabins.CreateCabinAsync(new() { CabinId = "b", Cabin = Samples.Cabin("Local") }, cancellationToken: Stop);
        Assert.Equal("Local", Assert.Single((await new Caller(planner, null, "local").Cabins.ListCabinsAsync(new(), cancellationToken: Stop)).Cabins).DisplayName);
        (await Refused.ForFieldsAsync(new Caller(planner, null, "a/b").Cabins.ListCabinsAsync(new(), cancellationToken: Stop))).Names("x-quarterlight-team");
    }

    [Theory]
    [InlineData("bot-one", "", "bot", "Teams:bot-one")]
    [InlineData("", "bot-two", "bot", "Delegates:bot-two")]
    [InlineData("", "", "Bot", "Delegates:Bot")]
    public async Task Start_NamesReachIntoOneAnother_RefusedInOneLineNamingIt(string team, string other, string name, string named)
    {
        using var folder = new TempFolder();
        Dictionary<string, string> teams = team.Length == 0 ? [] : new() { [team] = Caller.Hash("t") };
        var delegates = new Dictionary<string, string> { [name] = Caller.Hash("d") };
        if (other.Length > 0)
        {
            delegates.Add(other, Caller.Hash("o"));
        }

        PlannerStartException refused = await Assert.ThrowsAsync<PlannerStartException>(
            () => PlannerHost.StartAsync(new PlannerHostOptions { DataFolder = folder.Path, KeyHashByTeam = teams, KeyHashByDelegate = delegates }, Stop));
        Assert.Contains(named, refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refused.Message);
    }

    [Theory]
    [InlineData("not a hash", "Delegates:bot")]
    [InlineData("", "Delegates:bot")]
    public async Task Start_BadHash_RefusedNamingIt(string hash, string named)
    {
        using var folder = new TempFolder();
        PlannerStartException refused = await Assert.ThrowsAsync<PlannerStartException>(
            () => PlannerHost.StartAsync(new PlannerHostOptions { DataFolder = folder.Path, KeyHashByDelegate = new Dictionary<string, string> { ["bot"] = hash } }, Stop));
        Assert.Contains(named, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Start_DelegateWithATeamsKey_Refused()
    {
        using var folder = new TempFolder();
        var options = new PlannerHostOptions
        {
            DataFolder = folder.Path,
            KeyHashByTeam = new Dictionary<string, string> { ["a"] = Caller.Hash("x") },
            KeyHashByDelegate = new Dictionary<string, string> { ["b"] = Caller.Hash("x").ToUpperInvariant() },
        };
        Assert.Contains("Delegates:b", (await Assert.ThrowsAsync<PlannerStartException>(() => PlannerHost.StartAsync(options, Stop))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Start_BeyondThisMachineWithADelegateAlone_Starts()
    {
        using var folder = new TempFolder();
        await using PlannerHost host = await PlannerHost.StartAsync(
            new PlannerHostOptions { DataFolder = folder.Path, Quiet = true, Address = IPAddress.Any, KeyHashByDelegate = new Dictionary<string, string> { ["bot"] = Caller.Hash("d") } }, Stop);
        Assert.NotEmpty(host.GrpcAddress);
    }

    private static Task<RunningPlanner> StartAsync() => RunningPlanner.StartAsync(o => o with { KeyHashByTeam = s_teams, KeyHashByDelegate = s_delegates });
}
