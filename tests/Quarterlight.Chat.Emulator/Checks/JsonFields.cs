using System.Text.Json;

namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>Reads fields of a body, and adds a fault where one has the wrong type or length.</summary>
internal static class JsonFields
{
    /// <summary>The field, unless it is missing or null.</summary>
    public static JsonElement? Field(this JsonElement owner, string name) =>
        owner.ValueKind == JsonValueKind.Object && owner.TryGetProperty(name, out JsonElement value) && value.ValueKind != JsonValueKind.Null ? value : null;

    /// <summary>True when the field is written, be it null.</summary>
    public static bool Has(this JsonElement owner, string name) => owner.ValueKind == JsonValueKind.Object && owner.TryGetProperty(name, out _);

    /// <summary>The field as text; null when it is none.</summary>
    public static string? Text(this JsonElement owner, string name) => owner.Field(name) is { ValueKind: JsonValueKind.String } v ? v.GetString() : null;

    /// <summary>The field as a whole number; null when it is none.</summary>
    public static long? Whole(this JsonElement owner, string name) =>
        owner.Field(name) is { ValueKind: JsonValueKind.Number } v && v.TryGetInt64(out long n) ? n : null;

    /// <summary>True when the field is true.</summary>
    public static bool Flag(this JsonElement owner, string name) => owner.Field(name) is { ValueKind: JsonValueKind.True };

    /// <summary>The entries of a list; none when it is missing.</summary>
    public static IReadOnlyList<JsonElement> List(this JsonElement owner, string name) =>
        owner.Field(name) is { ValueKind: JsonValueKind.Array } v ? [.. v.EnumerateArray()] : [];

    /// <summary>An id, written as text or as a number; null when it is none.</summary>
    public static string? Id(this JsonElement owner, string name) => owner.Field(name) switch
    {
        { ValueKind: JsonValueKind.String } v => v.GetString(),
        { ValueKind: JsonValueKind.Number } v => v.GetRawText(),
        _ => null,
    };

    /// <summary>Length as the platform counts it: Unicode characters.</summary>
    public static int Length(string text) => text.EnumerateRunes().Count();

    /// <summary>Checks a text and its length.</summary>
    public static string? CheckText(this FormErrors errors, JsonElement owner, string name, string path, int least, int most, bool required = false)
    {
        string at = Join(path, name);
        if (owner.Field(name) is not { } value)
        {
            if (required)
            {
                errors.Add(at, "BASE_TYPE_REQUIRED", "This field is required");
            }

            return null;
        }

        if (value.ValueKind != JsonValueKind.String)
        {
            errors.Add(at, "STRING_TYPE_CONVERT", "Could not interpret the value as string.");
            return null;
        }

        string text = value.GetString()!;
        int length = Length(text);
        if (length < least || length > most)
        {
            errors.Add(at, "BASE_TYPE_BAD_LENGTH", least == 0 ? $"Must be {most} or fewer in length." : $"Must be between {least} and {most} in length.");
        }

        return text;
    }

    /// <summary>Checks a whole number and its range.</summary>
    public static long? CheckWhole(this FormErrors errors, JsonElement owner, string name, string path, long least, long most, bool required = false)
    {
        string at = Join(path, name);
        if (owner.Field(name) is not { } value)
        {
            if (required)
            {
                errors.Add(at, "BASE_TYPE_REQUIRED", "This field is required");
            }

            return null;
        }

        if (value.ValueKind != JsonValueKind.Number || !value.TryGetInt64(out long number))
        {
            errors.Add(at, "NUMBER_TYPE_COERCE", "Could not interpret the value as a whole number.");
            return null;
        }

        if (number < least || number > most)
        {
            errors.Add(at, "NUMBER_TYPE_RANGE", $"Must be between {least} and {most}.");
        }

        return number;
    }

    /// <summary>Checks that a list is a list, and how long it is.</summary>
    public static IReadOnlyList<JsonElement> CheckList(this FormErrors errors, JsonElement owner, string name, string path, int least, int most)
    {
        if (owner.Field(name) is not { } value)
        {
            if (least > 0)
            {
                errors.Add(Join(path, name), "BASE_TYPE_REQUIRED", "This field is required");
            }

            return [];
        }

        if (value.ValueKind != JsonValueKind.Array)
        {
            errors.Add(Join(path, name), "LIST_TYPE_CONVERT", "Only iterables may be used in a list.");
            return [];
        }

        JsonElement[] entries = [.. value.EnumerateArray()];
        if (entries.Length < least || entries.Length > most)
        {
            errors.Add(Join(path, name), "BASE_TYPE_BAD_LENGTH", $"Must be between {least} and {most} in length.");
        }

        return entries;
    }

    /// <summary>A path and one step more.</summary>
    public static string Join(string path, string step) => path.Length == 0 ? step : $"{path}.{step}";
}
