using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew;

/// <summary>What one conversation remembers between questions. Immutable; every answer carries the next one.</summary>
public sealed record CrewMemory
{
    /// <summary>Nothing remembered.</summary>
    public static CrewMemory Empty { get; } = new();

    /// <summary>Resource name of the scene talked about, scenes/{scene}; null when none was named yet.</summary>
    public string? SceneName { get; init; }

    /// <summary>Plan in force for that scene; null before the first plan.</summary>
    public Plan? Plan { get; init; }

    /// <summary>Changes of the last what-if, so that "and in the rain?" can add to them; null when there was none.</summary>
    public SceneChanges? LastChanges { get; init; }

    /// <summary>The last question about the radio, so that "and at 200 m?" goes on from it; null when something else is talked about.</summary>
    public RadioMemory? LastRadio { get; init; }

    /// <summary>The last question about heat, run time, levels or noise, so that "and in shade?" goes on from it; null when something else is talked about.</summary>
    public ForecastMemory? LastForecast { get; init; }

    /// <summary>The clip judged last; null before the first.</summary>
    public ClipMemory? LastClip { get; init; }

    /// <summary>Units the conversation settled on; null when nobody said.</summary>
    public UnitPreference? Units { get; init; }

    /// <summary>The conversation at a scene, without what was remembered of the last one, which would mislead.</summary>
    /// <param name="sceneName">The scene, scenes/{scene}; null for none.</param>
    internal CrewMemory At(string? sceneName) => this with { SceneName = sceneName, Plan = null, LastChanges = null, LastRadio = null, LastForecast = null };
}

/// <summary>A question about the radio, remembered.</summary>
/// <param name="Intent">What was asked.</param>
/// <param name="Said">What was said with it.</param>
public sealed record RadioMemory(CrewIntent Intent, RadioSaid Said);

/// <summary>A question about heat, run time, levels or noise, remembered.</summary>
/// <param name="Intent">What was asked.</param>
/// <param name="Said">What was said with it.</param>
public sealed record ForecastMemory(CrewIntent Intent, ForecastSaid Said);
