using System.Globalization;
using System.Net.Http.Headers;
using System.Text;

namespace Quarterlight.Discord.Rest;

/// <summary>
/// Multipart form data as the platform wants it (API Reference, Uploading Files): the JSON in <c>payload_json</c>, the files in <c>files[n]</c>, all
/// names in quotes. The files' bytes are taken as they are, not copied.
/// </summary>
internal static class MultipartPieces
{
    /// <summary>A boundary that occurs in nothing of it: the first of a row that is looked for and not found, so that no file can end its part early.</summary>
    public static string Boundary(ReadOnlyMemory<byte> json, IReadOnlyList<OutgoingFile> files)
    {
        for (int i = 0; ; i++)
        {
            string boundary = $"quarterlight-part-{i.ToString(CultureInfo.InvariantCulture)}-end";
            byte[] sought = Encoding.ASCII.GetBytes(boundary);
            if (json.Span.IndexOf(sought) < 0 && files.All(f => f.Bytes.Span.IndexOf(sought) < 0))
            {
                return boundary;
            }
        }
    }

    /// <summary>The whole body in pieces.</summary>
    public static IReadOnlyList<ReadOnlyMemory<byte>> Of(ReadOnlyMemory<byte> json, IReadOnlyList<OutgoingFile> files, string boundary)
    {
        List<ReadOnlyMemory<byte>> pieces = new(3 + files.Count * 3)
        {
            Ascii($"--{boundary}\r\nContent-Disposition: form-data; name=\"payload_json\"\r\nContent-Type: application/json\r\n\r\n"),
            json,
        };
        for (int i = 0; i < files.Count; i++)
        {
            pieces.Add(Ascii($"\r\n--{boundary}\r\nContent-Disposition: form-data; name=\"files[{i}]\"; filename=\"{SafeName(files[i].Name, i)}\"\r\nContent-Type: {SafeType(files[i].MediaType)}\r\n\r\n"));
            pieces.Add(files[i].Bytes);
        }

        pieces.Add(Ascii($"\r\n--{boundary}--\r\n"));
        return pieces;
    }

    /// <summary>A file name of ASCII letters, digits, dots, dashes and underscores: anything else could end the header it stands in.</summary>
    public static string SafeName(string name, int index)
    {
        string safe = string.Concat(name.Take(100).Select(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_' ? c : '-')).Trim('.');
        return safe.Length > 0 ? safe : string.Create(CultureInfo.InvariantCulture, $"file-{index}");
    }

    private static string SafeType(string type) =>
        MediaTypeHeaderValue.TryParse(type, out MediaTypeHeaderValue? parsed) && Ascii7(parsed.ToString()) ? parsed.ToString() : "application/octet-stream";

    private static bool Ascii7(string text) => text.All(c => c is >= ' ' and <= '~');

    private static ReadOnlyMemory<byte> Ascii(string text) => Encoding.ASCII.GetBytes(text);
}
