using Grpc.Core;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>SceneService. A scene is kept only when it could be planned: in its car, with its kit.</summary>
internal sealed class SceneAdapter(TeamLibrary library) : SceneService.SceneServiceBase
{
    /// <inheritdoc/>
    public override async Task<CreateSceneResponse> CreateScene(CreateSceneRequest request, ServerCallContext context)
    {
        string team = CallGuard.TeamOf(context);
        return await library.WithReferencesHeldAsync(
            async () =>
            {
                await CheckAsync(team, request.Scene, context.CancellationToken);
                return new CreateSceneResponse { Scene = await library.Scenes.CreateAsync(team, request.SceneId, request.Scene, context.CancellationToken) };
            },
            context.CancellationToken);
    }

    /// <inheritdoc/>
    public override async Task<GetSceneResponse> GetScene(GetSceneRequest request, ServerCallContext context) =>
        new() { Scene = await library.Scenes.GetAsync(CallGuard.TeamOf(context), request.Name, context.CancellationToken) };

    /// <inheritdoc/>
    public override async Task<ListScenesResponse> ListScenes(ListScenesRequest request, ServerCallContext context)
    {
        (IReadOnlyList<Scene> page, string next) = await library.Scenes.ListAsync(CallGuard.TeamOf(context), request.PageSize, request.PageToken, context.CancellationToken);
        return new() { Scenes = { page }, NextPageToken = next };
    }

    /// <inheritdoc/>
    public override async Task<UpdateSceneResponse> UpdateScene(UpdateSceneRequest request, ServerCallContext context)
    {
        string team = CallGuard.TeamOf(context);
        return await library.WithReferencesHeldAsync(
            async () =>
            {
                await CheckAsync(team, request.Scene, context.CancellationToken);
                return new UpdateSceneResponse { Scene = await library.Scenes.UpdateAsync(team, request.Scene.Name, request.Scene, request.Scene.Revision, context.CancellationToken) };
            },
            context.CancellationToken);
    }

    /// <inheritdoc/>
    public override async Task<DeleteSceneResponse> DeleteScene(DeleteSceneRequest request, ServerCallContext context)
    {
        await library.Scenes.DeleteAsync(CallGuard.TeamOf(context), request.Name, context.CancellationToken);
        return new();
    }

    private async Task CheckAsync(string team, Scene? scene, CancellationToken cancellation)
    {
        var reader = new FieldReader();
        if (scene is null)
        {
            reader.Add("scene", "the scene is missing", "Send one");
            reader.ThrowIfAny();
        }

        reader.DisplayName("scene.display_name", scene!.DisplayName);
        V1.Cabin? cabin = await NamedAsync(library.Cabins, team, scene.Cabin, "cabin", reader, cancellation);
        Kit? kit = await NamedAsync(library.Kits, team, scene.Kit, "kit", reader, cancellation);
        reader.ThrowIfAny();
        PlanningInput.From(scene, cabin!, kit!);
    }

    private static async Task<T?> NamedAsync<T>(Library<T> kept, string team, string name, string field, FieldReader reader, CancellationToken cancellation)
        where T : class, Google.Protobuf.IMessage<T>, Google.Protobuf.IDeepCloneable<T>
    {
        if (name.Length == 0)
        {
            reader.Add($"scene.{field}", "the name is missing", $"Use {field}s/ and the id of a kept one");
            return null;
        }

        T? found = await kept.FindAsync(team, name, cancellation, $"scene.{field}");
        if (found is null)
        {
            reader.Add($"scene.{field}", $"there is no {name}", "Create it first, or name another");
        }

        return found;
    }
}
