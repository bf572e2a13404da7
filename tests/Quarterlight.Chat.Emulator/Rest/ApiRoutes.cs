using System.Text.Json;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>What each route does.</summary>
internal sealed class ApiRoutes(EmulatedPlatform platform)
{
    /// <summary>All routes.</summary>
    public RouteTable Table() => new(
    [
        new("GET", "/gateway", false, null, _ => ApiAnswer.Ok(new JsonObject { ["url"] = platform.GatewayUrl })),
        new("GET", "/gateway/bot", true, null, _ => GatewayBot()),
        new("GET", "/users/@me", true, null, _ => ApiAnswer.Ok(platform.BotJson())),
        new("GET", "/applications/@me", true, null, _ => ApiAnswer.Ok(Application())),
        .. Commands("/applications/:app/commands"),
        .. Commands("/applications/:app/guilds/:guild/commands"),
        new("POST", "/interactions/:id/:token/callback", false, "callback", Callback),
        new("POST", "/webhooks/:app/:token", false, "followup", c => platform.Desk.FollowUp(c.Values["app"], c.Values["token"], c.Body)),
        new("GET", "/webhooks/:app/:token/messages/:message", false, null, c => platform.Desk.Read(c.Values["app"], c.Values["token"], c.Values["message"])),
        new("PATCH", "/webhooks/:app/:token/messages/:message", false, "edit", c => platform.Desk.Edit(c.Values["app"], c.Values["token"], c.Values["message"], c.Body)),
        new("DELETE", "/webhooks/:app/:token/messages/:message", false, null, c => platform.Desk.Delete(c.Values["app"], c.Values["token"], c.Values["message"])),
    ]);

    private IEnumerable<ApiRoute> Commands(string pattern) =>
    [
        new("GET", pattern, true, null, c => Scope(c) ?? ApiAnswer.Ok(new JsonArray([.. platform.Commands.Of(c.Guild).Select(Node)]))),
        new("PUT", pattern, true, "commands", c => Scope(c) ?? PutCommands(c)),
        new("POST", pattern, true, "command", c => Scope(c) ?? PostCommand(c)),
        new("GET", pattern + "/:command", true, null, c => Scope(c) ?? OneCommand(c)),
        new("DELETE", pattern + "/:command", true, null, c => Scope(c)
            ?? (platform.Commands.Remove(c.Guild, c.Values["command"]) ? ApiAnswer.NoContent : UnknownCommand())),
    ];

    private ApiAnswer GatewayBot()
    {
        JsonObject json = platform.Gateway.StartInfo();
        platform.Recording.Sent("in:gatewayBot", json);
        return ApiAnswer.Ok(json);
    }

    private JsonObject Application() => new()
    {
        ["id"] = WorldJson.Text(platform.ApplicationId),
        ["name"] = platform.Options.BotName,
        ["icon"] = null,
        ["description"] = "",
        ["bot_public"] = false,
        ["bot_require_code_grant"] = false,
        ["verify_key"] = platform.PublicKey,
        ["flags"] = 0,
        ["interactions_endpoint_url"] = platform.Endpoint.Url?.ToString(),
        ["bot"] = platform.BotJson(),
    };

    private ApiAnswer? Scope(ApiCall call)
    {
        if (call.Values["app"] != WorldJson.Text(platform.ApplicationId))
        {
            return ApiAnswer.Error(403, 20012, "You are not authorized to perform this action on this application");
        }

        return call.Values.ContainsKey("guild") && platform.Guilds.All(g => g.Id != call.Guild) ? ApiAnswer.Error(403, 50001, "Missing Access") : null;
    }

    private ApiAnswer PutCommands(ApiCall call)
    {
        if (call.Body.Json is not { ValueKind: JsonValueKind.Array } list)
        {
            return ApiAnswer.Form("_body", "LIST_TYPE_CONVERT", "Only iterables may be used in a list.");
        }

        JsonElement[] commands = [.. list.EnumerateArray()];
        var errors = new FormErrors();
        CommandChecks.CheckAll(commands, errors);
        if (errors.Any)
        {
            return ApiAnswer.Form(errors);
        }

        IReadOnlyList<JsonElement> made = platform.Commands.Replace(call.Guild, commands);
        foreach (JsonElement command in made)
        {
            platform.Recording.Sent("in:command", Node(command));
        }

        platform.Changes.Raise();
        return ApiAnswer.Ok(new JsonArray([.. made.Select(Node)]));
    }

    private ApiAnswer PostCommand(ApiCall call)
    {
        var errors = new FormErrors();
        CommandChecks.Check(call.Body.Json ?? default, "", errors);
        if (errors.Any)
        {
            return ApiAnswer.Form(errors);
        }

        (JsonElement command, bool isNew) = platform.Commands.Add(call.Guild, call.Body.Json!.Value);
        platform.Changes.Raise();
        return new ApiAnswer(isNew ? 201 : 200, Node(command));
    }

    private ApiAnswer OneCommand(ApiCall call)
    {
        JsonElement[] found = [.. platform.Commands.Of(call.Guild).Where(c => c.Text("id") == call.Values["command"])];
        return found.Length == 0 ? UnknownCommand() : ApiAnswer.Ok(Node(found[0]));
    }

    private ApiAnswer Callback(ApiCall call)
    {
        bool withResponse = call.Query("with_response") is "true" or "True" or "1";
        return platform.Desk.Callback(call.Values["id"], call.Values["token"], call.Body, withResponse);
    }

    private static ApiAnswer UnknownCommand() => ApiAnswer.Error(404, 10063, "Unknown application command");

    private static JsonNode Node(JsonElement element) => JsonNode.Parse(element.GetRawText())!;
}
