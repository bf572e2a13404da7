namespace Quarterlight.Store.Tests;

public sealed class GroupWriterTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static WriteOutcome Done => new(WriteState.Written, null);

    [Fact]
    public async Task Write_ManyWaiting_CommittedTogether()
    {
        using var held = new ManualResetEventSlim();
        int commits = 0;
        using var writer = new GroupWriter(work =>
        {
            held.Wait(Stop);
            work();
            Interlocked.Increment(ref commits);
        });

        Task<WriteOutcome>[] writes = [.. Enumerable.Range(0, 100).Select(_ => writer.WriteAsync(() => Done, Stop))];
        held.Set();
        await Task.WhenAll(writes);

        Assert.InRange(commits, 1, 10);
    }

    [Fact]
    public async Task Write_BeforeTheCommitReturns_NotAcknowledged()
    {
        using var applied = new ManualResetEventSlim();
        using var onDisk = new ManualResetEventSlim();
        using var writer = new GroupWriter(work =>
        {
            work();
            applied.Set();
            onDisk.Wait(Stop);
        });

        Task<WriteOutcome> write = writer.WriteAsync(() => Done, Stop);
        applied.Wait(Stop);
        Assert.False(write.IsCompleted);
        onDisk.Set();
        Assert.Equal(WriteState.Written, (await write).State);
    }

    [Fact]
    public async Task Write_CommitFails_CallerHearsItAndTheNextWriteWorks()
    {
        int commits = 0;
        using var writer = new GroupWriter(work =>
        {
            work();
            if (++commits == 1)
            {
                throw new InvalidOperationException("disk full");
            }
        });

        await Assert.ThrowsAsync<InvalidOperationException>(() => writer.WriteAsync(() => Done, Stop));
        Assert.Equal(WriteState.Written, (await writer.WriteAsync(() => Done, Stop)).State);
    }

    [Fact]
    public async Task Dispose_WritesWaiting_FinishesThem()
    {
        int applied = 0;
        var writer = new GroupWriter(work => work());
        Task<WriteOutcome>[] writes =
        [
            .. Enumerable.Range(0, 200).Select(_ => writer.WriteAsync(
                () =>
                {
                    applied++;
                    return Done;
                },
                Stop)),
        ];
        writer.Dispose();
        await Task.WhenAll(writes);
        Assert.Equal(200, applied);
    }

    [Fact]
    public async Task CommitThatNeverReturns_CallerAndTheEnd_AreNotHeldForEver()
    {
        using var held = new ManualResetEventSlim();
        var writer = new GroupWriter(_ => held.Wait(Stop), TimeSpan.FromMilliseconds(50));
        Task<WriteOutcome> write = writer.WriteAsync(() => Done, Stop);

        await Assert.ThrowsAsync<TimeoutException>(() => write.WaitAsync(TimeSpan.FromSeconds(60), Stop));
        Assert.Throws<TimeoutException>(writer.Dispose);

        held.Set();
        writer.Dispose();
    }
}
