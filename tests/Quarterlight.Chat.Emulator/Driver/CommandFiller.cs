using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Cdn;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>Fills a registered command in, as an app does, and refuses what an app would not send.</summary>
internal sealed class CommandFiller(EmulatedPlatform platform, UserInChannel by)
{
    private const int Chat = 1;
    private const int MessageMenu = 3;
    private const int Attachment = 11;
    private readonly JsonObject attachments = [];
    private long focusedType = 3;

    /// <summary>Data of a command or of an autocomplete.</summary>
    public (JsonObject Json, long FocusedType) Fill(string path, IReadOnlyList<(string Name, object Value)> options, string? focused)
    {
        string[] names = path.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        JsonElement command = Find(names[0], Chat);
        JsonElement owner = command;
        var groups = new List<JsonElement>();
        foreach (string name in names.Skip(1))
        {
            JsonElement[] found = [.. owner.List("options").Where(o => o.Whole("type") is 1 or 2 && o.Text("name") == name)];
            owner = found.Length == 1 ? found[0] : throw new ArgumentException($"/{path} has no {name}.", nameof(path));
            groups.Add(owner);
        }

        if (owner.List("options").Any(o => o.Whole("type") is 1 or 2))
        {
            throw new ArgumentException($"/{path} needs a subcommand.", nameof(path));
        }

        JsonArray filled = FillOptions(path, owner, options, focused);
        foreach (JsonElement group in Enumerable.Reverse(groups))
        {
            filled = new JsonArray(new JsonObject { ["name"] = group.Text("name"), ["type"] = group.Whole("type"), ["options"] = filled });
        }

        JsonObject data = Head(command, Chat);
        if (filled.Count > 0)
        {
            data["options"] = filled;
        }

        if (attachments.Count > 0)
        {
            data["resolved"] = new JsonObject { ["attachments"] = attachments };
        }

        return (data, focusedType);
    }

    /// <summary>Data of a command from a message's menu.</summary>
    public JsonObject FillMenu(string name, VisibleMessage target)
    {
        JsonObject data = Head(Find(name, MessageMenu), MessageMenu);
        string id = WorldJson.Text(target.Id);
        data["target_id"] = id;
        data["resolved"] = new JsonObject { ["messages"] = new JsonObject { [id] = JsonNode.Parse(target.Json) } };
        return data;
    }

    private JsonElement Find(string name, int type) =>
        platform.Locked(() => platform.Commands.Find(by.Channel.Guild?.Id, name, type))
        ?? throw new ArgumentException($"The command {name} (type {type}) is not registered here.", nameof(name));

    private static JsonObject Head(JsonElement command, int type)
    {
        var data = new JsonObject { ["id"] = command.Text("id"), ["name"] = command.Text("name"), ["type"] = type };
        if (command.Text("guild_id") is { } guild)
        {
            data["guild_id"] = guild;
        }

        return data;
    }

    private JsonArray FillOptions(string path, JsonElement owner, IReadOnlyList<(string Name, object Value)> given, string? focused)
    {
        IReadOnlyList<JsonElement> known = owner.List("options");
        if (focused is null && known.FirstOrDefault(k => k.Flag("required") && given.All(g => g.Name != k.Text("name"))) is { ValueKind: JsonValueKind.Object } missing)
        {
            throw new ArgumentException($"/{path} needs {missing.Text("name")}.", nameof(given));
        }

        var filled = new JsonArray();
        foreach ((string name, object value) in given)
        {
            JsonElement[] option = [.. known.Where(k => k.Text("name") == name)];
            if (option.Length == 0)
            {
                throw new ArgumentException($"/{path} has no option {name}; it has: {string.Join(", ", known.Select(k => k.Text("name")))}", nameof(given));
            }

            filled.Add(FillOption(option[0], value, name == focused));
        }

        return filled;
    }

    private JsonObject FillOption(JsonElement option, object value, bool focused)
    {
        long type = option.Whole("type")!.Value;
        var filled = new JsonObject { ["name"] = option.Text("name"), ["type"] = type };
        if (focused)
        {
            if (!option.Flag("autocomplete"))
            {
                throw new ArgumentException($"The option {option.Text("name")} has no autocomplete.", nameof(option));
            }

            focusedType = type;
            filled["value"] = Convert.ToString(value, CultureInfo.InvariantCulture);
            filled["focused"] = true;
            return filled;
        }

        filled["value"] = ValueOf(option, type, value);
        return filled;
    }

    private JsonNode ValueOf(JsonElement option, long type, object value)
    {
        string name = option.Text("name")!;
        if (option.List("choices") is { Count: > 0 } choices
            && choices.All(c => c.Field("value")!.Value.ToString() != Convert.ToString(value, CultureInfo.InvariantCulture)))
        {
            throw new ArgumentException($"{value} is no choice of {name}.", nameof(value));
        }

        return (type, value) switch
        {
            (3, string text) => Fits(option, "min_length", "max_length", text.Length) ? text : throw Unfit(),
            (4, int or long) => Fits(option, "min_value", "max_value", Convert.ToDouble(value, CultureInfo.InvariantCulture)) ? Convert.ToInt64(value, CultureInfo.InvariantCulture) : throw Unfit(),
            (5, bool flag) => flag,
            (10, int or long or double) => Fits(option, "min_value", "max_value", Convert.ToDouble(value, CultureInfo.InvariantCulture)) ? Convert.ToDouble(value, CultureInfo.InvariantCulture) : throw Unfit(),
            (Attachment, EmulatedFile file) => Attach(file),
            _ => throw Unfit(),
        };

        ArgumentException Unfit() => new($"{value} does not fit the option {name} of type {type}.", nameof(value));
    }

    private static bool Fits(JsonElement option, string least, string most, double value) =>
        (option.Field(least) is not { } l || value >= l.GetDouble()) && (option.Field(most) is not { } m || value <= m.GetDouble());

    private string Attach(EmulatedFile file)
    {
        HostedFile kept = by.Upload(file);
        attachments[kept.IdText] = platform.Files.ToJson(kept, file.ClaimedSize, file.OtherUrl);
        return kept.IdText;
    }
}
