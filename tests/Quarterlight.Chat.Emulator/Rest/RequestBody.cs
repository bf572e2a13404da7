using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;
using Quarterlight.Chat.Emulator.Recording;

namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>A file of a request.</summary>
/// <param name="Index">The n of files[n].</param>
/// <param name="FileName">Its name.</param>
/// <param name="ContentType">Its media type; null when not told.</param>
/// <param name="Bytes">Its contents.</param>
internal sealed record UploadedPart(string Index, string FileName, string? ContentType, byte[] Bytes);

/// <summary>The body of a request, read (API reference, Uploading Files).</summary>
internal sealed partial class RequestBody
{
    /// <summary>The JSON of the body, or of the part payload_json; null for none.</summary>
    public JsonElement? Json { get; private set; }

    /// <summary>Files.</summary>
    public IReadOnlyList<UploadedPart> Files { get; private set; } = [];

    /// <summary>All parts of a multipart body.</summary>
    public IReadOnlyList<RecordedPart> Parts { get; private set; } = [];

    /// <summary>What is wrong with it; null when it could be read.</summary>
    public ApiAnswer? Refusal { get; private set; }

    /// <summary>Reads a body.</summary>
    /// <param name="bytes">All of it.</param>
    /// <param name="contentType">Its media type as written.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<RequestBody> ReadAsync(byte[] bytes, string? contentType, CancellationToken cancellation)
    {
        var body = new RequestBody();
        if (bytes.Length == 0)
        {
            return body;
        }

        if (!MediaTypeHeaderValue.TryParse(contentType, out MediaTypeHeaderValue? type))
        {
            body.Refusal = ApiAnswer.Form("_body", "CONTENT_TYPE_INVALID", "Expected \"Content-Type\" header to be one of {'application/json', 'application/x-www-form-urlencoded', 'multipart/form-data'}.");
        }
        else if (type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase))
        {
            body.TakeJson(bytes);
        }
        else if (type.MediaType.Equals("multipart/form-data", StringComparison.OrdinalIgnoreCase))
        {
            await body.TakePartsAsync(bytes, HeaderUtilities.RemoveQuotes(type.Boundary).ToString(), cancellation).ConfigureAwait(false);
        }
        else
        {
            body.Refusal = ApiAnswer.Form("_body", "CONTENT_TYPE_INVALID", "Expected \"Content-Type\" header to be one of {'application/json', 'application/x-www-form-urlencoded', 'multipart/form-data'}.");
        }

        return body;
    }

    /// <summary>The refusal for the first file above a limit; null when all fit (Opcodes and Status Codes, 50045).</summary>
    public ApiAnswer? TooLargeFile(long mostBytes) =>
        Files.Any(f => f.Bytes.Length > mostBytes) ? ApiAnswer.Error(400, 50045, "File uploaded exceeds the maximum size") : null;

    private void TakeJson(byte[] bytes)
    {
        try
        {
            using var document = JsonDocument.Parse(bytes);
            Json = document.RootElement.Clone();
        }
        catch (JsonException)
        {
            Refusal = ApiAnswer.Error(400, 50109, "The request body contains invalid JSON.");
        }
    }

    private async Task TakePartsAsync(byte[] bytes, string boundary, CancellationToken cancellation)
    {
        var parts = new List<RecordedPart>();
        var files = new List<UploadedPart>();
        try
        {
            var reader = new MultipartReader(boundary, new MemoryStream(bytes));
            while (await reader.ReadNextSectionAsync(cancellation).ConfigureAwait(false) is { } section)
            {
                using var content = new MemoryStream();
                await section.Body.CopyToAsync(content, cancellation).ConfigureAwait(false);
                TakePart(section, content.ToArray(), parts, files);
            }
        }
        catch (Exception problem) when (problem is IOException or InvalidDataException or ArgumentException)
        {
            Refusal = ApiAnswer.Form("_body", "MULTIPART_INVALID", "The multipart body could not be read.");
        }

        Parts = parts;
        Files = files;
        if (Json is null && files.Count > 0)
        {
            using var empty = JsonDocument.Parse("{}");
            Json = empty.RootElement.Clone();
        }
    }

    private void TakePart(MultipartSection section, byte[] content, List<RecordedPart> parts, List<UploadedPart> files)
    {
        if (!ContentDispositionHeaderValue.TryParse(section.ContentDisposition, out ContentDispositionHeaderValue? disposition))
        {
            Refusal ??= ApiAnswer.Form("_body", "MULTIPART_INVALID", "A part has no Content-Disposition.");
            return;
        }

        string name = HeaderUtilities.RemoveQuotes(disposition.Name).ToString();
        string? fileName = disposition.FileName.HasValue ? HeaderUtilities.RemoveQuotes(disposition.FileName).ToString() : null;
        parts.Add(new RecordedPart(name, fileName, section.ContentType, section.ContentDisposition!, content.Length));
        if (name == "payload_json")
        {
            TakeJson(content);
        }
        else if (FilePart().Match(name) is { Success: true } match && fileName is { Length: > 0 })
        {
            files.Add(new UploadedPart(match.Groups[1].Value, fileName, section.ContentType, content));
        }
        else
        {
            Refusal ??= ApiAnswer.Form(name.Length == 0 ? "_body" : name, "MULTIPART_PART_INVALID", "Parts are payload_json, or files[n] with a file name.");
        }
    }

    [GeneratedRegex(@"^files\[(\d{1,2})\]$")]
    private static partial Regex FilePart();
}
