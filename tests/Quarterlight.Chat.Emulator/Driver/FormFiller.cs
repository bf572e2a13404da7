using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Cdn;

namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>Fills a form in, as an app does.</summary>
internal static class FormFiller
{
    private const int TextInput = 4;
    private const int FileUpload = 19;

    /// <summary>Data of a form sent in.</summary>
    public static JsonObject Fill(EmulatedPlatform platform, UserInChannel by, OpenedForm form, IReadOnlyDictionary<string, object> values, bool mustFit)
    {
        if (values.Keys.FirstOrDefault(k => form.Fields.All(f => f.CustomId != k)) is { } unknown)
        {
            throw new ArgumentException($"The form has no field {unknown}; it has: {string.Join(", ", form.Fields.Select(f => f.CustomId))}", nameof(values));
        }

        var attachments = new JsonObject();
        int number = 0;
        var rows = new JsonArray();
        foreach (OpenedField field in form.Fields)
        {
            var filled = new JsonObject { ["type"] = field.Type, ["id"] = ++number + 1, ["custom_id"] = field.CustomId };
            if (field.Type == FileUpload)
            {
                filled["values"] = new JsonArray([.. Files(values.GetValueOrDefault(field.CustomId)).Select(f => (JsonNode)Attach(f))]);
            }
            else
            {
                filled["value"] = Text(field, values, mustFit);
            }

            rows.Add(field.InLabel
                ? new JsonObject { ["type"] = 18, ["id"] = number++, ["component"] = filled }
                : new JsonObject { ["type"] = 1, ["id"] = number++, ["components"] = new JsonArray(filled) });
        }

        var data = new JsonObject { ["custom_id"] = form.CustomId, ["components"] = rows };
        if (attachments.Count > 0)
        {
            data["resolved"] = new JsonObject { ["attachments"] = attachments };
        }

        return data;

        string Attach(EmulatedFile file)
        {
            HostedFile kept = by.Upload(file);
            attachments[kept.IdText] = platform.Files.ToJson(kept, file.ClaimedSize, file.OtherUrl);
            return kept.IdText;
        }
    }

    private static string Text(OpenedField field, IReadOnlyDictionary<string, object> values, bool mustFit)
    {
        string text = values.GetValueOrDefault(field.CustomId) as string ?? field.Value;
        bool fits = text.Length == 0 ? !field.Required : text.Length >= field.MinLength && text.Length <= field.MaxLength;
        return field.Type != TextInput || fits || !mustFit
            ? text
            : throw new ArgumentException($"The field {field.CustomId} ({field.MinLength} to {field.MaxLength} characters, required: {field.Required}) does not take this text.", nameof(values));
    }

    private static IEnumerable<EmulatedFile> Files(object? value) => value switch
    {
        null => [],
        EmulatedFile file => [file],
        IEnumerable<EmulatedFile> files => files,
        _ => throw new ArgumentException("A field for files takes files.", nameof(value)),
    };
}
