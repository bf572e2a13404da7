using Quarterlight.Store;
using Quarterlight.V1;

namespace Quarterlight.Planner.Library;

/// <summary>All that a team keeps.</summary>
internal sealed class TeamLibrary(IDocumentStore store)
{
    private readonly DocumentCache _cache = new();

    public Library<V1.Cabin> Cabins => field ??= new(ResourceKinds.Cabins, store, _cache);

    public Library<Kit> Kits => field ??= new(ResourceKinds.Kits, store, _cache);

    public Library<Scene> Scenes => field ??= new(ResourceKinds.Scenes, store, _cache);

    public Library<Plan> Plans => field ??= new(ResourceKinds.Plans, store, _cache);

    /// <summary>Names of the scenes that satisfy a condition.</summary>
    public async Task<List<string>> ScenesWhereAsync(string team, Func<Scene, bool> condition, CancellationToken cancellation)
    {
        var names = new List<string>();
        await foreach (Scene scene in Scenes.AllAsync(team, cancellation).ConfigureAwait(false))
        {
            if (condition(scene))
            {
                names.Add(scene.Name);
            }
        }

        return names;
    }
}
