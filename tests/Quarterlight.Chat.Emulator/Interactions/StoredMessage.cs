using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Cdn;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Interactions;

/// <summary>A message as the platform keeps it. Changed under the platform's lock only.</summary>
internal sealed class StoredMessage
{
    private const int Plain = 0;
    private const int ChatCommandAnswer = 20;
    private const int MenuCommandAnswer = 23;

    /// <summary>Its id.</summary>
    public required ulong Id { get; init; }

    /// <summary>Where it stands.</summary>
    public required EmulatedChannel Channel { get; init; }

    /// <summary>The person who wrote it; null for the bot.</summary>
    public EmulatedUser? Author { get; init; }

    /// <summary>What it answers; null when it answers nothing.</summary>
    public SentInteraction? Answers { get; init; }

    /// <summary>When it was written.</summary>
    public required DateTimeOffset Written { get; init; }

    /// <summary>When it was changed; null for never.</summary>
    public DateTimeOffset? Edited { get; set; }

    /// <summary>Times it was changed after it was first readable.</summary>
    public int Edits { get; set; }

    /// <summary>Its text.</summary>
    public string Content { get; set; } = "";

    /// <summary>Its embeds.</summary>
    public IReadOnlyList<JsonElement> Embeds { get; set; } = [];

    /// <summary>Its rows.</summary>
    public IReadOnlyList<JsonElement> Components { get; set; } = [];

    /// <summary>Its files.</summary>
    public IReadOnlyList<HostedFile> Files { get; set; } = [];

    /// <summary>Its flags.</summary>
    public long Flags { get; set; }

    /// <summary>Whom it pinged so far.</summary>
    public IReadOnlyList<string> Pings { get; set; } = [];

    /// <summary>True once it was taken away.</summary>
    public bool Deleted { get; set; }

    /// <summary>True while it shows nothing but "thinking".</summary>
    public bool Loading => (Flags & MessageFlags.Loading) != 0;

    /// <summary>True when only the asker sees it.</summary>
    public bool Ephemeral => (Flags & MessageFlags.Ephemeral) != 0;

    /// <summary>The message on the wire.</summary>
    public JsonObject ToJson(EmulatedPlatform platform)
    {
        var json = new JsonObject
        {
            ["id"] = WorldJson.Text(Id),
            ["type"] = Answers?.Kind switch { null => Plain, SentKind.Command when Answers.IsMenu => MenuCommandAnswer, SentKind.Command => ChatCommandAnswer, _ => Plain },
            ["channel_id"] = WorldJson.Text(Channel.Id),
            ["content"] = Content,
            ["author"] = Author is null ? platform.BotJson() : WorldJson.User(Author),
            ["attachments"] = new JsonArray([.. Files.Select(f => platform.Files.ToJson(f))]),
            ["embeds"] = Embeds.Count == 0 ? new JsonArray() : new JsonArray([.. Embeds.Select(e => (JsonNode)EmbedJson(e, platform))]),
            ["components"] = new JsonArray([.. Components.Select(c => (JsonNode)Numbered(c))]),
            ["mentions"] = new JsonArray(),
            ["mention_roles"] = new JsonArray(),
            ["mention_everyone"] = Pings.Contains("@everyone") || Pings.Contains("@here"),
            ["pinned"] = false,
            ["tts"] = false,
            ["timestamp"] = Iso(Written),
            ["edited_timestamp"] = Edited is { } edited ? Iso(edited) : null,
            ["flags"] = Flags,
        };
        if (Author is null)
        {
            json["application_id"] = WorldJson.Text(platform.ApplicationId);
            json["webhook_id"] = WorldJson.Text(platform.ApplicationId);
        }

        if (Answers is { } asked)
        {
            json["interaction_metadata"] = new JsonObject
            {
                ["id"] = WorldJson.Text(asked.Id),
                ["type"] = (int)asked.Kind,
                ["user"] = WorldJson.User(asked.User),
                ["authorizing_integration_owners"] = new JsonObject { ["0"] = Channel.Guild is { } guild ? WorldJson.Text(guild.Id) : "0" },
            };
        }

        return json;
    }

    /// <summary>The message as people see it now.</summary>
    public VisibleMessage Look(EmulatedPlatform platform) => new()
    {
        Id = Id,
        ByBot = Author is null,
        Content = Content,
        IsPrivate = Ephemeral,
        IsLoading = Loading,
        IsDeleted = Deleted,
        Edits = Edits,
        Embeds = Embeds,
        Components = Components,
        Buttons = [.. Components.SelectMany(r => r.List("components")).Where(c => c.Whole("type") == 2).Select(VisibleButton.Of)],
        Files = [.. Files.Select(f => new VisibleFile(f.Name, f.ContentType, f.Bytes, f.AltText, platform.Files.Link(f)))],
        Pings = Pings,
        Json = ToJson(platform).ToJsonString(),
    };

    // A picture that came along is shown by its link, as the platform does.
    private JsonObject EmbedJson(JsonElement embed, EmulatedPlatform platform)
    {
        JsonObject json = JsonObject.Create(embed.Clone())!;
        json["type"] = "rich";
        foreach (string place in (string[])["image", "thumbnail"])
        {
            if (embed.Field(place)?.Text("url") is { } url && Files.FirstOrDefault(f => url == "attachment://" + f.Name) is { } file)
            {
                json[place] = new JsonObject { ["url"] = platform.Files.Link(file) };
            }
        }

        return json;
    }

    // Every component comes back with a number (Components reference, Anatomy of a Component).
    private static JsonObject Numbered(JsonElement row)
    {
        JsonObject json = JsonObject.Create(row.Clone())!;
        int next = 0;
        Number(json);
        return json;

        void Number(JsonObject component)
        {
            component["id"] ??= ++next;
            foreach (JsonObject child in (component["components"] as JsonArray ?? []).OfType<JsonObject>())
            {
                Number(child);
            }
        }
    }

    private static string Iso(DateTimeOffset moment) => moment.ToUniversalTime().ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'+00:00'", CultureInfo.InvariantCulture);
}
