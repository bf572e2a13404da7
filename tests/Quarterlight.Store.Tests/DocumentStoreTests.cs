using System.Text;

namespace Quarterlight.Store.Tests;

/// <summary>What every document store must do; a backend runs it by deriving and saying how it is opened.</summary>
public abstract class DocumentStoreTests : IAsyncLifetime
{
    protected const string Team = "team";
    protected const string Scenes = "scenes";

    protected TestClock Clock { get; } = new();

    protected IDocumentStore Store { get; private set; } = null!;

    protected static CancellationToken Stop => TestContext.Current.CancellationToken;

    protected abstract Task<IDocumentStore> OpenAsync();

    public virtual async ValueTask InitializeAsync() => Store = await OpenAsync();

    public virtual async ValueTask DisposeAsync()
    {
        await Store.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    protected static DocumentKey Key(string id) => new(Team, Scenes, id);

    protected static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    protected async Task ReopenAsync()
    {
        await Store.DisposeAsync();
        Store = await OpenAsync();
    }

    private async Task<StoredDocument> GetAsync(DocumentKey key)
    {
        StoredDocument? document = await Store.GetAsync(key, Stop);
        Assert.NotNull(document);
        return document;
    }

    [Fact]
    public async Task Create_NewId_KeptAtRevisionOneWithItsTime()
    {
        WriteOutcome outcome = await Store.CreateAsync(Key("ferry"), Bytes("night"), Stop);

        Assert.Equal(WriteState.Written, outcome.State);
        StoredDocument kept = await GetAsync(Key("ferry"));
        Assert.Equal(1, kept.Revision);
        Assert.Equal(Clock.GetUtcNow(), kept.CreateTime);
        Assert.Equal(Clock.GetUtcNow(), kept.UpdateTime);
        Assert.Equal(Bytes("night"), kept.Payload.ToArray());
        Assert.Equal(Key("ferry"), kept.Key);
    }

    [Fact]
    public async Task Create_TakenId_RefusedAndKeptUnchanged()
    {
        await Store.CreateAsync(Key("ferry"), Bytes("first"), Stop);

        WriteOutcome outcome = await Store.CreateAsync(Key("ferry"), Bytes("second"), Stop);

        Assert.Equal(WriteState.AlreadyExists, outcome.State);
        Assert.Equal(Bytes("first"), (await GetAsync(Key("ferry"))).Payload.ToArray());
    }

    [Fact]
    public async Task Get_UnknownId_Nothing() => Assert.Null(await Store.GetAsync(Key("nobody"), Stop));

    [Fact]
    public async Task Update_ExpectedRevision_GrowsRevisionAndKeepsCreateTime()
    {
        DateTimeOffset created = Clock.GetUtcNow();
        await Store.CreateAsync(Key("ferry"), Bytes("first"), Stop);
        Clock.Advance(TimeSpan.FromTicks(3));

        WriteOutcome outcome = await Store.UpdateAsync(Key("ferry"), Bytes("second"), 1, Stop);

        Assert.Equal(WriteState.Written, outcome.State);
        StoredDocument kept = await GetAsync(Key("ferry"));
        Assert.Equal(2, kept.Revision);
        Assert.Equal(created, kept.CreateTime);
        Assert.Equal(created.AddTicks(3), kept.UpdateTime);
        Assert.Equal(Bytes("second"), kept.Payload.ToArray());
    }

    [Fact]
    public async Task Update_StaleRevision_ConflictTellsTheOneKept()
    {
        await Store.CreateAsync(Key("ferry"), Bytes("first"), Stop);
        await Store.UpdateAsync(Key("ferry"), Bytes("second"), 1, Stop);

        WriteOutcome outcome = await Store.UpdateAsync(Key("ferry"), Bytes("third"), 1, Stop);

        Assert.Equal(WriteState.RevisionConflict, outcome.State);
        Assert.Equal(2, outcome.Document!.Revision);
        Assert.Equal(Bytes("second"), (await GetAsync(Key("ferry"))).Payload.ToArray());
    }

    [Fact]
    public async Task Update_AnyRevision_Replaces()
    {
        await Store.CreateAsync(Key("ferry"), Bytes("first"), Stop);
        await Store.UpdateAsync(Key("ferry"), Bytes("second"), 0, Stop);
        WriteOutcome outcome = await Store.UpdateAsync(Key("ferry"), Bytes("third"), 0, Stop);

        Assert.Equal(3, outcome.Document!.Revision);
    }

    [Fact]
    public async Task Update_UnknownId_NotFoundAndNothingMade()
    {
        Assert.Equal(WriteState.NotFound, (await Store.UpdateAsync(Key("nobody"), Bytes("x"), 0, Stop)).State);
        Assert.Null(await Store.GetAsync(Key("nobody"), Stop));
    }

    [Fact]
    public async Task Delete_Kept_GoneAndItsIdIsFree()
    {
        await Store.CreateAsync(Key("ferry"), Bytes("first"), Stop);
        await Store.UpdateAsync(Key("ferry"), Bytes("second"), 0, Stop);

        Assert.Equal(WriteState.Written, (await Store.DeleteAsync(Key("ferry"), Stop)).State);
        Assert.Null(await Store.GetAsync(Key("ferry"), Stop));
        Assert.Equal(1, (await Store.CreateAsync(Key("ferry"), Bytes("third"), Stop)).Document!.Revision);
    }

    [Fact]
    public async Task Delete_UnknownId_NotFound() =>
        Assert.Equal(WriteState.NotFound, (await Store.DeleteAsync(Key("nobody"), Stop)).State);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(7)]
    public async Task List_PageByPage_EachOnceInOrderOfId(int pageSize)
    {
        string[] ids = ["a", "a-1", "a1", "b", "ba", "z"];
        foreach (string id in ids.Reverse())
        {
            await Store.CreateAsync(Key(id), Bytes(id), Stop);
        }

        var seen = new List<string>();
        string? after = null;
        int pages = 0;
        do
        {
            DocumentPage page = await Store.ListAsync(Team, Scenes, pageSize, after, Stop);
            Assert.InRange(page.Documents.Count, 1, pageSize);
            seen.AddRange(page.Documents.Select(d => d.Key.Id));
            after = page.NextId;
            Assert.InRange(++pages, 1, ids.Length);
        }
        while (after is not null);

        Assert.Equal(ids.Order(StringComparer.Ordinal), seen);
    }

    [Fact]
    public async Task List_NothingKept_EmptyLastPage()
    {
        DocumentPage page = await Store.ListAsync(Team, Scenes, 10, null, Stop);
        Assert.Empty(page.Documents);
        Assert.Null(page.NextId);
    }

    [Fact]
    public async Task AnyCall_OtherTeamOrCollection_SeesNothing()
    {
        await Store.CreateAsync(new DocumentKey("te", "scenes", "x"), Bytes("1"), Stop);
        await Store.CreateAsync(new DocumentKey("team2", "scenes", "x"), Bytes("2"), Stop);
        await Store.CreateAsync(new DocumentKey("team", "scene", "x"), Bytes("3"), Stop);
        await Store.CreateAsync(new DocumentKey("team", "scenes2", "x"), Bytes("4"), Stop);

        Assert.Empty((await Store.ListAsync("team", "scenes", 10, null, Stop)).Documents);
        Assert.Null(await Store.GetAsync(Key("x"), Stop));
        Assert.Equal(WriteState.NotFound, (await Store.DeleteAsync(Key("x"), Stop)).State);
        Assert.Single((await Store.ListAsync("team2", "scenes", 10, null, Stop)).Documents);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(8191)]
    [InlineData(1_500_000)]
    public async Task Create_AnyPayload_ComesBackByteForByte(int length)
    {
        byte[] payload = new byte[length];
        for (int i = 0; i < length; i++)
        {
            payload[i] = (byte)(i * 31);
        }

        await Store.CreateAsync(Key("big"), payload, Stop);
        await ReopenAsync();

        StoredDocument kept = await GetAsync(Key("big"));
        Assert.True(kept.Payload.Span.SequenceEqual(payload));
    }

    [Fact]
    public async Task Update_ManyAtOnceWithRevisions_NoneLost()
    {
        await Store.CreateAsync(Key("counter"), BitConverter.GetBytes(0), Stop);

        await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(
            async () =>
            {
                for (int done = 0; done < 25;)
                {
                    StoredDocument read = await GetAsync(Key("counter"));
                    int next = BitConverter.ToInt32(read.Payload.Span) + 1;
                    done += (await Store.UpdateAsync(Key("counter"), BitConverter.GetBytes(next), read.Revision, Stop)).State == WriteState.Written ? 1 : 0;
                }
            },
            Stop)));

        StoredDocument kept = await GetAsync(Key("counter"));
        Assert.Equal(200, BitConverter.ToInt32(kept.Payload.Span));
        Assert.Equal(201, kept.Revision);
    }

    [Fact]
    public async Task Create_SameIdAtOnce_OneWins()
    {
        WriteOutcome[] outcomes = await Task.WhenAll(Enumerable.Range(0, 16).Select(i => Store.CreateAsync(Key("only"), Bytes($"{i}"), Stop)));

        Assert.Single(outcomes, o => o.State == WriteState.Written);
        Assert.Equal(15, outcomes.Count(o => o.State == WriteState.AlreadyExists));
    }

    [Fact]
    public async Task Reopen_AfterWrites_EverythingAsAcknowledged()
    {
        await Task.WhenAll(Enumerable.Range(0, 200).Select(i => Store.CreateAsync(Key($"s-{i:000}"), Bytes($"{i}"), Stop)));
        await Store.UpdateAsync(Key("s-007"), Bytes("changed"), 1, Stop);
        await Store.DeleteAsync(Key("s-008"), Stop);

        await ReopenAsync();

        Assert.Equal(199, (await Store.ListAsync(Team, Scenes, 500, null, Stop)).Documents.Count);
        StoredDocument changed = await GetAsync(Key("s-007"));
        Assert.Equal(2, changed.Revision);
        Assert.Equal(Bytes("changed"), changed.Payload.ToArray());
    }

    [Theory]
    [InlineData("", "scenes", "x")]
    [InlineData("team/scenes", "scenes", "x")]
    [InlineData("team", "a/b", "x")]
    [InlineData("team", "scenes", "")]
    public async Task AnyCall_KeyThatCouldLeaveItsTeam_ArgumentException(string team, string collection, string id)
    {
        var key = new DocumentKey(team, collection, id);
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Store.CreateAsync(key, Bytes("x"), Stop));
        await Assert.ThrowsAnyAsync<ArgumentException>(async () => await Store.GetAsync(key, Stop));
    }

    [Fact]
    public async Task Write_AfterClose_ObjectDisposed()
    {
        await Store.DisposeAsync();
        await Assert.ThrowsAsync<ObjectDisposedException>(() => Store.CreateAsync(Key("late"), Bytes("x"), Stop));
        await Store.DisposeAsync();
    }
}
