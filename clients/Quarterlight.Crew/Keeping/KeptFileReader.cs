using System.Text;
using System.Text.Json;
using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>What a file came to: its contents, or sentences that say what is wrong with it.</summary>
internal sealed record FileRead(KeptFile? File, IReadOnlyList<string> Problems)
{
    public static FileRead Wrong(params string[] problems) => new(null, problems);
}

/// <summary>Reads an exported file strictly. Whatever the bytes are, it ends in contents or in clear sentences.</summary>
internal static class KeptFileReader
{
    /// <summary>Deepest nesting that is read; our own files need 8.</summary>
    public const int MostDepth = 24;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads the bytes of a file of this kind.</summary>
    public static FileRead Read(ReadOnlySpan<byte> bytes, string kind)
    {
        if (bytes.Length == 0)
        {
            return FileRead.Wrong("The file is empty.");
        }

        if (bytes.Length > KeptFile.LargestBytes)
        {
            return FileRead.Wrong($"The file is larger than {KeptFile.LargestBytes / 1024} KiB, so it is no {kind} of ours.");
        }

        bytes = bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        if (NotText(bytes) is { } what)
        {
            return FileRead.Wrong(what);
        }

        string text;
        try
        {
            text = Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return FileRead.Wrong("The file is not text in UTF-8. Save it again as UTF-8.");
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = MostDepth });
            return Read(document.RootElement, kind);
        }
        catch (InvalidOperationException)
        {
            // An escape for half of a character pair is JSON, but no text.
            return FileRead.Wrong("The file has half a character in it, so it cannot be read as text. Export it again.");
        }
        catch (JsonException e)
        {
            return FileRead.Wrong(TooDeep(text) ? $"The file nests deeper than {MostDepth} levels, so it is no {kind} of ours."
                : e.LineNumber is { } line ? Wording.Wordings.Say($"The file is not JSON: something is wrong at line {line + 1}. Export it again, or mend that line.") : "The file is not JSON.");
        }
    }

    private static FileRead Read(JsonElement root, string kind)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty(KeptFile.Header, out JsonElement header) || header.ValueKind != JsonValueKind.Object)
        {
            return FileRead.Wrong($"The file does not come from \"{kind} export\": its header \"{KeptFile.Header}\" is missing.");
        }

        if (!header.TryGetProperty("format", out JsonElement format) || format.ValueKind != JsonValueKind.Number || !format.TryGetInt32(out int version) || version < 1)
        {
            return FileRead.Wrong("The header does not say its format, a whole number from 1.");
        }

        if (version != KeptFile.Format)
        {
            return FileRead.Wrong($"The file has format {version}, and this program reads format {KeptFile.Format}. Use a newer program, or export again from this one.");
        }

        string said = header.TryGetProperty("kind", out JsonElement kindSaid) && kindSaid.ValueKind == JsonValueKind.String ? CrewText.Clean(kindSaid.GetString()!, 20) : "";
        if (said != kind)
        {
            return FileRead.Wrong(KeptFile.Members.ContainsKey(said) ? $"The file holds a {said}, not a {kind}. Use \"{said} import\"." : $"The header does not say that it holds a {kind}.");
        }

        var check = new KeptFileCheck();
        check.Names(header, KeptFile.Header, ["kind", "format"]);
        check.Names(root, "", kind == "scene" ? [KeptFile.Header, "scene", "car", "kit"] : [KeptFile.Header, kind]);
        if (!root.TryGetProperty(kind, out _))
        {
            check.Add($"the {kind} itself is missing");
        }

        foreach ((string member, Google.Protobuf.Reflection.MessageDescriptor descriptor) in KeptFile.Members)
        {
            if (root.TryGetProperty(member, out JsonElement value))
            {
                check.Message(value, descriptor, member);
            }
        }

        return check.Problems.Count > 0 ? new FileRead(null, check.Problems) : Parse(root, kind);
    }

    // What the check let through should parse; if the parser still finds something, that is one more sentence and no exception.
    private static FileRead Parse(JsonElement root, string kind)
    {
        try
        {
            return new FileRead(new KeptFile(kind, One(root, "scene", Scene.Parser), One(root, "car", Cabin.Parser), One(root, "kit", Kit.Parser)), []);
        }
        catch (Exception e) when (e is InvalidProtocolBufferException or InvalidJsonException or FormatException or OverflowException or ArgumentException or InvalidOperationException)
        {
            return FileRead.Wrong($"A value in the file is not one that a {kind} can have. Export it again and change less.");
        }
    }

    private static T? One<T>(JsonElement root, string member, MessageParser<T> parser)
        where T : class, IMessage<T>
    {
        if (!root.TryGetProperty(member, out JsonElement value))
        {
            return null;
        }

        // Times the planner sets are dropped before they are even read.
        var kept = value.EnumerateObject().Where(p => p.Name is not ("revision" or "updateTime" or "update_time"));
        string json = "{" + string.Join(',', kept.Select(p => JsonSerializer.Serialize(p.Name, FileNames.Default.String) + ":" + p.Value.GetRawText())) + "}";
        return parser.ParseJson(json);
    }

    private static string? NotText(ReadOnlySpan<byte> bytes)
    {
        bool zip = bytes.StartsWith("PK"u8), gzip = bytes.StartsWith((ReadOnlySpan<byte>)[0x1f, 0x8b]);
        return zip || gzip ? "The file is packed. Unpack it and send the .json inside."
            : bytes.StartsWith((ReadOnlySpan<byte>)[0xff, 0xfe]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xfe, 0xff]) ? "The file is text in UTF-16. Save it again as UTF-8."
            : bytes.Contains((byte)0) ? "The file is not text: there are zero bytes in it. Send the .json as it was exported." : null;
    }

    private static bool TooDeep(string text)
    {
        int depth = 0;
        bool quoted = false;
        for (int i = 0; i < text.Length; i++)
        {
            if (quoted)
            {
                i += text[i] == '\\' ? 1 : 0;
                quoted = i >= text.Length || text[i] != '"' || text[i - 1] == '\\';
                continue;
            }

            quoted = text[i] == '"';
            depth += text[i] is '{' or '[' ? 1 : text[i] is '}' or ']' ? -1 : 0;
            if (depth > MostDepth)
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>Writes names of fields.</summary>
[System.Text.Json.Serialization.JsonSerializable(typeof(string))]
internal sealed partial class FileNames : System.Text.Json.Serialization.JsonSerializerContext;
