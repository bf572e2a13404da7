using CsCheck;

namespace Quarterlight.Store.Tests;

/// <summary>The embedded store: the contract, and what is its own.</summary>
public sealed class LiteDocumentStoreTests : DocumentStoreTests
{
    private readonly TempFolder _folder = new();

    protected override Task<IDocumentStore> OpenAsync() => Task.FromResult<IDocumentStore>(LiteDocumentStore.Open(_folder.Path, Clock));

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task Open_FolderInUse_RefusedNamingItUntilLetGo()
    {
        StoreInUseException refused = Assert.Throws<StoreInUseException>(() => LiteDocumentStore.Open(_folder.Path, Clock));
        Assert.Contains(_folder.Path, refused.Message, StringComparison.Ordinal);

        await Store.DisposeAsync();
        await using LiteDocumentStore second = LiteDocumentStore.Open(_folder.Path, Clock);
        Assert.Null(await second.GetAsync(Key("x"), Stop));
    }

    [Fact]
    public async Task Open_FreshFolderWithReadersAtOnce_NobodyFails()
    {
        for (int run = 0; run < 60; run++)
        {
            using var folder = new TempFolder();
            LiteDocumentStore fresh = LiteDocumentStore.Open(folder.Path, Clock);
            await using var close = fresh;
            using var start = new Barrier(4);
            var end = new CancellationTokenSource();
            Task[] readers =
            [
                .. Enumerable.Range(0, 3).Select(n => Task.Factory.StartNew(
                    () =>
                    {
                        start.SignalAndWait(Stop);
                        while (!end.IsCancellationRequested)
                        {
                            _ = fresh.GetAsync(Key("health"), Stop).AsTask().Result;
                            _ = fresh.ListTeamsAsync(Stop).AsTask().Result;
                        }
                    },
                    Stop,
                    TaskCreationOptions.LongRunning,
                    TaskScheduler.Default)),
            ];
            start.SignalAndWait(Stop);
            WriteOutcome written = await fresh.CreateAsync(Key("first"), Bytes("x"), Stop).WaitAsync(TimeSpan.FromSeconds(60), Stop);
            await end.CancelAsync();
            await Task.WhenAll(readers).WaitAsync(TimeSpan.FromSeconds(60), Stop);
            end.Dispose();

            Assert.Equal(WriteState.Written, written.State);
            Assert.NotNull(await fresh.GetAsync(Key("first"), Stop));
            Assert.Equal([Team], await fresh.ListTeamsAsync(Stop));
        }
    }

    [Fact]
    public async Task List_FromMoreThreadsThanTheDatabaseHasTransactions_NobodyFails()
    {
        // LiteDB 5 opens at most 100 at once (MAX_OPEN_TRANSACTIONS in its Constants) and refuses the next.
        const int threads = 150;
        for (int n = 0; n < 100; n++)
        {
            await Store.CreateAsync(Key($"d{n}"), Bytes(new string('x', 1000)), Stop);
        }

        using var start = new Barrier(threads);
        Task<int>[] readers =
        [
            .. Enumerable.Range(0, threads).Select(n => Task.Factory.StartNew(
                () =>
                {
                    start.SignalAndWait(Stop);
                    return Enumerable.Range(0, 5).Sum(_ => Store.ListAsync(Team, Scenes, 50, null, Stop).AsTask().Result.Documents.Count);
                },
                Stop,
                TaskCreationOptions.LongRunning,
                TaskScheduler.Default)),
        ];

        int[] read = await Task.WhenAll(readers).WaitAsync(TimeSpan.FromSeconds(60), Stop);

        Assert.All(read, r => Assert.Equal(250, r));
    }

    [Fact]
    public async Task Create_Acknowledged_IsInTheLogFileBeforeAnyCheckpoint()
    {
        byte[] marker = Bytes("the lay-by scene, take nine, marker 5d1c7a");
        await Store.CreateAsync(Key("marked"), marker, Stop);

        await using var log = new FileStream(Path.Combine(_folder.Path, "quarterlight-log.db"), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] content = new byte[log.Length];
        await log.ReadExactlyAsync(content, Stop);
        Assert.True(content.AsSpan().IndexOf(marker) >= 0, "the acknowledged payload is not in the log");
    }

    [Fact]
    public async Task Close_AfterWrites_LogIsFoldedIntoTheDataFile()
    {
        await Store.CreateAsync(Key("x"), Bytes("x"), Stop);
        await Store.DisposeAsync();

        var log = new FileInfo(Path.Combine(_folder.Path, "quarterlight-log.db"));
        Assert.True(!log.Exists || log.Length == 0, "the log still holds pages");
    }

    [Fact]
    public async Task Open_ManyCheckpointsLater_NothingMissing()
    {
        // Some 40 MB through the log: well past the size at which LiteDB folds it into the data file by itself.
        byte[] payload = new byte[100_000];
        for (int i = 0; i < 400; i++)
        {
            payload[0] = (byte)i;
            await Store.UpdateOrCreateAsync(Key($"s-{i % 10}"), payload.ToArray(), Stop);
        }

        await ReopenAsync();
        IReadOnlyList<StoredDocument> kept = (await Store.ListAsync(Team, Scenes, 20, null, Stop)).Documents;
        Assert.Equal(10, kept.Count);
        Assert.All(kept, d => Assert.Equal(40, d.Revision));
        Assert.Equal(Enumerable.Range(390, 10).Select(i => (byte)i), kept.Select(d => d.Payload.Span[0]));
    }

    [Fact]
    public void AnyCalls_InAnyOrder_BehaveLikeADictionary()
    {
        Gen<(int What, int Id, int Value, int Revision)> step = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 4], Gen.Int[0, 255], Gen.Int[0, 3]);
        int run = 0;
        step.Array[1, 30].Sample(
            steps =>
            {
                string team = $"run-{Interlocked.Increment(ref run)}";
                var model = new SortedDictionary<string, (long Revision, byte Value)>(StringComparer.Ordinal);
                foreach ((int what, int id, int value, int revision) in steps)
                {
                    var key = new DocumentKey(team, Scenes, $"d{id}");
                    bool there = model.TryGetValue(key.Id, out (long Revision, byte Value) kept);
                    switch (what)
                    {
                        case 0:
                            Assert.Equal(there ? WriteState.AlreadyExists : WriteState.Written, Store.CreateAsync(key, new[] { (byte)value }, Stop).Result.State);
                            model[key.Id] = there ? kept : (1, (byte)value);
                            break;
                        case 1:
                            bool fits = there && (revision == 0 || revision == kept.Revision);
                            WriteState expected = !there ? WriteState.NotFound : fits ? WriteState.Written : WriteState.RevisionConflict;
                            Assert.Equal(expected, Store.UpdateAsync(key, new[] { (byte)value }, revision, Stop).Result.State);
                            if (fits)
                            {
                                model[key.Id] = (kept.Revision + 1, (byte)value);
                            }

                            break;
                        case 2:
                            Assert.Equal(model.Remove(key.Id) ? WriteState.Written : WriteState.NotFound, Store.DeleteAsync(key, Stop).Result.State);
                            break;
                        default:
                            Assert.Equal(there ? kept.Revision : null, Store.GetAsync(key, Stop).AsTask().Result?.Revision);
                            break;
                    }
                }

                Assert.Equal(
                    model.Select(p => (p.Key, p.Value.Revision, p.Value.Value)),
                    Store.ListAsync(team, Scenes, 10, null, Stop).AsTask().Result.Documents.Select(d => (d.Key.Id, d.Revision, d.Payload.Span[0])));
            },
            iter: 60,
            threads: 1);
    }
}

internal static class StoreSteps
{
    public static async Task UpdateOrCreateAsync(this IDocumentStore store, DocumentKey key, byte[] payload, CancellationToken cancellation)
    {
        if ((await store.UpdateAsync(key, payload, 0, cancellation)).State == WriteState.NotFound)
        {
            await store.CreateAsync(key, payload, cancellation);
        }
    }
}
