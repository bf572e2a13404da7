namespace Quarterlight.Audio.Tests;

/// <summary>Sources that fall silent, break or are given up.</summary>
public sealed class SilentSourceTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(100)]
    public async Task Read_SourceFallsSilent_IsStalledAfterTheLimit(int bytesFirst)
    {
        AudioLimits limits = AudioLimits.Default with { IdleLimit = TimeSpan.FromMilliseconds(50) };
        var fault = await Assert.ThrowsAsync<AudioFaultException>(() => Reading.AllAsync(new SilentStream(WaveBuilder.Plain(500)[..bytesFirst]), limits));
        Assert.Equal(AudioFaultCode.Stalled, fault.Fault.Code);
        Assert.Equal("No byte arrived for 0.05 s", fault.Fault.Problem);
    }

    [Theory]
    [InlineData("vorbis-44k-stereo.ogg", 100)]
    [InlineData("vorbis-44k-stereo.ogg", 7_000)]
    [InlineData("opus-48k-mono.opus", 3_000)]
    [InlineData("mp3-48k-mono.mp3", 3_000)]
    public async Task Read_CompressedSourceFallsSilent_IsStalledAfterTheLimit(string name, int bytesFirst)
    {
        AudioLimits limits = AudioLimits.Default with { IdleLimit = TimeSpan.FromMilliseconds(50) };
        var fault = await Assert.ThrowsAsync<AudioFaultException>(() => Reading.AllAsync(new SilentStream(CorpusFile.Read(name)[..bytesFirst]), limits));
        Assert.Equal(AudioFaultCode.Stalled, fault.Fault.Code);
    }

    [Theory]
    [InlineData("vorbis-44k-stereo.ogg", 7_000)]
    [InlineData("opus-48k-mono.opus", 3_000)]
    [InlineData("flac-48k-mono.flac", 3_000)]
    public async Task Read_CallerGivesUpOnCompressed_IsCancelled(string name, int bytesFirst)
    {
        using var givingUp = new CancellationTokenSource();
        // The path of any file that exists: the program is not reached.
        AudioLimits limits = AudioLimits.Default with { FfmpegPath = typeof(AudioReader).Assembly.Location };
        Task reading = Task.Run(
            async () =>
            {
                await using IAudioReader reader = await AudioReader.OpenAsync(new SilentStream(CorpusFile.Read(name)[..bytesFirst]), limits, givingUp.Token);
                while (await reader.ReadAsync(new float[4096], givingUp.Token) > 0)
                {
                }
            },
            TestContext.Current.CancellationToken);
        await givingUp.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => reading);
    }

    [Fact]
    public async Task Read_CallerGivesUp_IsCancelledEvenIfTheSourceIgnoresIt()
    {
        using var givingUp = new CancellationTokenSource();
        ValueTask<IAudioReader> opening = AudioReader.OpenAsync(new SilentStream([1, 2, 3]), AudioLimits.Default, givingUp.Token);
        await givingUp.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () => await opening);
    }

    [Fact]
    public async Task Read_SourceBreaks_PassesItsOwnException()
    {
        var broken = new SilentStream(WaveBuilder.Plain(500)[..100], new IOException("connection lost"));
        Assert.Equal("connection lost", (await Assert.ThrowsAsync<IOException>(() => Reading.AllAsync(broken, AudioLimits.Default))).Message);
    }

    [Fact]
    public async Task Read_AfterDispose_IsAMistakeOfTheProgrammer()
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        var source = new MemoryStream(WaveBuilder.Plain(10));
        IAudioReader reader = await AudioReader.OpenAsync(source, AudioLimits.Default, cancellation);
        await reader.DisposeAsync();
        await reader.DisposeAsync();
        await Assert.ThrowsAsync<ObjectDisposedException>(async () => await reader.ReadAsync(new float[4], cancellation));
        Assert.True(source.CanRead);
    }

    private sealed class SilentStream(byte[] first, Exception? then = null) : MemoryStream(first)
    {
        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            int count = Read(buffer.Span);
            if (count == 0)
            {
                // Ignores the token on purpose.
                await (then is null ? new TaskCompletionSource().Task : Task.FromException(then));
            }

            return count;
        }
    }
}
