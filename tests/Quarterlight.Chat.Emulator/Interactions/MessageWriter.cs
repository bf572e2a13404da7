using System.Text.Json;
using Quarterlight.Chat.Emulator.Cdn;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;

namespace Quarterlight.Chat.Emulator.Interactions;

/// <summary>Makes and changes messages of the bot out of checked bodies.</summary>
internal sealed class MessageWriter(EmulatedPlatform platform)
{
    /// <summary>The rules bodies are checked by.</summary>
    public MessageChecks Checks { get; } = new(platform.Options);

    /// <summary>A new message.</summary>
    public StoredMessage Write(SentInteraction asked, JsonElement body, IReadOnlyList<UploadedPart> files)
    {
        StoredMessage message = Blank(asked, (body.Whole("flags") ?? 0) & (MessageFlags.OfAnswer | MessageFlags.ComponentsV2));
        Fill(message, body, files, isNew: true);
        return message;
    }

    /// <summary>The message that says "thinking".</summary>
    public StoredMessage Wait(SentInteraction asked, long flags) => Blank(asked, flags | MessageFlags.Loading);

    /// <summary>Changes a message: fields that are not written stay as they are. A waiting one becomes readable.</summary>
    public void Change(StoredMessage message, JsonElement body, IReadOnlyList<UploadedPart> files)
    {
        bool wasLoading = message.Loading;
        message.Flags = (message.Flags & ~MessageFlags.Loading) | ((body.Whole("flags") ?? 0) & MessageFlags.ComponentsV2);
        Fill(message, body, files, isNew: false);
        message.Edited = platform.Clock.GetUtcNow();
        message.Edits += wasLoading ? 0 : 1;
    }

    /// <summary>True when the body holds nothing to show.</summary>
    public static bool IsEmpty(JsonElement body, IReadOnlyList<UploadedPart> files) =>
        body.Text("content") is not { Length: > 0 } && body.List("embeds").Count == 0 && body.List("components").Count == 0 && files.Count == 0;

    /// <summary>True when nothing to show would be left.</summary>
    public static bool WouldBeEmpty(StoredMessage message, JsonElement body, IReadOnlyList<UploadedPart> files)
    {
        string content = body.Has("content") ? body.Text("content") ?? "" : message.Content;
        int embeds = body.Has("embeds") ? body.List("embeds").Count : message.Embeds.Count;
        int components = body.Has("components") ? body.List("components").Count : message.Components.Count;
        return content.Length == 0 && embeds == 0 && components == 0 && Kept(message, body).Count == 0 && files.Count == 0;
    }

    private StoredMessage Blank(SentInteraction asked, long flags) => new()
    {
        Id = platform.Ids.Next(),
        Channel = asked.Channel,
        Answers = asked,
        Written = platform.Clock.GetUtcNow(),
        Flags = flags,
    };

    private void Fill(StoredMessage message, JsonElement body, IReadOnlyList<UploadedPart> files, bool isNew)
    {
        message.Content = body.Has("content") ? body.Text("content") ?? "" : message.Content;
        message.Embeds = body.Has("embeds") ? body.List("embeds") : message.Embeds;
        message.Components = body.Has("components") ? body.List("components") : message.Components;

        // Version 10: a list of attachments names everything that is to be there, old by id and new by number. No list keeps and adds.
        bool listed = body.Field("attachments") is not null && !isNew;
        IEnumerable<UploadedPart> taken = files.Where(f => !listed || body.List("attachments").Any(a => a.Id("id") == f.Index));
        message.Files = [.. Kept(message, body), .. taken.Select(f => Keep(message, body, f))];

        // Only a ping at the first writing makes a sound; a change is held to the same rule here, so that a forgotten field shows.
        message.Pings = [.. message.Pings.Union(Pings.Of(message.Content, body))];
    }

    private static IReadOnlyList<HostedFile> Kept(StoredMessage message, JsonElement body) =>
        body.Has("attachments") ? [.. message.Files.Where(f => body.List("attachments").Any(a => a.Id("id") == f.IdText))] : message.Files;

    private HostedFile Keep(StoredMessage message, JsonElement body, UploadedPart file)
    {
        JsonElement[] entry = [.. body.List("attachments").Where(a => a.Id("id") == file.Index)];
        string? text = entry.Length > 0 ? entry[0].Text("description") : null;
        string name = entry.Length > 0 ? entry[0].Text("filename") ?? file.FileName : file.FileName;
        return platform.Files.Keep(message.Channel.Id, name, file.ContentType ?? "application/octet-stream", file.Bytes, text);
    }
}
