using System.Text.Json;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>The registered commands, globally (no guild) and by guild. Used under the platform's lock.</summary>
internal sealed class CommandBook(Snowflakes ids, ulong applicationId)
{
    private static readonly string[] Defaults = ["required", "autocomplete"];
    private readonly Dictionary<ulong, List<JsonElement>> byGuild = [];

    /// <summary>Commands of a scope.</summary>
    public IReadOnlyList<JsonElement> Of(ulong? guildId) => byGuild.GetValueOrDefault(guildId ?? 0) ?? [];

    /// <summary>A command as a user in this guild finds it: the guild's own first.</summary>
    public JsonElement? Find(ulong? guildId, string name, int type)
    {
        IEnumerable<JsonElement> all = guildId is null ? Of(null) : Of(guildId).Concat(Of(null));
        JsonElement[] found = [.. all.Where(c => c.Text("name") == name && c.Whole("type") == type)];
        return found.Length == 0 ? null : found[0];
    }

    /// <summary>Puts a whole list in place.</summary>
    public IReadOnlyList<JsonElement> Replace(ulong? guildId, IReadOnlyList<JsonElement> commands)
    {
        List<JsonElement> made = [.. commands.Select(c => Make(guildId, c, Same(guildId, c)))];
        byGuild[guildId ?? 0] = made;
        return made;
    }

    /// <summary>Adds a command, or puts it in place of the one of its name and type.</summary>
    public (JsonElement Command, bool IsNew) Add(ulong? guildId, JsonElement command)
    {
        JsonElement? old = Same(guildId, command);
        JsonElement made = Make(guildId, command, old);
        List<JsonElement> list = byGuild.TryGetValue(guildId ?? 0, out List<JsonElement>? l) ? l : byGuild[guildId ?? 0] = [];
        list.RemoveAll(c => c.Text("id") == made.Text("id"));
        list.Add(made);
        return (made, old is null);
    }

    /// <summary>Takes a command away; false when it was not there.</summary>
    public bool Remove(ulong? guildId, string id) => byGuild.GetValueOrDefault(guildId ?? 0)?.RemoveAll(c => c.Text("id") == id) > 0;

    private JsonElement? Same(ulong? guildId, JsonElement command)
    {
        JsonElement[] same = [.. Of(guildId).Where(c => c.Text("name") == command.Text("name") && c.Whole("type") == (command.Whole("type") ?? 1))];
        return same.Length == 0 ? null : same[0];
    }

    private JsonElement Make(ulong? guildId, JsonElement command, JsonElement? old)
    {
        var json = new JsonObject
        {
            ["id"] = old?.Text("id") ?? WorldJson.Text(ids.Next()),
            ["application_id"] = WorldJson.Text(applicationId),
            ["version"] = WorldJson.Text(ids.Next()),
            ["type"] = command.Whole("type") ?? 1,
            ["name"] = command.Text("name"),
            ["name_localizations"] = Copy(command, "name_localizations"),
            ["description"] = command.Text("description") ?? "",
            ["description_localizations"] = Copy(command, "description_localizations"),
            ["default_member_permissions"] = command.Text("default_member_permissions"),
            ["nsfw"] = command.Flag("nsfw"),
        };
        if (guildId is { } guild)
        {
            json["guild_id"] = WorldJson.Text(guild);
        }
        else
        {
            json["contexts"] = Copy(command, "contexts");
            json["integration_types"] = Copy(command, "integration_types") ?? new JsonArray(0);
        }

        if (command.List("options") is { Count: > 0 } options)
        {
            json["options"] = new JsonArray([.. options.Select(o => (JsonNode)Tidy(o))]);
        }

        using JsonDocument document = JsonDocument.Parse(json.ToJsonString());
        return document.RootElement.Clone();
    }

    // What says nothing does not come back: false flags and empty lists (from memory).
    private static JsonObject Tidy(JsonElement option)
    {
        JsonObject json = JsonObject.Create(option.Clone())!;
        foreach (string name in Defaults.Where(n => !option.Flag(n)))
        {
            json.Remove(name);
        }

        foreach (string name in (string[])["choices", "options"])
        {
            json.Remove(name);
            if (option.List(name) is { Count: > 0 } list)
            {
                json[name] = new JsonArray([.. list.Select(e => name == "options" ? (JsonNode)Tidy(e) : JsonNode.Parse(e.GetRawText())!)]);
            }
        }

        return json;
    }

    private static JsonNode? Copy(JsonElement command, string name) => command.Field(name) is { } value ? JsonNode.Parse(value.GetRawText()) : null;
}
