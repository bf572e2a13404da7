using Grpc.Core;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>CabinService.</summary>
internal sealed class CabinAdapter(TeamLibrary library) : CabinService.CabinServiceBase
{
    /// <inheritdoc/>
    public override async Task<CreateCabinResponse> CreateCabin(CreateCabinRequest request, ServerCallContext context)
    {
        Check(request.Cabin);
        return new() { Cabin = await library.Cabins.CreateAsync(CallGuard.TeamOf(context), request.CabinId, request.Cabin, context.CancellationToken) };
    }

    /// <inheritdoc/>
    public override async Task<GetCabinResponse> GetCabin(GetCabinRequest request, ServerCallContext context) =>
        new() { Cabin = await library.Cabins.GetAsync(CallGuard.TeamOf(context), request.Name, context.CancellationToken) };

    /// <inheritdoc/>
    public override async Task<ListCabinsResponse> ListCabins(ListCabinsRequest request, ServerCallContext context)
    {
        (IReadOnlyList<V1.Cabin> page, string next) = await library.Cabins.ListAsync(CallGuard.TeamOf(context), request.PageSize, request.PageToken, context.CancellationToken);
        return new() { Cabins = { page }, NextPageToken = next };
    }

    /// <inheritdoc/>
    public override async Task<UpdateCabinResponse> UpdateCabin(UpdateCabinRequest request, ServerCallContext context)
    {
        Check(request.Cabin);
        return new() { Cabin = await library.Cabins.UpdateAsync(CallGuard.TeamOf(context), request.Cabin.Name, request.Cabin, request.Cabin.Revision, context.CancellationToken) };
    }

    /// <inheritdoc/>
    public override async Task<DeleteCabinResponse> DeleteCabin(DeleteCabinRequest request, ServerCallContext context)
    {
        string team = CallGuard.TeamOf(context);
        return await library.WithReferencesHeldAsync(
            async () =>
            {
                List<string> users = await library.ScenesWhereAsync(team, s => s.Cabin == request.Name, context.CancellationToken);
                if (users.Count > 0)
                {
                    throw Refusals.InUse(request.Name, users);
                }

                await library.Cabins.DeleteAsync(team, request.Name, context.CancellationToken);
                return new DeleteCabinResponse();
            },
            context.CancellationToken);
    }

    private static void Check(V1.Cabin? cabin)
    {
        var reader = new FieldReader();
        if (cabin is null)
        {
            reader.Add("cabin", "the car is missing", "Send one");
        }
        else
        {
            reader.DisplayName("cabin.display_name", cabin.DisplayName);
            CabinMapper.ToDomain(cabin, "cabin", reader);
        }

        reader.ThrowIfAny();
    }
}
