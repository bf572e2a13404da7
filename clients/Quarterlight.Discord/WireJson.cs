using System.Globalization;
using System.Text.Json;

namespace Quarterlight.Discord;

/// <summary>Reads fields of the platform's JSON; a field that is missing, null or of another type is not there.</summary>
internal static class WireJson
{
    /// <summary>A 64-bit number written as text, as ids and permission bits are.</summary>
    public static bool TryId(this JsonElement json, string name, out ulong id)
    {
        id = 0;
        return json.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String && TryId(value, out id);
    }

    /// <summary>The same of a value.</summary>
    public static bool TryId(JsonElement value, out ulong id) => ulong.TryParse(value.GetString(), NumberStyles.None, CultureInfo.InvariantCulture, out id);

    /// <summary>An object.</summary>
    public static JsonElement? Object(this JsonElement json, string name) =>
        json.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Object ? value : null;

    /// <summary>Text.</summary>
    public static string? Text(this JsonElement json, string name) =>
        json.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    /// <summary>A whole number.</summary>
    public static long? Number(this JsonElement json, string name) =>
        json.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out long number) ? number : null;

    /// <summary>Members of a list that are objects; none when there is no list.</summary>
    public static IEnumerable<JsonElement> Objects(this JsonElement json, string name) =>
        json.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().Where(v => v.ValueKind == JsonValueKind.Object) : [];

    /// <summary>Members of a list that are text; none when there is no list.</summary>
    public static IReadOnlyList<string> Texts(this JsonElement json, string name) =>
        json.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Array
            ? [.. value.EnumerateArray().Where(v => v.ValueKind == JsonValueKind.String).Select(v => v.GetString()!)]
            : [];
}
