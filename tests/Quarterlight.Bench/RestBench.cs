using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using BenchmarkDotNet.Attributes;
using Quarterlight.Discord;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Bench;

/// <summary>A first answer with a picture of 200 kB, written until its last byte: our writer against the platform's own classes with reflection.</summary>
[MemoryDiagnoser]
public class RestBench
{
    private static readonly byte[] Picture = [.. Enumerable.Range(0, 200_000).Select(i => (byte)(i * 131 >> 3))];

    private readonly byte[] wire = new byte[256 * 1024];

    private readonly OutgoingMessage message = new()
    {
        Content = "Visor clip, 38 cm from the driver's mouth, hidden from cameras A and B.",
        Files = [new OutgoingFile("plan.png", "image/png", Picture, "The car from above; the visor clip is marked.")],
        Buttons = [new OutgoingButton("Next best", "q1:abcdefgh:0"), new OutgoingButton("Use feet", "q1:abcdefgh:1")],
    };

    [Benchmark(Baseline = true)]
    public Task Plain()
    {
        string json = JsonSerializer.Serialize(new
        {
            type = 4,
            data = new
            {
                content = message.Content,
                flags = 4,
                allowed_mentions = new { parse = Array.Empty<string>() },
                attachments = message.Files.Select((f, i) => new { id = i.ToString(System.Globalization.CultureInfo.InvariantCulture), filename = f.Name, description = f.AltText }),
                components = new[] { new { type = 1, components = message.Buttons.Select(b => new { type = 2, style = (int)b.Look, label = b.Label, custom_id = b.CustomId }) } },
            },
        });
        var content = new MultipartFormDataContent { { new StringContent(json, Encoding.UTF8, "application/json"), "payload_json" } };
        for (int i = 0; i < message.Files.Count; i++)
        {
            var part = new ReadOnlyMemoryContent(message.Files[i].Bytes);
            part.Headers.ContentType = new MediaTypeHeaderValue(message.Files[i].MediaType);
            content.Add(part, $"\"files[{i}]\"", message.Files[i].Name);
        }

        return SendAsync(content);
    }

    [Benchmark]
    public Task Ours() => SendAsync(RestBody.Of(json => MessageJson.Reply(json, message), message.Files).Create());

    private async Task SendAsync(HttpContent content)
    {
        using (content)
        {
            // Where a socket would copy it to.
            using var socket = new MemoryStream(wire);
            await content.CopyToAsync(socket, (TransportContext?)null);
        }
    }
}
