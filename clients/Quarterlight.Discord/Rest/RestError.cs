using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Quarterlight.Discord.Rest;

/// <summary>What the body of a refusal says (API Reference, Error Messages; Rate Limits). The platform's sentences are left out: they may repeat what users wrote.</summary>
/// <param name="Code">The platform's code; null when not told.</param>
/// <param name="Fields">Paths of the fields it does not like, each with the code of the reason.</param>
/// <param name="RetryAfter">On 429: time to wait.</param>
/// <param name="IsGlobal">On 429: it holds for all requests of the bot.</param>
/// <param name="IsJson">False when something before the platform answered, with a page of HTML.</param>
internal sealed record RestError(int? Code, IReadOnlyList<string> Fields, TimeSpan? RetryAfter, bool IsGlobal, bool IsJson)
{
    private const int MostFields = 8;
    private const int MostDepth = 12;

    /// <summary>Reads a body of any kind.</summary>
    public static RestError Read(ReadOnlyMemory<byte> body)
    {
        try
        {
            using var document = JsonDocument.Parse(body);
            JsonElement root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object)
            {
                return new RestError(null, [], null, false, true);
            }

            List<string> fields = [];
            if (root.TryGetProperty("errors", out JsonElement errors))
            {
                Collect(errors, "", fields, 0);
            }

            return new RestError(
                root.TryGetProperty("code", out JsonElement code) && code.ValueKind == JsonValueKind.Number && code.TryGetInt32(out int number) && number != 0 ? number : null,
                fields,
                root.TryGetProperty("retry_after", out JsonElement retry) && retry.ValueKind == JsonValueKind.Number ? LimitHeaders.Seconds(retry.GetDouble()) : null,
                root.TryGetProperty("global", out JsonElement global) && global.ValueKind == JsonValueKind.True,
                true);
        }
        catch (JsonException)
        {
            return new RestError(null, [], null, false, false);
        }
    }

    private static void Collect(JsonElement at, string path, List<string> fields, int depth)
    {
        if (at.ValueKind != JsonValueKind.Object || depth > MostDepth)
        {
            return;
        }

        foreach (JsonProperty property in at.EnumerateObject())
        {
            if (fields.Count >= MostFields)
            {
                return;
            }

            if (property.NameEquals("_errors"u8) && property.Value.ValueKind == JsonValueKind.Array)
            {
                fields.AddRange(property.Value.EnumerateArray()
                    .Select(e => e.ValueKind == JsonValueKind.Object && e.TryGetProperty("code", out JsonElement code) && code.ValueKind == JsonValueKind.String ? code.GetString()! : "?")
                    .Take(MostFields - fields.Count)
                    .Select(reason => $"{(path.Length > 0 ? path : "body")} {Plain(reason)}"));
            }
            else
            {
                string name = Plain(property.Name);
                bool index = int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out _);
                Collect(property.Value, index ? $"{path}[{name}]" : path.Length > 0 ? $"{path}.{name}" : name, fields, depth + 1);
            }
        }
    }

    // Names of fields and reasons are words of the platform; whatever else comes there is not repeated.
    private static string Plain(string text)
    {
        var plain = new StringBuilder();
        foreach (char c in text.Take(48))
        {
            plain.Append(char.IsAsciiLetterOrDigit(c) || c == '_' ? c : '?');
        }

        return plain.ToString();
    }
}
