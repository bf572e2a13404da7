using System.Text.Json;

namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>The rules of embeds (Message resource, Embed Limits; API reference, Using Attachments within Embeds).</summary>
internal static class EmbedChecks
{
    private const int MostEmbeds = 10;
    private const int MostFields = 25;
    private const int MostInAll = 6000;
    private const string Attached = "attachment://";
    private static readonly string[] PictureEndings = [".png", ".jpg", ".jpeg", ".webp", ".gif"];

    /// <summary>Checks the field "embeds" of a message.</summary>
    public static void Check(JsonElement message, string path, IReadOnlyList<string> fileNames, FormErrors errors)
    {
        int total = 0;
        IReadOnlyList<JsonElement> embeds = errors.CheckList(message, "embeds", path, 0, MostEmbeds);
        for (int i = 0; i < embeds.Count; i++)
        {
            JsonElement embed = embeds[i];
            string at = $"{JsonFields.Join(path, "embeds")}.{i}";
            total += Size(errors.CheckText(embed, "title", at, 0, 256));
            total += Size(errors.CheckText(embed, "description", at, 0, 4096));
            total += embed.Field("footer") is { } footer ? Size(errors.CheckText(footer, "text", $"{at}.footer", 1, 2048, required: true)) : 0;
            total += embed.Field("author") is { } author ? Size(errors.CheckText(author, "name", $"{at}.author", 1, 256, required: true)) : 0;
            IReadOnlyList<JsonElement> fields = errors.CheckList(embed, "fields", at, 0, MostFields);
            for (int f = 0; f < fields.Count; f++)
            {
                total += Size(errors.CheckText(fields[f], "name", $"{at}.fields.{f}", 1, 256, required: true));
                total += Size(errors.CheckText(fields[f], "value", $"{at}.fields.{f}", 1, 1024, required: true));
            }

            errors.CheckWhole(embed, "color", at, 0, 0xFFFFFF);
            foreach (string place in (string[])["image", "thumbnail"])
            {
                CheckPicture(embed, place, at, fileNames, errors);
            }
        }

        if (total > MostInAll)
        {
            errors.Add(JsonFields.Join(path, "embeds"), "MAX_EMBED_SIZE_EXCEEDED", $"Embed size exceeds maximum size of {MostInAll}");
        }
    }

    private static void CheckPicture(JsonElement embed, string place, string at, IReadOnlyList<string> fileNames, FormErrors errors)
    {
        if (embed.Field(place) is not { } picture || errors.CheckText(picture, "url", $"{at}.{place}", 1, 2048, required: true) is not { } url)
        {
            return;
        }

        if (!url.StartsWith(Attached, StringComparison.Ordinal))
        {
            if (!url.StartsWith("https://", StringComparison.Ordinal) && !url.StartsWith("http://", StringComparison.Ordinal))
            {
                errors.Add($"{at}.{place}.url", "URL_TYPE_INVALID_SCHEME", "Scheme must be one of ('http', 'https', 'attachment').");
            }

            return;
        }

        string name = url[Attached.Length..];
        if (!fileNames.Contains(name))
        {
            errors.Add($"{at}.{place}.url", "EMBED_ATTACHMENT_NOT_FOUND", $"There is no file named {name} in this message.");
        }
        else if (!PictureEndings.Any(e => name.EndsWith(e, StringComparison.OrdinalIgnoreCase)))
        {
            errors.Add($"{at}.{place}.url", "EMBED_ATTACHMENT_TYPE", "Only png, jpg, webp and gif can be shown in an embed.");
        }
    }

    private static int Size(string? text) => text is null ? 0 : JsonFields.Length(text);
}
