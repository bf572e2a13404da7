using System.IO.Pipelines;
using System.Net;
using Microsoft.Extensions.Time.Testing;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>Files come from the platform's own hosts, no larger than allowed and not for ever.</summary>
public sealed class AttachmentFetcherTests
{
    private const string Good = "https://cdn.discordapp.com/attachments/1/2/a.wav?ex=1&is=2&hm=3";

    [Theory]
    [InlineData(Good, true)]
    [InlineData("https://media.discordapp.net/attachments/1/2/a.wav", true)]
    [InlineData("https://cdn.discordapp.com:443/a", false)]
    [InlineData("http://cdn.discordapp.com/a", false)]
    [InlineData("https://cdn.discordapp.com:8443/a", false)]
    [InlineData("https://user@cdn.discordapp.com/a", false)]
    [InlineData("https://cdn.discordapp.com@127.0.0.1/a", false)]
    [InlineData("https://cdn.discordapp.com.example/a", false)]
    [InlineData("https://cdn.discordapp.com./a", false)]
    [InlineData("https://evil.cdn.discordapp.com/a", false)]
    [InlineData("https://CDN.discordapp.com/a", false)]
    [InlineData("https://cdn.discordapp.com\\@127.0.0.1/a", false)]
    [InlineData("https://cdn.discordapp.com/a b", false)]
    [InlineData(" https://cdn.discordapp.com/a", false)]
    [InlineData("https://cdn.discordapp.com", false)]
    [InlineData("https://cdn.discordapp.com%2f@127.0.0.1/a", false)]
    [InlineData("https://cdn\u3002discordapp\u3002com/a", false)]
    [InlineData("https://169.254.169.254/latest/meta-data", false)]
    [InlineData("https://127.0.0.1/a", false)]
    [InlineData("https://[::1]/a", false)]
    [InlineData("https://discord.com/a", false)]
    [InlineData("file:///etc/passwd", false)]
    [InlineData("//cdn.discordapp.com/a", false)]
    [InlineData("/a", false)]
    [InlineData("", false)]
    public async Task Open_Address_OnlyThePlatformsHosts(string url, bool allowed)
    {
        using var rig = new Rig((_, _) => Task.FromResult(Answer(200, [1, 2, 3])));
        Task<Stream> opened = rig.Files.OpenAsync(new DiscordAttachment(1, "a.wav", 3, url), 100, RestRig.Stop);
        if (allowed)
        {
            await using Stream stream = await opened;
            Assert.Single(rig.Handler.Sent);
            return;
        }

        Assert.Equal(DiscordFault.Refused, (await Assert.ThrowsAsync<DiscordException>(() => opened)).Fault);
        Assert.Empty(rig.Handler.Sent);
    }

    [Theory]
    [InlineData("http://127.0.0.1:5000", "http://127.0.0.1:5000/a", true)]
    [InlineData("http://127.0.0.1:5000", "http://127.0.0.1:5001/a", false)]
    [InlineData("http://127.0.0.1:5000", "http://localhost:5000/a", false)]
    [InlineData("http://127.0.0.1:5000", "https://127.0.0.1:5000/a", false)]
    public async Task Open_TestHost_OnlyThatOne(string host, string url, bool allowed)
    {
        using var rig = new Rig((_, _) => Task.FromResult(Answer(200, [1])), new AttachmentOptions { LoopbackTestHost = new Uri(host) });
        Exception? fault = await Record.ExceptionAsync(async () => await (await rig.Files.OpenAsync(new DiscordAttachment(1, "a", 1, url), 100, RestRig.Stop)).DisposeAsync());
        Assert.Equal(allowed, fault is null);
    }

    [Fact]
    public void Make_TestHostElsewhere_IsRefused() => Assert.Throws<ArgumentException>(
        () => new Rig((_, _) => Task.FromResult(Answer(200, [])), new AttachmentOptions { LoopbackTestHost = new Uri("http://192.0.2.1:80") }));

    [Theory]
    [InlineData(404, DiscordFault.NotFound, 1)]
    [InlineData(403, DiscordFault.NotFound, 1)]
    [InlineData(302, DiscordFault.Refused, 1)]
    [InlineData(429, DiscordFault.Unavailable, 1)]
    [InlineData(500, DiscordFault.Unavailable, 2)]
    [InlineData(206, DiscordFault.Unavailable, 1)]
    public async Task Open_Refused_SaysWhy(int status, DiscordFault expected, int tries)
    {
        using var rig = new Rig((_, _) => Task.FromResult(Answer(status, [])));
        Assert.Equal(expected, (await Assert.ThrowsAsync<DiscordException>(() => rig.OpenAsync(10))).Fault);
        Assert.Equal(tries, rig.Handler.Sent.Count);
        Assert.All(rig.Handler.Sent, s => Assert.Null(s.Authorization));
    }

    [Theory]
    [InlineData(101, 100, 101)]
    [InlineData(50, 100, 60)]
    [InlineData(100, 100, 200)]
    public async Task Open_TooLarge_IsNotReadAtAll(int told, int most, int length)
    {
        using var rig = new Rig((_, _) => Task.FromResult(Answer(200, new byte[length])));
        Assert.Equal(DiscordFault.TooLarge, (await Assert.ThrowsAsync<DiscordException>(() => rig.OpenAsync(told, most))).Fault);
    }

    [Fact]
    public async Task Read_MoreThanTold_StopsAtTheLimit()
    {
        var pipe = new Pipe();
        using var rig = new Rig((_, _) => Task.FromResult(Streamed(pipe.Reader.AsStream())));
        await using Stream stream = await rig.OpenAsync(10);
        await pipe.Writer.WriteAsync(new byte[10], RestRig.Stop);
        byte[] buffer = new byte[64];
        Assert.Equal(10, await stream.ReadAsync(buffer, RestRig.Stop));
        await pipe.Writer.WriteAsync(new byte[1], RestRig.Stop);
        Assert.Equal(DiscordFault.TooLarge, (await Assert.ThrowsAsync<DiscordException>(async () => Assert.Equal(0, await stream.ReadAsync(buffer, RestRig.Stop)))).Fault);
    }

    [Fact]
    public async Task Read_FirstBytes_ComeBeforeTheRestIsSent()
    {
        var pipe = new Pipe();
        using var rig = new Rig((_, _) => Task.FromResult(Streamed(pipe.Reader.AsStream())));
        await using Stream stream = await rig.OpenAsync(6);
        await pipe.Writer.WriteAsync(new byte[] { 1, 2, 3 }, RestRig.Stop);
        byte[] buffer = new byte[64];
        Assert.Equal(3, await stream.ReadAsync(buffer, RestRig.Stop));
        await pipe.Writer.WriteAsync(new byte[] { 4, 5, 6 }, RestRig.Stop);
        await pipe.Writer.CompleteAsync();
        Assert.Equal(3, await stream.ReadAsync(buffer, RestRig.Stop));
        Assert.Equal(0, await stream.ReadAsync(buffer, RestRig.Stop));
    }

    [Fact]
    public async Task Read_LessThanTold_IsNoWholeFile()
    {
        using var rig = new Rig((_, _) => Task.FromResult(Streamed(new MemoryStream(new byte[4]))));
        await using Stream stream = await rig.OpenAsync(9);
        await Assert.ThrowsAsync<DiscordException>(() => stream.CopyToAsync(Stream.Null, RestRig.Stop));
    }

    [Fact]
    public async Task Read_Stalls_EndsByItself()
    {
        var pipe = new Pipe();
        using var rig = new Rig((_, _) => Task.FromResult(Streamed(pipe.Reader.AsStream())));
        await using Stream stream = await rig.OpenAsync(9);
        Task<int> read = stream.ReadAsync(new byte[9], RestRig.Stop).AsTask();
        rig.Time.Advance(TimeSpan.FromSeconds(11));
        Assert.Equal(DiscordFault.Unavailable, (await Assert.ThrowsAsync<DiscordException>(() => read)).Fault);
    }

    [Fact]
    public async Task Read_Drips_EndsAsAWhole()
    {
        var pipe = new Pipe();
        using var rig = new Rig((_, _) => Task.FromResult(Streamed(pipe.Reader.AsStream())));
        await using Stream stream = await rig.OpenAsync(9000);
        byte[] buffer = new byte[1];
        DiscordException fault = await Assert.ThrowsAsync<DiscordException>(async () =>
        {
            for (int i = 0; i < 30; i++)
            {
                await pipe.Writer.WriteAsync(new byte[1], RestRig.Stop);
                Assert.Equal(1, await stream.ReadAsync(buffer, RestRig.Stop));
                rig.Time.Advance(TimeSpan.FromSeconds(9));
            }
        });
        Assert.Equal(DiscordFault.Unavailable, fault.Fault);
        Assert.InRange(stream.Position, 13, 14);
    }

    [Fact]
    public async Task Open_NoAnswer_EndsByItself()
    {
        using var rig = new Rig(async (_, stop) =>
        {
            await Task.Delay(Timeout.Infinite, stop);
            return Answer(200, []);
        });
        Task<Stream> opened = rig.OpenAsync(9);
        for (int i = 0; i < 200 && !opened.IsCompleted; i++)
        {
            rig.Time.Advance(TimeSpan.FromSeconds(1));
            await Task.WhenAny(opened, Task.Delay(5, RestRig.Stop));
        }

        Assert.Equal(DiscordFault.Unavailable, (await Assert.ThrowsAsync<DiscordException>(() => opened)).Fault);
        Assert.Equal(2, rig.Handler.Sent.Count);
    }

    private static HttpResponseMessage Answer(int status, byte[] bytes) => new((HttpStatusCode)status) { Content = new ByteArrayContent(bytes) };

    private static HttpResponseMessage Streamed(Stream stream) => new(HttpStatusCode.OK) { Content = new LengthlessContent(stream) };

    private sealed class LengthlessContent(Stream stream) : HttpContent
    {
        protected override Task<Stream> CreateContentReadStreamAsync() => Task.FromResult(stream);

        protected override Task SerializeToStreamAsync(Stream target, TransportContext? context) => stream.CopyToAsync(target);

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }

    private sealed class Rig : IDisposable
    {
        public Rig(Func<SentRequest, CancellationToken, Task<HttpResponseMessage>> answer, AttachmentOptions? options = null)
        {
            Handler = new ScriptedHandler(() => TimeSpan.Zero, (request, _, stop) => answer(request, stop));
            Files = new AttachmentFetcher(options ?? new AttachmentOptions(), Time, new CapturedLog(), Handler);
        }

        public FakeTimeProvider Time { get; } = new();

        public ScriptedHandler Handler { get; }

        public AttachmentFetcher Files { get; }

        public Task<Stream> OpenAsync(int told, int most = 10_000) => Files.OpenAsync(new DiscordAttachment(1, "a.wav", told, Good), most, RestRig.Stop);

        public void Dispose() => Files.Dispose();
    }
}
