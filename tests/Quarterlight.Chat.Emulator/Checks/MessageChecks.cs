using System.Text.Json;
using Quarterlight.Chat.Emulator.Cdn;
using Quarterlight.Chat.Emulator.Rest;

namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>The rules of messages (Message resource; API reference, Uploading Files).</summary>
/// <param name="options">Limits and switches.</param>
internal sealed class MessageChecks(PlatformOptions options)
{
    private const int MostContent = 2000;
    private const int MostFiles = 10;
    private const int MostAltText = 1024;
    private const int MostMentions = 100;
    private static readonly string[] MentionKinds = ["roles", "users", "everyone"];

    /// <summary>Checks a message to be made or changed.</summary>
    /// <param name="body">The message.</param>
    /// <param name="path">Path of it in the request: data in a callback, else empty.</param>
    /// <param name="files">Files uploaded with it.</param>
    /// <param name="kept">Files the message has already; null when it is new.</param>
    /// <param name="allowedFlags">Flags it may carry.</param>
    /// <param name="errors">Takes the faults.</param>
    public void Check(JsonElement body, string path, IReadOnlyList<UploadedPart> files, IReadOnlyList<HostedFile>? kept, long allowedFlags, FormErrors errors)
    {
        if (body.ValueKind != JsonValueKind.Object)
        {
            errors.Add(path, "DICT_TYPE_CONVERT", "Only dictionaries may be used in a DictType");
            return;
        }

        errors.CheckText(body, "content", path, 0, MostContent);
        bool v2 = CheckFlags(body, path, allowedFlags, errors);
        string[] names = [.. files.Select(f => f.FileName), .. (kept ?? []).Select(f => f.Name)];
        EmbedChecks.Check(body, path, names, errors);
        CheckMentions(body, path, errors);
        CheckAttachments(body, path, files, kept, errors);
        new ComponentChecks(errors, options.AllowComponentsV2).Check(body, path, v2);
        if (v2 && (body.Text("content") is { Length: > 0 } || body.List("embeds").Count > 0))
        {
            errors.Add(JsonFields.Join(path, "content"), "MESSAGE_CANNOT_USE_LEGACY_FIELDS_WITH_COMPONENTS_V2", "The 'content' and 'embeds' fields cannot be used with IS_COMPONENTS_V2");
        }
    }

    private bool CheckFlags(JsonElement body, string path, long allowed, FormErrors errors)
    {
        long flags = errors.CheckWhole(body, "flags", path, 0, long.MaxValue) ?? 0;
        bool v2 = (flags & MessageFlags.ComponentsV2) != 0;
        long legal = allowed | (options.AllowComponentsV2 ? MessageFlags.ComponentsV2 : 0);
        if ((flags & ~legal) != 0)
        {
            errors.Add(JsonFields.Join(path, "flags"), "BASE_TYPE_CHOICES", $"Only the flags {legal} may be set here; got {flags}");
        }

        return v2;
    }

    private static void CheckMentions(JsonElement body, string path, FormErrors errors)
    {
        if (body.Field("allowed_mentions") is not { } mentions)
        {
            return;
        }

        string at = JsonFields.Join(path, "allowed_mentions");
        if (mentions.ValueKind != JsonValueKind.Object)
        {
            errors.Add(at, "DICT_TYPE_CONVERT", "Only dictionaries may be used in a DictType");
            return;
        }

        string[] parse = [.. errors.CheckList(mentions, "parse", at, 0, 3).Select(p => p.ToString())];
        for (int i = 0; i < parse.Length; i++)
        {
            if (!MentionKinds.Contains(parse[i]))
            {
                errors.Add($"{at}.parse.{i}", "BASE_TYPE_CHOICES", "Value must be one of ('roles', 'users', 'everyone').");
            }
        }

        foreach (string kind in (string[])["roles", "users"])
        {
            if (errors.CheckList(mentions, kind, at, 0, MostMentions).Count > 0 && parse.Contains(kind))
            {
                errors.Add(at, "MESSAGE_ALLOWED_MENTIONS_PARSE_EXCLUSIVE", $"parse:[\"{kind}\"] and {kind}: [ids...] are mutually exclusive.");
            }
        }
    }

    private static void CheckAttachments(JsonElement body, string path, IReadOnlyList<UploadedPart> files, IReadOnlyList<HostedFile>? kept, FormErrors errors)
    {
        string at = JsonFields.Join(path, "attachments");
        if (files.Count > MostFiles)
        {
            errors.Add(JsonFields.Join(path, "files"), "BASE_TYPE_MAX_LENGTH", $"Must be {MostFiles} or fewer in length.");
        }

        string[] indexes = [.. files.Select(f => f.Index)];
        if (indexes.Distinct().Count() != indexes.Length)
        {
            errors.Add(JsonFields.Join(path, "files"), "FILES_DUPLICATE_INDEX", "Each file has a number of its own in files[n].");
        }

        var named = new HashSet<string>();
        IReadOnlyList<JsonElement> list = errors.CheckList(body, "attachments", path, 0, MostFiles);
        for (int i = 0; i < list.Count; i++)
        {
            errors.CheckText(list[i], "description", $"{at}.{i}", 0, MostAltText);
            if (list[i].Id("id") is not { } id)
            {
                errors.Add($"{at}.{i}.id", "BASE_TYPE_REQUIRED", "This field is required");
            }
            else if (!named.Add(id))
            {
                errors.Add($"{at}.{i}.id", "ATTACHMENTS_DUPLICATE_ID", "The same id stands here twice.");
            }
            else if (!indexes.Contains(id) && kept?.Any(k => k.IdText == id) != true)
            {
                errors.Add($"{at}.{i}.id", "ATTACHMENT_NOT_FOUND", $"There is neither a files[{id}] nor a file of the message with this id.");
            }
        }
    }
}
