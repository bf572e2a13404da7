using Grpc.Core;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>KitService.</summary>
internal sealed class KitAdapter(TeamLibrary library) : KitService.KitServiceBase
{
    /// <inheritdoc/>
    public override async Task<CreateKitResponse> CreateKit(CreateKitRequest request, ServerCallContext context)
    {
        Check(request.Kit);
        return new() { Kit = await library.Kits.CreateAsync(CallGuard.TeamOf(context), request.KitId, request.Kit, context.CancellationToken) };
    }

    /// <inheritdoc/>
    public override async Task<GetKitResponse> GetKit(GetKitRequest request, ServerCallContext context) =>
        new() { Kit = await library.Kits.GetAsync(CallGuard.TeamOf(context), request.Name, context.CancellationToken) };

    /// <inheritdoc/>
    public override async Task<ListKitsResponse> ListKits(ListKitsRequest request, ServerCallContext context)
    {
        (IReadOnlyList<Kit> page, string next) = await library.Kits.ListAsync(CallGuard.TeamOf(context), request.PageSize, request.PageToken, context.CancellationToken);
        return new() { Kits = { page }, NextPageToken = next };
    }

    /// <inheritdoc/>
    public override async Task<UpdateKitResponse> UpdateKit(UpdateKitRequest request, ServerCallContext context)
    {
        Check(request.Kit);
        return new() { Kit = await library.Kits.UpdateAsync(CallGuard.TeamOf(context), request.Kit.Name, request.Kit, request.Kit.Revision, context.CancellationToken) };
    }

    /// <inheritdoc/>
    public override async Task<DeleteKitResponse> DeleteKit(DeleteKitRequest request, ServerCallContext context)
    {
        string team = CallGuard.TeamOf(context);
        return await library.WithReferencesHeldAsync(
            async () =>
            {
                List<string> users = await library.ScenesWhereAsync(team, s => s.Kit == request.Name, context.CancellationToken);
                if (users.Count > 0)
                {
                    throw Refusals.InUse(request.Name, users);
                }

                await library.Kits.DeleteAsync(team, request.Name, context.CancellationToken);
                return new DeleteKitResponse();
            },
            context.CancellationToken);
    }

    private static void Check(Kit? kit)
    {
        var reader = new FieldReader();
        if (kit is null)
        {
            reader.Add("kit", "the kit is missing", "Send one");
        }
        else
        {
            reader.DisplayName("kit.display_name", kit.DisplayName);
            KitMapper.ToDomain(kit, "kit", reader);
        }

        reader.ThrowIfAny();
    }
}
