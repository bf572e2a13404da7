using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Quarterlight.Discord.Rest;

/// <summary>
/// Tells whether two lists of commands mean the same, whatever the platform adds (ids, versions), leaves out (defaults), writes as null or orders
/// otherwise. The order of options and choices counts: users see it.
/// </summary>
internal static class CommandComparison
{
    private const int MostDepth = 4;

    /// <summary>True when both mean the same.</summary>
    /// <param name="one">A list of commands.</param>
    /// <param name="other">Another.</param>
    /// <param name="allServers">True to compare where commands may be used, too.</param>
    public static bool Same(JsonElement one, JsonElement other, bool allServers) =>
        one.ValueKind == JsonValueKind.Array && other.ValueKind == JsonValueKind.Array
        && Lines(one, allServers).SequenceEqual(Lines(other, allServers), StringComparer.Ordinal);

    private static IEnumerable<string> Lines(JsonElement list, bool allServers) =>
        list.EnumerateArray().Select(command => Line(command, allServers)).Order(StringComparer.Ordinal);

    private static string Line(JsonElement command, bool allServers)
    {
        var line = new StringBuilder();
        line.Append(Number(command, "type") ?? "1");
        Texts(line, command);
        Part(line, "permissions", Get(command, "default_member_permissions") is { ValueKind: JsonValueKind.String } bits ? bits.GetString() : null);
        Part(line, "adult", Flag(command, "nsfw"));
        if (allServers)
        {
            Part(line, "contexts", Set(command, "contexts"));
            Part(line, "installed", Set(command, "integration_types"));
        }

        Options(line, command, 0);
        return line.ToString();
    }

    private static void Options(StringBuilder line, JsonElement owner, int depth)
    {
        line.Append('[');
        if (Get(owner, "options") is { ValueKind: JsonValueKind.Array } options && depth < MostDepth)
        {
            foreach (JsonElement option in options.EnumerateArray())
            {
                line.Append('{').Append(Number(option, "type"));
                Texts(line, option);
                Part(line, "required", Flag(option, "required"));
                Part(line, "autocomplete", Flag(option, "autocomplete"));
                Part(line, "least", Number(option, "min_value"));
                Part(line, "most", Number(option, "max_value"));
                // The platform's own least length is 0: written or not, it is the same.
                Part(line, "shortest", Number(option, "min_length") is { } shortest and not "0" ? shortest : null);
                Part(line, "longest", Number(option, "max_length"));
                Part(line, "channels", Set(option, "channel_types"));
                Choices(line, option);
                Options(line, option, depth + 1);
                line.Append('}');
            }
        }

        line.Append(']');
    }

    private static void Choices(StringBuilder line, JsonElement option)
    {
        if (Get(option, "choices") is not { ValueKind: JsonValueKind.Array } choices)
        {
            return;
        }

        foreach (JsonElement choice in choices.EnumerateArray())
        {
            line.Append('(');
            Part(line, "name", Text(choice, "name"));
            Part(line, "text", Text(choice, "value"));
            Part(line, "number", Number(choice, "value"));
            Translations(line, choice, "name_localizations");
            line.Append(')');
        }
    }

    private static void Texts(StringBuilder line, JsonElement owner)
    {
        Part(line, "name", Text(owner, "name"));
        Part(line, "description", Text(owner, "description") is { Length: > 0 } text ? text : null);
        Translations(line, owner, "name_localizations");
        Translations(line, owner, "description_localizations");
    }

    // We register none: one that is there was put there by something else and is to go.
    private static void Translations(StringBuilder line, JsonElement owner, string name) =>
        Part(line, name, Get(owner, name) is { ValueKind: JsonValueKind.Object } words && words.EnumerateObject().Any() ? words.GetRawText() : null);

    // Lengths before texts keep a text from looking like another part.
    private static void Part(StringBuilder line, string name, string? text)
    {
        if (text is not null)
        {
            line.Append(CultureInfo.InvariantCulture, $"|{name}:{text.Length}:{text}");
        }
    }

    private static JsonElement? Get(JsonElement owner, string name) =>
        owner.ValueKind == JsonValueKind.Object && owner.TryGetProperty(name, out JsonElement value) && value.ValueKind != JsonValueKind.Null ? value : null;

    private static string? Text(JsonElement owner, string name) => Get(owner, name) is { ValueKind: JsonValueKind.String } text ? text.GetString() : null;

    private static string? Number(JsonElement owner, string name) =>
        Get(owner, name) is { ValueKind: JsonValueKind.Number } number ? number.GetDouble().ToString("R", CultureInfo.InvariantCulture) : null;

    private static string? Flag(JsonElement owner, string name) => Get(owner, name) is { ValueKind: JsonValueKind.True } ? "yes" : null;

    private static string? Set(JsonElement owner, string name) => Get(owner, name) is { ValueKind: JsonValueKind.Array } set
        ? string.Join(',', set.EnumerateArray().Select(e => e.GetRawText()).Distinct().Order(StringComparer.Ordinal))
        : null;
}
