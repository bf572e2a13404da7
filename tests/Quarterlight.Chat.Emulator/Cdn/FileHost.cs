using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Cdn;

/// <summary>A file on the attachment host.</summary>
/// <param name="Id">Its id.</param>
/// <param name="ChannelId">Channel it was sent in.</param>
/// <param name="Name">Its name.</param>
/// <param name="ContentType">Its media type.</param>
/// <param name="Bytes">Its contents.</param>
/// <param name="AltText">Its text alternative; null for none.</param>
internal sealed record HostedFile(ulong Id, ulong ChannelId, string Name, string ContentType, ReadOnlyMemory<byte> Bytes, string? AltText)
{
    /// <summary>Its id on the wire.</summary>
    public string IdText => WorldJson.Text(Id);

    /// <summary>Its path below the host.</summary>
    public string Path => $"/attachments/{WorldJson.Text(ChannelId)}/{IdText}/{Uri.EscapeDataString(Name)}";
}

/// <summary>Keeps files and gives them to whoever has a signed link that has not expired (API reference, Signed Attachment CDN URLs).</summary>
internal sealed class FileHost(TimeProvider time, TimeSpan linkLife, Snowflakes ids, byte[] key)
{
    private readonly Dictionary<string, HostedFile> files = [];
    private readonly Lock gate = new();

    /// <summary>Beginning of all links; known once the host listens.</summary>
    public string Base { get; set; } = "";

    /// <summary>Takes a file in.</summary>
    public HostedFile Keep(ulong channelId, string name, string contentType, ReadOnlyMemory<byte> bytes, string? altText)
    {
        var file = new HostedFile(ids.Next(), channelId, name, contentType, bytes, altText);
        lock (gate)
        {
            files[file.Path] = file;
        }

        return file;
    }

    /// <summary>A link that works until its time is over.</summary>
    public string Link(HostedFile file)
    {
        string issued = Hex(time.GetUtcNow()), expires = Hex(time.GetUtcNow() + linkLife);
        return $"{Base}{file.Path}?ex={expires}&is={issued}&hm={Sign(file.Path, expires, issued)}&";
    }

    /// <summary>The file a link leads to; null when there is none, or the signature is wrong, or the time over.</summary>
    public HostedFile? Open(string path, string? expires, string? issued, string? signature)
    {
        if (expires is null || issued is null || signature is null
            || !long.TryParse(expires, NumberStyles.HexNumber, CultureInfo.InvariantCulture, out long until)
            || until < time.GetUtcNow().ToUnixTimeSeconds()
            || !CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(Sign(path, expires, issued)), Encoding.ASCII.GetBytes(signature)))
        {
            return null;
        }

        lock (gate)
        {
            return files.GetValueOrDefault(path);
        }
    }

    /// <summary>A file as it stands in a message or an interaction (Message resource, Attachment).</summary>
    public JsonObject ToJson(HostedFile file, long? claimedSize = null, string? otherUrl = null)
    {
        string url = otherUrl ?? Link(file);
        var json = new JsonObject
        {
            ["id"] = file.IdText,
            ["filename"] = file.Name,
            ["size"] = claimedSize ?? file.Bytes.Length,
            ["url"] = url,
            ["proxy_url"] = url,
            ["content_type"] = file.ContentType,
        };
        if (file.AltText is { } text)
        {
            json["description"] = text;
        }

        return json;
    }

    private string Sign(string path, string expires, string issued) =>
        Convert.ToHexStringLower(HMACSHA256.HashData(key, Encoding.UTF8.GetBytes($"{path}?{expires}&{issued}")));

    private static string Hex(DateTimeOffset moment) => moment.ToUnixTimeSeconds().ToString("x", CultureInfo.InvariantCulture);
}
