using System.Text.Json;

namespace Quarterlight.Discord;

/// <summary>Reads a form as sent: fields in labels or in the older rows (Component Reference, Label, Text Input, File Upload).</summary>
internal static class FormDataReader
{
    private const int FileUpload = 19;

    /// <summary>Reads a form.</summary>
    /// <exception cref="FlawException">What an answer needs is missing.</exception>
    public static FormData Read(JsonElement data)
    {
        if (data.Text("custom_id") is not { } customId)
        {
            throw new FlawException(InteractionFlaw.BadForm);
        }

        IReadOnlyDictionary<ulong, DiscordAttachment> resolved = InteractionReader.ReadAttachments(data);
        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        var files = new Dictionary<string, IReadOnlyList<DiscordAttachment>>(StringComparer.Ordinal);
        foreach (JsonElement component in data.Objects("components").SelectMany(Fields))
        {
            string id = component.Text("custom_id") ?? throw new FlawException(InteractionFlaw.BadForm);
            if (component.Number("type") == FileUpload)
            {
                files.TryAdd(id, [.. component.Texts("values").Select(v => Find(v, resolved))]);
            }
            else
            {
                fields.TryAdd(id, Value(component));
            }
        }

        return new FormData(customId, fields, files);
    }

    // A label holds one field, a row holds several; words between fields hold none.
    private static IEnumerable<JsonElement> Fields(JsonElement part) => part.Object("component") is { } one ? [one] : part.Objects("components");

    private static string Value(JsonElement field) => field.TryGetProperty("value", out JsonElement value)
        ? InteractionReader.ValueText(value) ?? ""
        : field.Texts("values") is [string only] ? only : "";

    private static DiscordAttachment Find(string id, IReadOnlyDictionary<ulong, DiscordAttachment> files) =>
        ulong.TryParse(id, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out ulong number)
        && files.TryGetValue(number, out DiscordAttachment? file)
            ? file
            : throw new FlawException(InteractionFlaw.BadAttachment);
}
