using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;

namespace Quarterlight.Planner.Services;

/// <summary>A scene with its car and kit, as sent and as the placement room takes it.</summary>
internal sealed record PlanningInput(V1.Scene Scene, V1.Cabin Cabin, V1.Kit Kit, PlacementTask Task)
{
    /// <summary>Puts kept or sent parts together and checks all of them; refuses with every violation at once.</summary>
    public static PlanningInput From(
        V1.Scene scene, V1.Cabin cabin, V1.Kit kit, IReadOnlyList<string>? removedSiteIds = null, string prefix = "", IReadOnlyDictionary<string, string>? fieldNames = null)
    {
        var reader = new FieldReader();
        CabinSpec spec = CabinMapper.ToDomain(cabin, prefix + "cabin", reader);
        bool carIsGood = reader.Violations.Count == 0;
        Kit domainKit = KitMapper.ToDomain(kit, prefix + "kit", reader);
        Scene domainScene = SceneMapper.ToDomain(scene, prefix + "scene", removedSiteIds ?? [], reader);
        if (!carIsGood)
        {
            Rename(reader, prefix, fieldNames);
            reader.ThrowIfAny();
        }

        var task = new PlacementTask(CabinBuilder.Build(spec), CabinMapper.ToNoiseCar(cabin), domainKit, domainScene);

        // The kit was checked with the contract's own paths; what the scene needs of it is checked here.
        reader.Violations.AddRange(PlacementRules.Validate(task, prefix + "scene", prefix + "kit").Where(v => !v.Field.StartsWith(prefix + "kit", StringComparison.Ordinal)));
        Rename(reader, prefix, fieldNames);
        reader.ThrowIfAny();
        return new PlanningInput(scene, cabin, kit, task);
    }

    /// <summary>A kept scene with its car and kit, with changes for one question.</summary>
    public static async Task<PlanningInput> KeptAsync(TeamLibrary library, string team, string sceneName, V1.SceneChanges? changes, CancellationToken cancellation, string field = "scene")
    {
        V1.Scene scene = await library.Scenes.GetAsync(team, sceneName, cancellation, field).ConfigureAwait(false);
        string cabinName = changes?.Cabin is { Length: > 0 } otherCabin ? otherCabin : scene.Cabin;
        string kitName = changes?.Kit is { Length: > 0 } otherKit ? otherKit : scene.Kit;
        string cabinField = cabinName == scene.Cabin ? "scene.cabin" : "changes.cabin";
        string kitField = kitName == scene.Kit ? "scene.kit" : "changes.kit";
        V1.Cabin cabin = await library.Cabins.FindAsync(team, cabinName, cancellation, cabinField).ConfigureAwait(false) ?? throw Missing(cabinField, cabinName);
        V1.Kit kit = await library.Kits.FindAsync(team, kitName, cancellation, kitField).ConfigureAwait(false) ?? throw Missing(kitField, kitName);
        return Changed(scene, cabin, kit, changes, "");
    }

    /// <summary>Parts sent whole, with changes.</summary>
    public static PlanningInput Sent(V1.SceneBundle bundle, V1.SceneChanges? changes)
    {
        if (bundle.Scene is null || bundle.Cabin is null || bundle.Kit is null)
        {
            throw Refusals.Invalid("bundle", "a part is missing", "Send scene, cabin and kit");
        }

        if (changes is { } c && (c.Cabin.Length > 0 || c.Kit.Length > 0))
        {
            throw Refusals.Invalid(c.Cabin.Length > 0 ? "changes.cabin" : "changes.kit", "a bundle brings its own car and kit", "Put the other one into the bundle");
        }

        return Changed(bundle.Scene, bundle.Cabin, bundle.Kit, changes, "bundle.");
    }

    /// <summary>A plan as kept: its own copies of scene, car and kit.</summary>
    public static async Task<PlanningInput> OfPlanAsync(TeamLibrary library, string team, string name, CancellationToken cancellation)
    {
        V1.Plan kept = await library.Plans.GetAsync(team, name, cancellation, "plan").ConfigureAwait(false);
        return From(kept.Scene, kept.Cabin, kept.Kit, kept.RemovedSiteIds);
    }

    /// <summary>Notes changes that say something where none can be made.</summary>
    /// <param name="changes">As sent.</param>
    /// <param name="what">What cannot be changed, such as "a plan".</param>
    /// <param name="remedy">The way out.</param>
    /// <param name="reader">Takes the violation.</param>
    public static void RefuseChanges(V1.SceneChanges? changes, string what, string remedy, FieldReader reader)
    {
        if (changes is not null && changes.CalculateSize() > 0)
        {
            reader.Add("changes", $"{what} takes no changes", remedy);
        }
    }

    private static PlanningInput Changed(V1.Scene scene, V1.Cabin cabin, V1.Kit kit, V1.SceneChanges? changes, string prefix)
    {
        if (changes is null)
        {
            return From(scene, cabin, kit, null, prefix);
        }

        ChangedScene changed = SceneChanger.Apply(scene, kit, changes);
        PlanningInput input = From(changed.Scene, cabin, changed.Kit, [.. changes.RemovedSiteIds], prefix, changed.FieldNames);
        SceneChanger.CheckSites(changes, input.Task);
        return input;
    }

    // What is wrong with a change is said of the change, not of the scene that it went into.
    private static void Rename(FieldReader reader, string prefix, IReadOnlyDictionary<string, string>? fieldNames)
    {
        if (fieldNames is null)
        {
            return;
        }

        for (int i = 0; i < reader.Violations.Count; i++)
        {
            string field = reader.Violations[i].Field;
            foreach ((string inScene, string inRequest) in fieldNames)
            {
                if (field.StartsWith(prefix + inScene, StringComparison.Ordinal))
                {
                    reader.Violations[i] = reader.Violations[i] with { Field = inRequest + field[(prefix.Length + inScene.Length)..] };
                }
            }
        }
    }

    private static Grpc.Core.RpcException Missing(string field, string name) =>
        Refusals.Invalid(field, $"there is no {name}", "Create it first, or name another");
}
