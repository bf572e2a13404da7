using Google.Protobuf;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>One kind of thing that a team keeps, and how it is read and written.</summary>
internal sealed record Shelf<T>
    where T : class, IMessage<T>, IDeepCloneable<T>
{
    /// <summary>What the crew calls it: scene, car or kit.</summary>
    public required string Word { get; init; }

    /// <summary>Before the id in a resource name, such as "cabins/".</summary>
    public required string Prefix { get; init; }

    public required Func<CancellationToken, Task<IReadOnlyList<T>>> ListAsync { get; init; }

    public required Func<string, T, CancellationToken, Task<T>> CreateAsync { get; init; }

    public required Func<T, CancellationToken, Task<T>> UpdateAsync { get; init; }

    public required Func<string, CancellationToken, Task> DeleteAsync { get; init; }

    public required Func<T, (string Name, string DisplayName, long Revision)> Label { get; init; }

    /// <summary>Takes away what the planner alone sets.</summary>
    public required Action<T> Bare { get; init; }

    /// <summary>Id within the team.</summary>
    public string IdOf(T thing) => ResourceName.IdOf(Label(thing).Name);

    /// <summary>Name to show, safe to repeat.</summary>
    public string Shown(T thing) => Wording.Wordings.Name(Label(thing).DisplayName, Label(thing).Name);

    /// <summary>A copy without what the planner alone sets.</summary>
    public T Bared(T thing)
    {
        T bare = thing.Clone();
        Bare(bare);
        return bare;
    }
}

/// <summary>The three kinds of things that a team keeps.</summary>
internal sealed class Shelves(PlannerClients planner)
{
    /// <summary>Scenes.</summary>
    public Shelf<Scene> Scenes { get; } = new()
    {
        Word = "scene",
        Prefix = "scenes/",
        ListAsync = planner.AllScenesAsync,
        CreateAsync = async (id, scene, c) => (await planner.Scenes.CreateSceneAsync(new() { SceneId = id, Scene = scene }, planner.Options(c)).ConfigureAwait(false)).Scene,
        UpdateAsync = async (scene, c) => (await planner.Scenes.UpdateSceneAsync(new() { Scene = scene }, planner.Options(c)).ConfigureAwait(false)).Scene,
        DeleteAsync = async (name, c) => await planner.Scenes.DeleteSceneAsync(new() { Name = name }, planner.Options(c)).ConfigureAwait(false),
        Label = s => (s.Name, s.DisplayName, s.Revision),
        Bare = s => (s.Name, s.Revision, s.UpdateTime) = ("", 0, null),
    };

    /// <summary>Cars.</summary>
    public Shelf<Cabin> Cars { get; } = new()
    {
        Word = "car",
        Prefix = "cabins/",
        ListAsync = planner.AllCabinsAsync,
        CreateAsync = async (id, car, c) => (await planner.Cabins.CreateCabinAsync(new() { CabinId = id, Cabin = car }, planner.Options(c)).ConfigureAwait(false)).Cabin,
        UpdateAsync = async (car, c) => (await planner.Cabins.UpdateCabinAsync(new() { Cabin = car }, planner.Options(c)).ConfigureAwait(false)).Cabin,
        DeleteAsync = async (name, c) => await planner.Cabins.DeleteCabinAsync(new() { Name = name }, planner.Options(c)).ConfigureAwait(false),
        Label = c => (c.Name, c.DisplayName, c.Revision),
        Bare = c => (c.Name, c.Revision, c.UpdateTime) = ("", 0, null),
    };

    /// <summary>Kits.</summary>
    public Shelf<Kit> Kits { get; } = new()
    {
        Word = "kit",
        Prefix = "kits/",
        ListAsync = planner.AllKitsAsync,
        CreateAsync = async (id, kit, c) => (await planner.Kits.CreateKitAsync(new() { KitId = id, Kit = kit }, planner.Options(c)).ConfigureAwait(false)).Kit,
        UpdateAsync = async (kit, c) => (await planner.Kits.UpdateKitAsync(new() { Kit = kit }, planner.Options(c)).ConfigureAwait(false)).Kit,
        DeleteAsync = async (name, c) => await planner.Kits.DeleteKitAsync(new() { Name = name }, planner.Options(c)).ConfigureAwait(false),
        Label = k => (k.Name, k.DisplayName, k.Revision),
        Bare = k => (k.Name, k.Revision, k.UpdateTime) = ("", 0, null),
    };
}
