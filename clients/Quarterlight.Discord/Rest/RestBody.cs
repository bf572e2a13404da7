using System.Buffers;
using System.Net;
using System.Net.Http.Headers;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Quarterlight.Discord.Rest;

/// <summary>A body to send, as often as it takes: each try gets contents of its own over the same bytes, and nothing is copied for it.</summary>
internal sealed class RestBody
{
    // What a body of JSON looks like to whoever reads it: not HTML, so only what JSON itself wants is escaped.
    private static readonly JsonWriterOptions Writing = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = false };

    private readonly IReadOnlyList<ReadOnlyMemory<byte>> pieces;
    private readonly string mediaType;

    private RestBody(IReadOnlyList<ReadOnlyMemory<byte>> pieces, string mediaType, ReadOnlyMemory<byte> json)
    {
        this.pieces = pieces;
        this.mediaType = mediaType;
        Json = json;
        Length = pieces.Sum(p => (long)p.Length);
    }

    /// <summary>The JSON of it.</summary>
    public ReadOnlyMemory<byte> Json { get; }

    /// <summary>Length on the wire, bytes.</summary>
    public long Length { get; }

    /// <summary>A body of JSON.</summary>
    public static RestBody OfJson(Action<Utf8JsonWriter> write)
    {
        ReadOnlyMemory<byte> json = Write(write);
        return new RestBody([json], "application/json", json);
    }

    /// <summary>A body of JSON with files, or of JSON alone when there are none.</summary>
    public static RestBody Of(Action<Utf8JsonWriter> write, IReadOnlyList<OutgoingFile> files)
    {
        if (files.Count == 0)
        {
            return OfJson(write);
        }

        ReadOnlyMemory<byte> json = Write(write);
        string boundary = MultipartPieces.Boundary(json, files);
        return new RestBody(MultipartPieces.Of(json, files, boundary), $"multipart/form-data; boundary={boundary}", json);
    }

    /// <summary>Contents for one try.</summary>
    public HttpContent Create() => new PieceContent(pieces, Length, mediaType);

    private static ReadOnlyMemory<byte> Write(Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>(1024);
        using var writer = new Utf8JsonWriter(buffer, Writing);
        write(writer);
        writer.Flush();
        return buffer.WrittenMemory;
    }

    private sealed class PieceContent : HttpContent
    {
        private readonly IReadOnlyList<ReadOnlyMemory<byte>> pieces;
        private readonly long length;

        public PieceContent(IReadOnlyList<ReadOnlyMemory<byte>> pieces, long length, string mediaType)
        {
            this.pieces = pieces;
            this.length = length;
            Headers.ContentType = MediaTypeHeaderValue.Parse(mediaType);
        }

        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) => SerializeToStreamAsync(stream, context, CancellationToken.None);

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context, CancellationToken cancellationToken)
        {
            foreach (ReadOnlyMemory<byte> piece in pieces)
            {
                await stream.WriteAsync(piece, cancellationToken).ConfigureAwait(false);
            }
        }

        protected override bool TryComputeLength(out long length)
        {
            length = this.length;
            return true;
        }
    }
}
