using Google.Protobuf.Collections;
using Quarterlight.Placement;
using Quarterlight.Planner.Mapping;

namespace Quarterlight.Planner.Services;

/// <summary>A scene and kit with the changes of one question.</summary>
/// <param name="Scene">A changed copy.</param>
/// <param name="Kit">A changed copy.</param>
/// <param name="FieldNames">Where a field of the changed scene came from in the request, by its path in the scene.</param>
internal sealed record ChangedScene(V1.Scene Scene, V1.Kit Kit, IReadOnlyDictionary<string, string> FieldNames);

/// <summary>Applies the changes of one question to copies; what is kept stays as it is.</summary>
internal static class SceneChanger
{
    public static ChangedScene Apply(V1.Scene scene, V1.Kit kit, V1.SceneChanges changes)
    {
        var reader = new FieldReader();
        var names = new Dictionary<string, string>();
        V1.Scene s = scene.Clone();
        V1.Kit k = kit.Clone();
        if (changes.Cabin.Length > 0)
        {
            s.Cabin = changes.Cabin;
        }

        if (changes.Kit.Length > 0)
        {
            s.Kit = changes.Kit;
        }

        if (changes.DriveConditions is { } drive)
        {
            s.DriveConditions = drive.Clone();
            names["scene.drive_conditions"] = "changes.drive_conditions";
        }

        RemoveNamed(s.Shots, x => x.Id, changes.RemovedShotIds, "changes.removed_shot_ids", "shot", "scene", reader);
        RemoveNamed(k.Microphones, x => x.Id, changes.RemovedMicrophoneIds, "changes.removed_microphone_ids", "microphone", "kit", reader);
        AddShots(s, changes, names);
        reader.ThrowIfAny();
        return new ChangedScene(s, k, names);
    }

    /// <summary>Refuses sites left out that the car does not have: a typing error must not look like an answer.</summary>
    public static void CheckSites(V1.SceneChanges changes, PlacementTask task)
    {
        var reader = new FieldReader();
        for (int i = 0; i < changes.RemovedSiteIds.Count; i++)
        {
            string id = changes.RemovedSiteIds[i];
            if (task.Cabin.FindSite(id) is null && !task.Scene.Talkers.Any(t => BodyWorn.IdFor(t.Id) == id))
            {
                reader.Add($"changes.removed_site_ids[{i}]", $"there is no mount site \"{id}\" in this car", "Use an id that the list of mount sites gives");
            }
        }

        reader.ThrowIfAny();
    }

    private static void RemoveNamed<T>(
        RepeatedField<T> from, Func<T, string> idOf, RepeatedField<string> ids, string field, string what, string whole, FieldReader reader)
        where T : class
    {
        string known = string.Join(", ", from.Select(idOf));
        for (int i = 0; i < ids.Count; i++)
        {
            if (from.FirstOrDefault(x => idOf(x) == ids[i]) is { } found)
            {
                from.Remove(found);
            }
            else
            {
                reader.Add($"{field}[{i}]", $"there is no {what} \"{ids[i]}\" in this {whole}", known.Length == 0 ? "Leave it out" : $"Use one of: {known}");
            }
        }
    }

    private static void AddShots(V1.Scene scene, V1.SceneChanges changes, Dictionary<string, string> names)
    {
        foreach (V1.Shot added in changes.Shots)
        {
            if (scene.Shots.FirstOrDefault(x => x.Id == added.Id) is { } replaced)
            {
                scene.Shots.Remove(replaced);
            }

            scene.Shots.Add(added.Clone());
        }

        for (int i = 0; i < scene.Shots.Count; i++)
        {
            if (changes.Shots.ToList().FindLastIndex(x => x.Id == scene.Shots[i].Id) is >= 0 and int origin)
            {
                names[$"scene.shots[{i}]"] = $"changes.shots[{origin}]";
            }
        }
    }
}
