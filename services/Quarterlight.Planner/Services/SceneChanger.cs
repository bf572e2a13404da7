using Quarterlight.Placement;
using Quarterlight.Planner.Mapping;

namespace Quarterlight.Planner.Services;

/// <summary>Applies the changes of one question to copies; what is kept stays as it is.</summary>
internal static class SceneChanger
{
    public static (V1.Scene Scene, V1.Kit Kit) Apply(V1.Scene scene, V1.Kit kit, V1.SceneChanges changes)
    {
        var reader = new FieldReader();
        V1.Scene s = scene.Clone();
        V1.Kit k = kit.Clone();
        if (changes.DriveConditions is { } drive)
        {
            s.DriveConditions = drive.Clone();
        }

        for (int i = 0; i < changes.RemovedShotIds.Count; i++)
        {
            string id = changes.RemovedShotIds[i];
            if (s.Shots.FirstOrDefault(x => x.Id == id) is { } shot)
            {
                s.Shots.Remove(shot);
            }
            else
            {
                reader.Add($"changes.removed_shot_ids[{i}]", $"there is no shot \"{id}\" in this scene", Known(s.Shots.Select(x => x.Id)));
            }
        }

        foreach (V1.Shot added in changes.Shots)
        {
            if (s.Shots.FirstOrDefault(x => x.Id == added.Id) is { } replaced)
            {
                s.Shots.Remove(replaced);
            }

            s.Shots.Add(added.Clone());
        }

        for (int i = 0; i < changes.RemovedMicrophoneIds.Count; i++)
        {
            string id = changes.RemovedMicrophoneIds[i];
            if (k.Microphones.FirstOrDefault(x => x.Id == id) is { } microphone)
            {
                k.Microphones.Remove(microphone);
            }
            else
            {
                reader.Add($"changes.removed_microphone_ids[{i}]", $"there is no microphone \"{id}\" in this kit", Known(k.Microphones.Select(x => x.Id)));
            }
        }

        reader.ThrowIfAny();
        return (s, k);
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

    private static string Known(IEnumerable<string> ids) => $"Use one of: {string.Join(", ", ids)}";
}
