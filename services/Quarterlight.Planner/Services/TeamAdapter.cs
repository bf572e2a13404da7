using Grpc.Core;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Conversations;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>TeamService.</summary>
internal sealed class TeamAdapter(TeamSettingsDesk settings, ConversationDesk conversations) : TeamService.TeamServiceBase
{
    /// <inheritdoc/>
    public override async Task<GetTeamSettingsResponse> GetTeamSettings(GetTeamSettingsRequest request, ServerCallContext context) =>
        new() { Settings = await settings.ReadAsync(CallGuard.TeamOf(context), context.CancellationToken) };

    /// <inheritdoc/>
    public override async Task<UpdateTeamSettingsResponse> UpdateTeamSettings(UpdateTeamSettingsRequest request, ServerCallContext context) =>
        new() { Settings = await settings.WriteAsync(CallGuard.TeamOf(context), request.Settings, context.CancellationToken) };

    /// <inheritdoc/>
    public override async Task<GetConversationResponse> GetConversation(GetConversationRequest request, ServerCallContext context) =>
        new() { Conversation = await conversations.ReadAsync(CallGuard.TeamOf(context), request.ConversationId, context.CancellationToken) };

    /// <inheritdoc/>
    public override async Task<SaveConversationResponse> SaveConversation(SaveConversationRequest request, ServerCallContext context) =>
        new() { Conversation = await conversations.SaveAsync(CallGuard.TeamOf(context), request.ConversationId, request.State, context.CancellationToken) };
}
