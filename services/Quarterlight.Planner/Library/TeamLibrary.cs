using Quarterlight.Store;
using Quarterlight.V1;

namespace Quarterlight.Planner.Library;

/// <summary>All that a team keeps.</summary>
internal sealed class TeamLibrary(IDocumentStore store) : IDisposable
{
    private readonly DocumentCache _cache = new();
    private readonly SemaphoreSlim _references = new(1);

    public Library<V1.Cabin> Cabins => field ??= new(ResourceKinds.Cabins, store, _cache);

    public Library<Kit> Kits => field ??= new(ResourceKinds.Kits, store, _cache);

    public Library<Scene> Scenes => field ??= new(ResourceKinds.Scenes, store, _cache);

    public Library<Plan> Plans => field ??= new(ResourceKinds.Plans, store, _cache);

    public Library<TeamSettings> TeamSettings => field ??= new(ResourceKinds.TeamSettings, store, _cache);

    public Library<ClipSettings> ClipSettings => field ??= new(ResourceKinds.ClipSettings, store, _cache);

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

    /// <summary>
    /// Runs a check and the write that rests on it, one at a time: else a car could be deleted between the moment a scene was
    /// found to name it and the moment the scene is kept.
    /// </summary>
    public async Task<T> WithReferencesHeldAsync<T>(Func<Task<T>> checkAndWrite, CancellationToken cancellation)
    {
        await _references.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            return await checkAndWrite().ConfigureAwait(false);
        }
        finally
        {
            _references.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _references.Dispose();
}
