using System.Globalization;
using System.Text.Json;

namespace Quarterlight.Discord.Rest;

/// <summary>Reads answers that went well.</summary>
internal static class RestJson
{
    /// <summary>The JSON of an answer.</summary>
    /// <exception cref="DiscordException"><see cref="DiscordFault.Unavailable"/>: it is none.</exception>
    public static JsonDocument Parse(RestAnswer answer, string what)
    {
        try
        {
            return JsonDocument.Parse(answer.Body);
        }
        catch (JsonException)
        {
            throw Unreadable(what);
        }
    }

    /// <summary>An id; ids travel as text.</summary>
    public static ulong? Id(JsonElement owner, string name) =>
        owner.ValueKind == JsonValueKind.Object && owner.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String
        && ulong.TryParse(value.GetString(), NumberStyles.None, CultureInfo.InvariantCulture, out ulong id) ? id : null;

    /// <summary>A whole number.</summary>
    public static long? Whole(JsonElement owner, string name) =>
        owner.ValueKind == JsonValueKind.Object && owner.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Number
        && value.TryGetInt64(out long number) ? number : null;

    /// <summary>What to throw when an answer cannot be read.</summary>
    public static DiscordException Unreadable(string what) => new(DiscordFault.Unavailable, $"The platform's answer about {what} could not be read");
}
