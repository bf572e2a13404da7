using System.Net;
using System.Text;
using Grpc.Core;
using Grpc.Net.Client;
using Quarterlight.Planner;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>What a team has set for itself.</summary>
public sealed class TeamSettingsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Settings_NeverSet_NothingAtRevisionZero()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        Assert.Equal(new TeamSettings { Name = "teamSettings/team" }, await ReadAsync(planner.Teams));
    }

    [Fact]
    public async Task Settings_SetAndTakenBack_KeptAsAWhole()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        TeamSettings first = await WriteAsync(planner.Teams, new TeamSettings { Name = "whatever", Units = UnitSystem.Imperial, CountryCode = "gb" });
        Assert.Equal(("teamSettings/team", UnitSystem.Imperial, "GB", 1), (first.Name, first.Units, first.CountryCode, first.Revision));
        Assert.NotNull(first.UpdateTime);
        Assert.Equal(first, await ReadAsync(planner.Teams));

        TeamSettings second = await WriteAsync(planner.Teams, new TeamSettings { Units = UnitSystem.Metric, Revision = first.Revision });
        Assert.Equal((UnitSystem.Metric, "", 2), (second.Units, second.CountryCode, second.Revision));
        Assert.Equal(second, await ReadAsync(planner.Teams));
    }

    [Theory]
    [InlineData(7)]
    [InlineData(1)]
    public async Task Settings_OtherRevision_AbortedAndNothingChanged(long revision)
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        if (revision == 1)
        {
            await WriteAsync(planner.Teams, new TeamSettings());
            await WriteAsync(planner.Teams, new TeamSettings { CountryCode = "FR" });
        }

        TeamSettings before = await ReadAsync(planner.Teams);
        Refused refused = await Refused.ByAsync(planner.Teams.UpdateTeamSettingsAsync(new() { Settings = new() { CountryCode = "DE", Revision = revision } }, cancellationToken: Stop));
        Assert.Equal(StatusCode.Aborted, refused.Code);
        Assert.Equal("REVISION_CONFLICT", refused.Info.Reason);
        Assert.Equal($"{before.Revision}", refused.Info.Metadata["revision"]);
        Assert.Equal(before, await ReadAsync(planner.Teams));
    }

    [Fact]
    public async Task Settings_WrongFields_EachNamedAndNothingKept()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        foreach (string code in new[] { "G", "GBR", "G1", "Ünited", "G ", "ÄÖ" })
        {
            Refused refused = await Refused.ForFieldsAsync(planner.Teams.UpdateTeamSettingsAsync(
                new() { Settings = new() { Units = (UnitSystem)9, CountryCode = code, Revision = -1 } }, cancellationToken: Stop));
            refused.Names("settings.units");
            refused.Names("settings.country_code");
            refused.Names("settings.revision");
        }

        (await Refused.ForFieldsAsync(planner.Teams.UpdateTeamSettingsAsync(new(), cancellationToken: Stop))).Names("settings");
        Assert.Equal(0, (await ReadAsync(planner.Teams)).Revision);
    }

    [Fact]
    public async Task Settings_OverJson_SetAndRead()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        using var body = new StringContent("""{"units":"UNIT_SYSTEM_IMPERIAL","countryCode":"US"}""", Encoding.UTF8, "application/json");
        using HttpResponseMessage set = await planner.Http.PutAsync("/v1/teamSettings", body, Stop);
        Assert.Equal(HttpStatusCode.OK, set.StatusCode);
        string read = await planner.Http.GetStringAsync("/v1/teamSettings", Stop);
        Assert.Contains("UNIT_SYSTEM_IMPERIAL", read, StringComparison.Ordinal);
        Assert.Equal("US", (await ReadAsync(planner.Teams)).CountryCode);
    }

    [Fact]
    public async Task SettingsAndConversation_PlannerStartedAgain_StillThere()
    {
        using var folder = new TempFolder();
        var options = new PlannerHostOptions { DataFolder = folder.Path, Quiet = true };
        TeamSettings settings;
        Conversation conversation;
        await using (PlannerHost host = await PlannerHost.StartAsync(options, Stop))
        {
            using var channel = GrpcChannel.ForAddress(host.GrpcAddress);
            var teams = new TeamService.TeamServiceClient(channel);
            settings = await WriteAsync(teams, new TeamSettings { CountryCode = "SE" });
            conversation = (await teams.SaveConversationAsync(new() { ConversationId = "c:1", State = Google.Protobuf.ByteString.CopyFrom(0, 1, 255) }, cancellationToken: Stop)).Conversation;
        }

        await using PlannerHost again = await PlannerHost.StartAsync(options, Stop);
        using var second = GrpcChannel.ForAddress(again.GrpcAddress);
        var later = new TeamService.TeamServiceClient(second);
        Assert.Equal(settings, await ReadAsync(later));
        Assert.Equal(conversation, (await later.GetConversationAsync(new() { ConversationId = "c:1" }, cancellationToken: Stop)).Conversation);
    }

    private static async Task<TeamSettings> ReadAsync(TeamService.TeamServiceClient teams) =>
        (await teams.GetTeamSettingsAsync(new(), cancellationToken: Stop)).Settings;

    private static async Task<TeamSettings> WriteAsync(TeamService.TeamServiceClient teams, TeamSettings settings) =>
        (await teams.UpdateTeamSettingsAsync(new() { Settings = settings }, cancellationToken: Stop)).Settings;
}
