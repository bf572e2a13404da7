namespace Quarterlight.Crew.Language;

/// <summary>A question as understood.</summary>
public sealed record CrewRequest
{
    /// <summary>What is asked for.</summary>
    public CrewIntent Intent { get; init; }

    /// <summary>Scene it is about: the one named, else the one talked about, else the last written; null when there is none.</summary>
    public string? SceneName { get; init; }

    /// <summary>True when the question itself named the scene.</summary>
    public bool SceneSaid { get; init; }

    /// <summary>Word the question calls a scene by that no scene of the team has; null when there is none.</summary>
    public string? UnknownScene { get; init; }

    /// <summary>Units asked for; null when not said.</summary>
    public UnitPreference? Units { get; init; }

    /// <summary>Talker it is about, an id of the scene; null when not said.</summary>
    public string? TalkerId { get; init; }

    /// <summary>Place it is about; null when not said.</summary>
    public SiteMention? Site { get; init; }

    /// <summary>True when the place is to be left out.</summary>
    public bool SiteRemoved { get; init; }

    /// <summary>Changed conditions.</summary>
    public ConditionChanges Conditions { get; init; } = new();

    /// <summary>Microphone kinds left out.</summary>
    public IReadOnlyList<string> RemovedMicrophoneIds { get; init; } = [];

    /// <summary>Microphone kinds to use and no other; empty when not said.</summary>
    public IReadOnlyList<string> OnlyMicrophoneIds { get; init; } = [];

    /// <summary>Microphone kinds to use in place of those the plan chose.</summary>
    public IReadOnlyList<string> InsteadMicrophoneIds { get; init; } = [];

    /// <summary>Shots left out.</summary>
    public IReadOnlyList<string> RemovedShotIds { get; init; } = [];

    /// <summary>Another car, by resource name.</summary>
    public string? CabinName { get; init; }

    /// <summary>Another kit, by resource name.</summary>
    public string? KitName { get; init; }

    /// <summary>What to show, by resource name.</summary>
    public string? ShownName { get; init; }

    /// <summary>Which runner-up, 1 or 2.</summary>
    public int RunnerUp { get; init; } = 1;

    /// <summary>True when the changes come on top of those of the last what-if.</summary>
    public bool AddsToLast { get; init; }

    /// <summary>What it says about the radio link and the wireless transmitters, with what goes on from the question before.</summary>
    public RadioSaid Radio { get; init; } = new();

    /// <summary>What it says about clips.</summary>
    public ClipSaid Clip { get; init; } = new();

    /// <summary>What it says about heat, run time, levels and noise, with what goes on from the question before.</summary>
    public ForecastSaid Forecast { get; init; } = new();

    /// <summary>True when the answer about the radio or a forecast is wanted at length.</summary>
    public bool Detailed { get; init; }

    /// <summary>What help is wanted with; empty for all.</summary>
    public string HelpTopic { get; init; } = "";

    /// <summary>True when anything differs from the scene as kept.</summary>
    public bool HasChanges => !Conditions.IsEmpty || SiteRemoved || RemovedMicrophoneIds.Count > 0 || OnlyMicrophoneIds.Count > 0 || InsteadMicrophoneIds.Count > 0
        || RemovedShotIds.Count > 0 || CabinName is not null || KitName is not null;
}
