using System.Net;
using System.Text;
using Google.Protobuf;
using Grpc.Core;
using Quarterlight.Planner.Conversations;
using Quarterlight.Store;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Where conversations stand: kept as they came, the old and the many dropped.</summary>
public sealed class ConversationTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("a", 1)]
    [InlineData("m:1f00ba44", 100)]
    [InlineData("C.x_y-Z:9", 262_144)]
    public async Task Conversation_SavedTwice_LastStateComesBack(string id, int size)
    {
        var random = new Random(size);
        byte[] state = new byte[size];
        random.NextBytes(state);
        await SaveAsync(id, [1, 2, 3]);
        Conversation saved = await SaveAsync(id, state);
        Assert.Equal(id, saved.ConversationId);
        Assert.NotNull(saved.UpdateTime);
        Assert.Equal(saved, await ReadAsync(id));
        Assert.Equal(state, saved.State.ToByteArray());
    }

    [Fact]
    public async Task Conversation_NeverSaved_NotFound()
    {
        Refused refused = await Refused.ByAsync(_planner.Teams.GetConversationAsync(new() { ConversationId = "never" }, cancellationToken: Stop));
        Assert.Equal(StatusCode.NotFound, refused.Code);
        Assert.Equal("conversations/never", refused.Info.Metadata["name"]);
    }

    [Fact]
    public async Task Conversation_LongestId_Taken()
    {
        string id = new('x', 128);
        await SaveAsync(id, [7]);
        Assert.Equal([7], (await ReadAsync(id)).State.ToByteArray());
    }

    [Theory]
    [InlineData("")]
    [InlineData("a/b")]
    [InlineData("../x")]
    [InlineData(".")]
    [InlineData(":a")]
    [InlineData("a b")]
    [InlineData("a\n")]
    [InlineData("a\0")]
    [InlineData("é")]
    [InlineData("\uFFFF")]
    public async Task Conversation_BadId_Named(string id)
    {
        (await Refused.ForFieldsAsync(_planner.Teams.GetConversationAsync(new() { ConversationId = id }, cancellationToken: Stop))).Names("conversation_id");
        Refused refused = await Refused.ForFieldsAsync(_planner.Teams.SaveConversationAsync(new() { ConversationId = id }, cancellationToken: Stop));
        refused.Names("conversation_id");
        refused.Names("state");
    }

    [Fact]
    public async Task Conversation_TooLongIdOrTooMuch_NamedAndNothingKept()
    {
        var much = ByteString.CopyFrom(new byte[262_145]);
        Refused refused = await Refused.ForFieldsAsync(_planner.Teams.SaveConversationAsync(new() { ConversationId = new('x', 129), State = much }, cancellationToken: Stop));
        refused.Names("conversation_id");
        refused.Names("state");
        await Refused.ForFieldsAsync(_planner.Teams.SaveConversationAsync(new() { ConversationId = "much", State = much }, cancellationToken: Stop));
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Teams.GetConversationAsync(new() { ConversationId = "much" }, cancellationToken: Stop))).Code);
    }

    [Fact]
    public async Task Conversation_OverJson_SameAsOverGrpc()
    {
        using var body = new StringContent("""{"state":"AAH/"}""", Encoding.UTF8, "application/json");
        using HttpResponseMessage saved = await _planner.Http.PutAsync("/v1/conversations/m:12345678", body, Stop);
        Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
        Assert.Equal([0, 1, 255], (await ReadAsync("m:12345678")).State.ToByteArray());
        Assert.Contains("\"AAH/\"", await _planner.Http.GetStringAsync("/v1/conversations/m:12345678", Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Conversations_ManySavedAtOnce_EachKept()
    {
        await Task.WhenAll(Enumerable.Range(0, 40).Select(i => SaveAsync($"many-{i % 20}", [(byte)(i % 20)])));
        foreach (int i in Enumerable.Range(0, 20))
        {
            Assert.Equal([(byte)i], (await ReadAsync($"many-{i}")).State.ToByteArray());
        }
    }

    [Fact]
    public async Task Desk_OlderThanThirtyDays_NotReadAndDroppedBySaveAndBySweep()
    {
        using var folder = new TempFolder();
        var clock = new TestClock();
        await using LiteDocumentStore store = LiteDocumentStore.Open(folder.Path, clock);
        using var desk = new ConversationDesk(store, clock);
        foreach (string team in new[] { "a", "a-b", "b" })
        {
            await desk.SaveAsync(team, "old", ByteString.CopyFromUtf8("x"), Stop);
        }

        clock.Advance(TimeSpan.FromDays(30));
        Assert.Equal("old", (await desk.ReadAsync("a", "old", Stop)).ConversationId);
        await desk.SaveAsync("b", "new", ByteString.CopyFromUtf8("y"), Stop);
        clock.Advance(TimeSpan.FromTicks(1));
        Assert.Equal(StatusCode.NotFound, (await Assert.ThrowsAsync<RpcException>(() => desk.ReadAsync("a", "old", Stop))).StatusCode);

        await desk.SaveAsync("b", "newer", ByteString.CopyFromUtf8("z"), Stop);
        Assert.Equal(["new", "newer"], await IdsAsync(store, "b"));
        Assert.Equal(["old"], await IdsAsync(store, "a"));

        // One that knows nothing yet, as after a start.
        using var later = new ConversationDesk(store, clock);
        await later.SweepAsync(Stop);
        Assert.Empty(await IdsAsync(store, "a"));
        Assert.Empty(await IdsAsync(store, "a-b"));
        Assert.Equal(["new", "newer"], await IdsAsync(store, "b"));
    }

    [Fact]
    public async Task Desk_MoreThanTwoThousand_OldestDroppedAndSavedAgainIsYoung()
    {
        using var folder = new TempFolder();
        var clock = new TestClock();
        await using LiteDocumentStore store = LiteDocumentStore.Open(folder.Path, clock);
        foreach (int[] together in Enumerable.Range(0, ConversationRules.MostKept).Chunk(64))
        {
            await Task.WhenAll(together.Select(i => store.CreateAsync(new DocumentKey("team", "conversations", $"c{i:0000}"), new byte[] { 1 }, Stop)));
            clock.Advance(TimeSpan.FromSeconds(1));
        }

        using var desk = new ConversationDesk(store, clock);
        await desk.SaveAsync("other", "c0001", ByteString.CopyFromUtf8("theirs"), Stop);
        await desk.SaveAsync("team", "c0000", ByteString.CopyFromUtf8("again"), Stop);
        Assert.Equal(ConversationRules.MostKept, (await IdsAsync(store, "team")).Count);
        await desk.SaveAsync("team", "new-1", ByteString.CopyFromUtf8("n"), Stop);
        await desk.SaveAsync("team", "new-2", ByteString.CopyFromUtf8("n"), Stop);

        List<string> kept = await IdsAsync(store, "team");
        Assert.Equal(ConversationRules.MostKept, kept.Count);
        Assert.Contains("c0000", kept);
        Assert.DoesNotContain("c0001", kept);
        Assert.DoesNotContain("c0002", kept);
        Assert.Contains("c0003", kept);
        Assert.Equal(["c0001"], await IdsAsync(store, "other"));
    }

    private static async Task<List<string>> IdsAsync(LiteDocumentStore store, string team) =>
        [.. (await store.ListAsync(team, "conversations", 3000, null, Stop)).Documents.Select(d => d.Key.Id)];

    private async Task<Conversation> SaveAsync(string id, byte[] state) =>
        (await _planner.Teams.SaveConversationAsync(new() { ConversationId = id, State = ByteString.CopyFrom(state) }, cancellationToken: Stop)).Conversation;

    private async Task<Conversation> ReadAsync(string id) =>
        (await _planner.Teams.GetConversationAsync(new() { ConversationId = id }, cancellationToken: Stop)).Conversation;
}
