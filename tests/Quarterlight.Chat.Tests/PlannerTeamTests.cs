using Google.Protobuf;
using Grpc.Core;
using Quarterlight.CrewBot;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>One connection, many teams.</summary>
public sealed class PlannerTeamTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task ForTeam_TwoTeamsAndNone_EachReadsItsOwn()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("quarterlight-chat-");
        try
        {
            await using IPlanner planner = await EmbeddedPlanner.StartAsync(folder.FullName, Stop);
            foreach (string word in new[] { "bot-1", "bot-2", "local" })
            {
                CallInvoker invoker = word == "local" ? planner.Invoker : planner.ForTeam(word);
                await new TeamService.TeamServiceClient(invoker).SaveConversationAsync(new() { ConversationId = "same", State = ByteString.CopyFromUtf8(word) }, cancellationToken: Stop);
            }

            foreach (string word in new[] { "bot-1", "bot-2", "local" })
            {
                GetConversationResponse read = await new TeamService.TeamServiceClient(planner.ForTeam(word)).GetConversationAsync(new() { ConversationId = "same" }, cancellationToken: Stop);
                Assert.Equal(word, read.Conversation.State.ToStringUtf8());
            }

            RpcException refused = await Assert.ThrowsAsync<RpcException>(
                () => new TeamService.TeamServiceClient(planner.ForTeam("bot-3")).GetConversationAsync(new() { ConversationId = "same" }, cancellationToken: Stop).ResponseAsync);
            Assert.Equal(StatusCode.NotFound, refused.StatusCode);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task ForTeam_SameTeam_SameInvokerAndNotThatOfAnother()
    {
        await using var planner = new RemotePlanner(new Uri("http://127.0.0.1:1"), "key");
        Assert.Same(planner.ForTeam("bot-1"), planner.ForTeam("bot-1"));
        Assert.NotSame(planner.ForTeam("bot-1"), planner.ForTeam("bot-2"));
        Assert.Throws<ArgumentException>(() => planner.ForTeam(""));
    }

    [Fact]
    public async Task ForTeam_MoreTeamsThanAreRemembered_StillAnswered()
    {
        await using var planner = new RemotePlanner(new Uri("http://127.0.0.1:1"), null);
        foreach (int i in Enumerable.Range(0, 10_000))
        {
            Assert.NotNull(planner.ForTeam($"bot-{i}"));
        }
    }
}
