using Grpc.Core;
using Quarterlight.Chat.Tests.Discord;
using Quarterlight.Crew;
using Quarterlight.Crew.Keeping;

namespace Quarterlight.Chat.Tests;

/// <summary>Conversations kept in the process and with the planner.</summary>
public sealed class ConversationStoreTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task RecentConversations_TooMany_ForgetsTheOneUnusedLongest()
    {
        var store = new RecentConversations(2);
        await store.WriteAsync("a", At("a"), Cancellation);
        await store.WriteAsync("b", At("b"), Cancellation);
        Assert.Equal("scenes/a", (await store.ReadAsync("a", Cancellation))?.SceneName);
        await store.WriteAsync("c", At("c"), Cancellation);

        Assert.Null(await store.ReadAsync("b", Cancellation));
        Assert.Equal(["scenes/a", "scenes/c"], [(await store.ReadAsync("a", Cancellation))!.SceneName!, (await store.ReadAsync("c", Cancellation))!.SceneName!]);
    }

    [Fact]
    public async Task PlannerConversations_TwoReplicas_TheLaterWriteWinsAndAttachmentsStay()
    {
        var shelf = new FakeShelf();
        PlannerConversations one = new(shelf), two = new(shelf);
        CrewMemory withFile = At("a") with { LastClip = ClipMemory.Of(CannedClips.Clip(), new CrewAttachment("a.wav", 1, _ => Task.FromResult(Stream.Null)), null) };
        await one.WriteAsync("x", withFile, Cancellation);

        Assert.NotNull((await one.ReadAsync("x", Cancellation))!.LastClip!.File);
        CrewMemory other = (await two.ReadAsync("x", Cancellation))!;
        Assert.Equal("scenes/a", other.SceneName);
        Assert.Null(other.LastClip!.File);

        await two.WriteAsync("x", At("b"), Cancellation);
        Assert.Equal("scenes/b", (await one.ReadAsync("x", Cancellation))!.SceneName);
        await one.WriteAsync("x", At("c"), Cancellation);
        Assert.Equal("scenes/c", (await two.ReadAsync("x", Cancellation))!.SceneName);
        Assert.Null(await two.ReadAsync("y", Cancellation));
    }

    [Fact]
    public async Task PlannerConversations_PlannerAway_GoesOnAloneAndCatchesUp()
    {
        var shelf = new FakeShelf();
        PlannerConversations one = new(shelf), two = new(shelf);
        await one.WriteAsync("x", At("a"), Cancellation);
        shelf.Away = true;
        await one.WriteAsync("x", At("b"), Cancellation);
        Assert.Equal("scenes/b", (await one.ReadAsync("x", Cancellation))!.SceneName);
        Assert.Null(await two.ReadAsync("x", Cancellation));
        shelf.Away = false;

        Assert.Equal("scenes/b", (await one.ReadAsync("x", Cancellation))!.SceneName);
        await one.WriteAsync("x", At("c"), Cancellation);
        Assert.Equal("scenes/c", (await two.ReadAsync("x", Cancellation))!.SceneName);
    }

    [Fact]
    public async Task PlannerConversations_ReadAgainWithinOneQuestion_AsksThePlannerOnce()
    {
        var shelf = new FakeShelf();
        var time = new ManualTime();
        var one = new PlannerConversations(shelf, 10, TimeSpan.FromMilliseconds(250), time);
        await new PlannerConversations(shelf).WriteAsync("x", At("a"), Cancellation);

        await one.ReadAsync("x", Cancellation);
        await one.ReadAsync("x", Cancellation);
        Assert.Equal(1, shelf.Reads);

        await new PlannerConversations(shelf).WriteAsync("x", At("b"), Cancellation);
        time.Advance(TimeSpan.FromMilliseconds(251));
        Assert.Equal("scenes/b", (await one.ReadAsync("x", Cancellation))!.SceneName);
        Assert.Equal(2, shelf.Reads);
    }

    [Fact]
    public async Task PlannerConversations_DamagedBytes_AreNoMemory()
    {
        var shelf = new FakeShelf();
        await shelf.SaveAsync("x", new byte[] { 1, 2, 3 }, Cancellation);

        Assert.Null(await new PlannerConversations(shelf).ReadAsync("x", Cancellation));
    }

    [Fact]
    public async Task PlannerConversations_CalledOff_Throws()
    {
        using var off = new CancellationTokenSource();
        await off.CancelAsync();
        var store = new PlannerConversations(new FakeShelf { Away = true });

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => store.ReadAsync("x", off.Token));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => store.WriteAsync("x", CrewMemory.Empty, off.Token));
    }

    [Theory]
    [InlineData("show me the picture")]
    [InlineData("show me the picture again")]
    public async Task AskAsync_ClipOfAKeptConversation_AsksForTheFileAgain(string question)
    {
        CrewMemory memory = CrewMemory.Empty with { LastClip = ClipMemory.Of(CannedClips.Clip(), new CrewAttachment("a.wav", 1, _ => Task.FromResult(Stream.Null)), null) };
        CrewMemory back = CrewMemoryCodec.Read(CrewMemoryCodec.Write(memory))!;
        await using FakePlanner fake = await FakePlanner.StartAsync(_ => throw FakePlanner.Invalid());

        CrewAnswer answer = await new CrewDesk(fake.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = question, Memory = back }, Cancellation);

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.Contains("send it once more", answer.Headline, StringComparison.Ordinal);
    }

    private static CrewMemory At(string scene) => CrewMemory.Empty with { SceneName = "scenes/" + scene };

    private sealed class FakeShelf : IConversationShelf
    {
        private readonly Dictionary<string, KeptConversation> kept = [];
        private long revision;

        public bool Away { get; set; }

        public int Reads { get; private set; }

        public Task<KeptConversation?> GetAsync(string conversationId, CancellationToken cancellation)
        {
            Reads++;
            return Away ? throw new RpcException(new Status(StatusCode.Unavailable, "")) : Task.FromResult(kept.GetValueOrDefault(conversationId));
        }

        public Task<long> SaveAsync(string conversationId, ReadOnlyMemory<byte> bytes, CancellationToken cancellation)
        {
            if (Away)
            {
                throw new RpcException(new Status(StatusCode.Unavailable, ""));
            }

            kept[conversationId] = new KeptConversation(bytes, ++revision);
            return Task.FromResult(revision);
        }
    }
}
