using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>What questions about heat, run time, levels and noise have in common: car, kit, drive, memory.</summary>
internal static class Forecasts
{
    private const int MostScenes = 1;

    /// <summary>Car it is about: the one named, else the scene's, else the first kept; null when there is none.</summary>
    public static Cabin? CabinOf(Asked asked) =>
        asked.Request.Forecast.CabinName is { } named ? asked.Vocabulary.Cabins.FirstOrDefault(c => c.Name == named) : asked.Cabin ?? (asked.Vocabulary.Cabins.Count > 0 ? asked.Vocabulary.Cabins[0] : null);

    /// <summary>True when the car was neither named nor the scene's.</summary>
    public static bool CabinGuessed(Asked asked) => asked.Request.Forecast.CabinName is null && asked.Cabin is null;

    /// <summary>Kit it is about: the one named, else the scene's.</summary>
    public static Kit? KitOf(Asked asked) =>
        asked.Request.Forecast.KitName is { } named ? asked.Vocabulary.Kits.FirstOrDefault(k => k.Name == named) : asked.Vocabulary.KitOf(asked.Scene);

    /// <summary>How the car is driven: as in the scene, with what was said on top.</summary>
    public static async Task<DriveConditions> DriveAsync(Asked asked, Cabin cabin)
    {
        ConditionChanges said = asked.Request.Forecast.Noise.Drive;
        DriveConditions drive = asked.Scene?.DriveConditions ?? new DriveConditions();
        return said.IsEmpty ? drive : said.ApplyTo(drive, cabin.DriveSide != DriveSide.Right, said.Windows.Count == 0 ? [] : await WhatIfTopic.PanesAsync(asked, cabin.Name, cabin.DriveSide != DriveSide.Right).ConfigureAwait(false));
    }

    /// <summary>Changes to the scene that were said: drive, car, kit; null when there are none.</summary>
    public static async Task<SceneChanges?> ChangesAsync(Asked asked)
    {
        ForecastSaid said = asked.Request.Forecast;
        var changes = new SceneChanges { Kit = said.KitName ?? "", Cabin = said.CabinName ?? "" };
        if (!said.Noise.Drive.IsEmpty && CabinOf(asked) is { } cabin)
        {
            changes.DriveConditions = await DriveAsync(asked, cabin).ConfigureAwait(false);
        }

        return changes.CalculateSize() == 0 ? null : changes;
    }

    /// <summary>The conversation from now on, with the question to go on from.</summary>
    public static CrewMemory Remember(Asked asked) => asked.Memory with { SceneName = asked.Request.SceneName, LastForecast = new ForecastMemory(asked.Request.Intent, asked.Request.Forecast) };

    /// <summary>What was understood, with the scene it is about and another kit or car.</summary>
    public static string Understood(Asked asked, string what, string details)
    {
        string scene = asked.Scene is { } s ? $" for {Name(s.DisplayName, s.Name)}" : "";
        string kit = asked.Request.Forecast.KitName is not null && KitOf(asked) is { } k ? $" with the {Name(k.DisplayName, k.Name)}" : "";
        string cabin = asked.Request.Forecast.CabinName is not null && CabinOf(asked) is { } c ? $" in the {Name(c.DisplayName, c.Name)}" : "";
        return PlanTopic.Understood(asked, $"{what}{scene}{kit}{cabin}: {details}");
    }

    /// <summary>Other scenes that have what this one lacks, by name.</summary>
    public static IEnumerable<string> OtherScenes(Asked asked, Func<Scene, bool> has) =>
        asked.Vocabulary.Scenes.Where(s => s.Name != asked.Request.SceneName && has(s)).Take(MostScenes).Select(s => Name(s.DisplayName, s.Name));
}
