using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Conversations in the planner's TeamService. Its time of writing stands for a revision.</summary>
internal sealed class PlannerConversationShelf(CallInvoker invoker, CrewDeskOptions options) : IConversationShelf
{
    /// <summary>Longest wait: a memory that comes late would make the answer late.</summary>
    public static readonly TimeSpan Deadline = TimeSpan.FromSeconds(1);

    private const long NanosecondsPerSecond = 1_000_000_000;

    private readonly TeamService.TeamServiceClient team = new(invoker);

    /// <inheritdoc/>
    public async Task<KeptConversation?> GetAsync(string conversationId, CancellationToken cancellation)
    {
        try
        {
            GetConversationResponse response = await team.GetConversationAsync(new() { ConversationId = conversationId }, Options(cancellation)).ConfigureAwait(false);
            return response.Conversation is { } kept ? new KeptConversation(kept.State.Memory, Revision(kept.UpdateTime)) : null;
        }
        catch (RpcException e) when (e.StatusCode == StatusCode.NotFound)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public async Task<long> SaveAsync(string conversationId, ReadOnlyMemory<byte> bytes, CancellationToken cancellation)
    {
        var request = new SaveConversationRequest { ConversationId = conversationId, State = UnsafeByteOperations.UnsafeWrap(bytes) };
        return Revision((await team.SaveConversationAsync(request, Options(cancellation)).ConfigureAwait(false)).Conversation?.UpdateTime);
    }

    private CallOptions Options(CancellationToken cancellation) => new(deadline: options.Clock.GetUtcNow().UtcDateTime + Deadline, cancellationToken: cancellation);

    private static long Revision(Timestamp? time) => time is null ? 0 : (time.Seconds * NanosecondsPerSecond) + time.Nanos;
}
