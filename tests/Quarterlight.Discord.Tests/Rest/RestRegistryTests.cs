using System.Text.Json;
using System.Text.Json.Nodes;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>Commands are written when they differ and only then, whatever the platform adds to what it keeps (Application Command Structure).</summary>
public sealed class RestRegistryTests
{
    private static readonly CommandDefinition[] Wanted =
    [
        new("why", "Why a site", CommandKind.Slash,
        [
            new CommandOptionDefinition("site", "The site", CommandOptionKind.Text) { Required = true, Autocomplete = true, MostCharacters = 100 },
            new CommandOptionDefinition("speed", "Speed", CommandOptionKind.Number) { Least = 0, Most = 130.5 },
            new CommandOptionDefinition("count", "How many", CommandOptionKind.WholeNumber) { Choices = [new OutgoingChoice("Two", "2"), new OutgoingChoice("Four", "4")] },
        ]) { DefaultMemberPermissions = 32 },
        new("scene", "Scenes", CommandKind.Slash,
            [new CommandOptionDefinition("new", "A new one", CommandOptionKind.Subcommand) { Options = [new CommandOptionDefinition("file", "A file", CommandOptionKind.File)] }]),
        new("Judge this clip", "", CommandKind.Message, []),
    ];

    [Fact]
    public async Task Register_NothingThere_WritesAll()
    {
        using var rig = new RestRig((s, _) => ScriptedHandler.Json(200, "[]"));
        Assert.True(await rig.RunAsync(new RestRegistry(rig.Client, 10).RegisterAsync(Wanted, null, RestRig.Stop)));
        Assert.Equal(["GET", "PUT"], rig.Sent.Select(s => s.Method));
        Assert.All(rig.Sent, s => Assert.Equal("/api/v10/applications/10/commands", s.Path));
        JsonNode sent = JsonNode.Parse(rig.Sent[1].Text)!;
        Assert.Equal("[0]", sent[0]!["contexts"]!.ToJsonString());
        Assert.Equal("[0]", sent[0]!["integration_types"]!.ToJsonString());
        Assert.Equal("32", (string)sent[0]!["default_member_permissions"]!);
        Assert.Equal("""{"name":"Two","value":2}""", sent[0]!["options"]![2]!["choices"]![0]!.ToJsonString());
        Assert.Equal("""{"type":3,"name":"Judge this clip","contexts":[0],"integration_types":[0]}""", sent[2]!.ToJsonString());
    }

    [Fact]
    public async Task Register_SameThereWithEverythingThePlatformAdds_WritesNothing()
    {
        using var rig = new RestRig((s, _) => ScriptedHandler.Json(200, AsThePlatformKeepsThem(Wanted)));
        Assert.False(await rig.RunAsync(new RestRegistry(rig.Client, 10).RegisterAsync(Wanted, null, RestRig.Stop)));
        Assert.Equal("GET", Assert.Single(rig.Sent).Method);
    }

    [Theory]
    [InlineData("description")]
    [InlineData("option order")]
    [InlineData("required")]
    [InlineData("choice")]
    [InlineData("limit")]
    [InlineData("permissions")]
    [InlineData("contexts")]
    [InlineData("one more")]
    [InlineData("one less")]
    [InlineData("translation")]
    [InlineData("adult")]
    public async Task Register_OneThingDiffers_Writes(string what)
    {
        JsonArray there = JsonNode.Parse(AsThePlatformKeepsThem(Wanted))!.AsArray();
        JsonNode why = there.First(c => (string?)c!["name"] == "why")!;
        JsonArray options = why["options"]!.AsArray();
        switch (what)
        {
            case "description":
                options[0]!["description"] = "Another";
                break;
            case "option order":
                JsonNode last = options[2]!;
                options.RemoveAt(2);
                options.Insert(1, last);
                break;
            case "required":
                options[0]!["required"] = false;
                break;
            case "choice":
                options[2]!["choices"]![1]!["value"] = 5;
                break;
            case "limit":
                options[1]!["max_value"] = 130;
                break;
            case "permissions":
                why["default_member_permissions"] = null;
                break;
            case "contexts":
                why["contexts"] = new JsonArray(0, 1);
                break;
            case "one more":
                there.Add(JsonNode.Parse("""{"id":"9","type":1,"name":"old","description":"Old"}"""));
                break;
            case "one less":
                there.RemoveAt(0);
                break;
            case "translation":
                why["name_localizations"] = new JsonObject { ["de"] = "warum" };
                break;
            default:
                why["nsfw"] = true;
                break;
        }

        using var rig = new RestRig((s, _) => ScriptedHandler.Json(200, there.ToJsonString()));
        Assert.True(await rig.RunAsync(new RestRegistry(rig.Client, 10).RegisterAsync(Wanted, null, RestRig.Stop)));
    }

    [Fact]
    public async Task Register_OneServer_LeavesOutWhatOnlyHoldsForAll()
    {
        using var rig = new RestRig((s, _) => ScriptedHandler.Json(200, s.Path.EndsWith("/@me", StringComparison.Ordinal) ? """{"id":"10"}""" : "[]"));
        await rig.RunAsync(new RestRegistry(rig.Client).RegisterAsync(Wanted, 7, RestRig.Stop));
        Assert.Equal(["/api/v10/applications/@me", "/api/v10/applications/10/guilds/7/commands", "/api/v10/applications/10/guilds/7/commands"], rig.Sent.Select(s => s.Path));
        Assert.DoesNotContain("contexts", rig.Sent[2].Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<html>")]
    [InlineData("{}")]
    public async Task Gateway_UnreadableAnswer_IsUnavailable(string body)
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Json(200, body));
        Assert.Equal(DiscordFault.Unavailable, (await rig.FaultAsync(new GatewayInfoReader(rig.Client).ReadAsync(RestRig.Stop))).Fault);
    }

    [Fact]
    public async Task Gateway_Answer_IsRead()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Json(
            200, """{"url":"wss://gateway.example","shards":2,"session_start_limit":{"total":1000,"remaining":999,"reset_after":14400000,"max_concurrency":1}}"""));
        Assert.Equal(
            new GatewayInfo(new Uri("wss://gateway.example"), 2, 1000, 999, TimeSpan.FromHours(4), 1),
            await rig.RunAsync(new GatewayInfoReader(rig.Client).ReadAsync(RestRig.Stop)));
        Assert.Equal("/api/v10/gateway/bot", Assert.Single(rig.Sent).Path);
    }

    // Ids, versions, nulls for what is not set, defaults written out, another order of commands.
    private static string AsThePlatformKeepsThem(CommandDefinition[] commands)
    {
        JsonArray list = JsonNode.Parse(RestBody.OfJson(json => CommandJson.Write(json, commands, allServers: true)).Json.Span)!.AsArray();
        List<JsonNode> kept = [];
        foreach (JsonNode? command in list)
        {
            JsonObject copy = command!.DeepClone().AsObject();
            copy["id"] = "123";
            copy["application_id"] = "10";
            copy["version"] = "456";
            copy["nsfw"] = false;
            copy["dm_permission"] = false;
            copy["name_localizations"] = null;
            copy["description_localizations"] = null;
            copy["description"] ??= "";
            copy["default_member_permissions"] ??= null;
            foreach (JsonNode? option in copy["options"]?.AsArray() ?? [])
            {
                option!["required"] ??= false;
                option["autocomplete"] ??= false;
                option["name_localizations"] = null;
                if ((int)option["type"]! == 10)
                {
                    option["min_value"] = JsonNode.Parse("0.0");
                }
            }

            kept.Insert(0, copy);
        }

        return JsonSerializer.Serialize(kept);
    }
}
