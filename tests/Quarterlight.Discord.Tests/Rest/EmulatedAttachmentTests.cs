using System.Text.Json;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>Files given to the bot, fetched from the emulated file host.</summary>
public sealed class EmulatedAttachmentTests
{
    private static readonly byte[] Bytes = [.. Enumerable.Range(0, 300_000).Select(i => (byte)(i * 7))];
    private static readonly EmulatedFile Clip = new("t3.wav", "audio/wav", Bytes);

    [Fact]
    public async Task Open_GoodLink_GivesTheFile()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        await using Stream stream = await rest.Responder.OpenAttachmentAsync(Given(rest, Clip), 1_000_000, RestRig.Stop);
        using var read = new MemoryStream();
        await stream.CopyToAsync(read, RestRig.Stop);
        Assert.Equal(Bytes, read.ToArray());
        Assert.DoesNotContain("Authorization", rest.Platform.Recording.Requests[^1].Headers.Keys, StringComparer.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("signature")]
    [InlineData("expired")]
    public async Task Open_BadLink_IsNotFound(string how)
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        DiscordAttachment file = Given(rest, Clip);
        if (how == "expired")
        {
            rest.Platform.Clock.Advance(TimeSpan.FromDays(2));
        }
        else
        {
            file = file with { Url = file.Url.Replace("hm=", "hm=00", StringComparison.Ordinal) };
        }

        Assert.Equal(DiscordFault.NotFound, await FaultAsync(rest, file));
    }

    [Fact]
    public async Task Open_LiesAboutItsSize_IsTooLarge()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        Assert.Equal(DiscordFault.TooLarge, await FaultAsync(rest, Given(rest, Clip with { ClaimedSize = 1000 })));
        Assert.Equal(DiscordFault.TooLarge, await FaultAsync(rest, Given(rest, Clip with { ClaimedSize = 2_000_000 })));
    }

    [Fact]
    public async Task Open_AnotherHost_IsRefusedWithoutARequest()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        DiscordAttachment file = Given(rest, Clip with { OtherUrl = "http://127.0.0.1:1/attachments/1/2/t3.wav" });
        Assert.Equal(DiscordFault.Refused, await FaultAsync(rest, file));
        Assert.DoesNotContain(rest.Platform.Recording.Requests, r => r.Path.Contains("/cdn/", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(FaultKind.CutAfter, false)]
    [InlineData(FaultKind.Status, true)]
    [InlineData(FaultKind.CutBefore, true)]
    public async Task Open_HostInTrouble_OnceIsTriedAgainAndACutFileIsNoFile(FaultKind kind, bool works)
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        DiscordAttachment file = Given(rest, Clip);
        rest.Platform.Faults.Add(new FaultRule(kind) { Path = "^/cdn/" });
        Exception? fault = await Record.ExceptionAsync(() => ReadAsync(rest, file));
        Assert.Equal(works, fault is null);
        Assert.True(works || fault is DiscordException { Fault: DiscordFault.Unavailable });
    }

    // What the way in reads from the interaction (Receiving and Responding, resolved).
    private static DiscordAttachment Given(EmulatedRest rest, EmulatedFile file)
    {
        SentInteraction asked = rest.Platform.Crew.Slash("clip", ("file", file));
        using var json = JsonDocument.Parse(asked.Json);
        JsonProperty given = json.RootElement.GetProperty("data").GetProperty("resolved").GetProperty("attachments").EnumerateObject().Single();
        return new DiscordAttachment(
            ulong.Parse(given.Name, System.Globalization.CultureInfo.InvariantCulture), given.Value.GetProperty("filename").GetString()!, given.Value.GetProperty("size").GetInt64(), given.Value.GetProperty("url").GetString()!);
    }

    private static async Task<DiscordFault> FaultAsync(EmulatedRest rest, DiscordAttachment file) =>
        (await Assert.ThrowsAsync<DiscordException>(() => ReadAsync(rest, file))).Fault;

    private static async Task ReadAsync(EmulatedRest rest, DiscordAttachment file)
    {
        await using Stream stream = await rest.Responder.OpenAttachmentAsync(file, 1_000_000, RestRig.Stop);
        await stream.CopyToAsync(Stream.Null, RestRig.Stop);
    }
}
