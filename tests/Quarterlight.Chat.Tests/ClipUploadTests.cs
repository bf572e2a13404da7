using Quarterlight.Crew;

namespace Quarterlight.Chat.Tests;

/// <summary>Sending a clip: in pieces, with progress, and given up when it must be.</summary>
public sealed class ClipUploadTests
{
    private const int Piece = 64 * 1024;

    private readonly CannedClips clips = new();

    [Fact]
    public async Task Send_LargeFile_InPiecesOf64KiBAndNeverMoreRead()
    {
        var source = new Counting(10 * Piece + 17);
        await clips.AskAsync("judge this", new CrewAttachment("a.wav", source.Length, _ => Task.FromResult<Stream>(source)));

        Assert.Equal([.. Enumerable.Repeat(Piece, 10), 17], clips.Pieces);
        Assert.InRange(source.LargestRead, 1, Piece);
        Assert.True(source.Closed);
    }

    [Fact]
    public async Task Send_SizeKnownOrNot_ProgressIsTold()
    {
        var known = new Heard();
        var unknown = new Heard();
        await clips.AskAsync("judge this", CannedClips.File(3 * Piece), progress: known);
        await clips.AskAsync("judge this", CannedClips.File(3 * Piece) with { ByteCount = null }, progress: unknown);

        Assert.Equal([1.0 / 3, 2.0 / 3, 1], known.All.Select(p => p.Fraction!.Value), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.All(unknown.All, p => Assert.Null(p.Fraction));
        Assert.False(clips.Headers[1].HasByteCount);
    }

    [Fact]
    public async Task Send_StreamThatStandsStill_GivenUpWithASentence()
    {
        var file = new CrewAttachment("slow.wav", null, _ => Task.FromResult<Stream>(new Endless(still: true)));
        CrewAnswer answer = await clips.AskAsync("judge this", file, options: new CrewDeskOptions { ClipStall = TimeSpan.FromSeconds(1) });

        Assert.StartsWith("Nothing moved for 1 s while slow.wav was sent", answer.Headline, StringComparison.Ordinal);
        Assert.True(answer.Private);
    }

    [Fact]
    public async Task Send_PastTheDeadline_GivenUpWithASentence()
    {
        var file = new CrewAttachment("slow.wav", null, _ => Task.FromResult<Stream>(new Endless(still: true)));
        CrewAnswer answer = await clips.AskAsync("judge this", file, options: new CrewDeskOptions { ClipDeadline = TimeSpan.FromSeconds(1) });

        Assert.Equal("The clip took too long to send and judge. Send a shorter piece; a minute is plenty.", answer.Headline);
    }

    [Fact]
    public async Task Send_CalledOff_Throws()
    {
        using var off = new CancellationTokenSource();
        await using FakePlanner fake = await clips.StartAsync();
        var file = new CrewAttachment("slow.wav", null, async _ =>
        {
            await off.CancelAsync();
            return new Endless(still: true);
        });

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new CrewDesk(fake.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = "judge this", Attachment = file }, off.Token));
    }

    [Fact]
    public async Task Send_RefusedHalfway_SaysWhyAtOnce()
    {
        clips.Refusal = _ => FakePlanner.Invalid(("piece", "this is not sound"));
        CrewAnswer answer = await clips.AskAsync("judge this", new CrewAttachment("endless.wav", null, _ => Task.FromResult<Stream>(new Endless(still: false))));

        Assert.Equal("Please check the file: this is not sound.", answer.Headline);
    }

    public static TheoryData<string, CrewAttachment, string> Bad => new()
    {
        { "empty", new CrewAttachment("a.wav", 0, _ => throw new InvalidOperationException("must not be opened")), "A.wav is empty: " },
        { "empty, size not known", new CrewAttachment("a.wav", null, _ => Task.FromResult<Stream>(new MemoryStream())), "A.wav is empty: " },
        { "too large", new CrewAttachment("a.wav", CrewAttachment.LargestBytes + 1, _ => throw new InvalidOperationException("must not be opened")), "A.wav is larger than 200 MiB: " },
        { "cannot be opened", new CrewAttachment("a.wav", 5, _ => throw new UnauthorizedAccessException("secret path")), "A.wav could not be read to its end: " },
        { "breaks off", new CrewAttachment("a.wav", 500_000, _ => Task.FromResult<Stream>(new Breaking())), "A.wav could not be read to its end: " },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public async Task Send_BadFile_OnePrivateSentence(string what, CrewAttachment file, string start)
    {
        CrewAnswer answer = await clips.AskAsync("judge this", file);

        Assert.StartsWith(start, answer.Headline, StringComparison.Ordinal);
        Assert.True(answer.Private, what);
        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.DoesNotContain("secret", answer.Headline, StringComparison.Ordinal);
    }

    private sealed class Heard : IProgress<CrewClipProgress>
    {
        public List<CrewClipProgress> All { get; } = [];

        public void Report(CrewClipProgress value) => All.Add(value);
    }

    private sealed class Counting(long length) : MemoryStream(new byte[length])
    {
        public int LargestRead { get; private set; }

        public bool Closed { get; private set; }

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            LargestRead = Math.Max(LargestRead, buffer.Length);
            return base.ReadAsync(buffer, cancellationToken);
        }

        protected override void Dispose(bool disposing)
        {
            Closed = true;
            base.Dispose(disposing);
        }
    }

    private sealed class Endless(bool still) : MemoryStream
    {
        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            await Task.Delay(still ? Timeout.InfiniteTimeSpan : TimeSpan.FromMilliseconds(1), cancellationToken);
            return buffer.Length;
        }
    }

    private sealed class Breaking : MemoryStream
    {
        private int reads;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            reads++ < 2 ? ValueTask.FromResult(buffer.Length) : throw new IOException("secret path");
    }
}
