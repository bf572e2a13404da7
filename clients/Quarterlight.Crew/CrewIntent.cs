namespace Quarterlight.Crew;

/// <summary>What the crew can ask for.</summary>
public enum CrewIntent
{
    /// <summary>Not understood.</summary>
    Unknown,

    /// <summary>A mount plan.</summary>
    Plan,

    /// <summary>Why a site was or was not chosen.</summary>
    WhySite,

    /// <summary>The plan under changed circumstances, beside the plan in force.</summary>
    WhatIf,

    /// <summary>The mount sites of the car.</summary>
    ListSites,

    /// <summary>The team's scenes.</summary>
    ListScenes,

    /// <summary>The team's cars.</summary>
    ListCabins,

    /// <summary>The team's kits.</summary>
    ListKits,

    /// <summary>One scene, car or kit.</summary>
    Show,

    /// <summary>The scene to talk about from now on.</summary>
    UseScene,

    /// <summary>The plan at length.</summary>
    Details,

    /// <summary>A runner-up plan.</summary>
    RunnerUp,

    /// <summary>Metric or imperial from now on.</summary>
    SetUnits,

    /// <summary>The invented demo data.</summary>
    LoadDemo,

    /// <summary>How far the follow car may drop back, and whether the link holds.</summary>
    LinkCheck,

    /// <summary>What may be radiated, and whether a transmitter is lawful.</summary>
    LinkLaw,

    /// <summary>The FM channels least disturbed.</summary>
    QuietChannel,

    /// <summary>Channels for several transmitters.</summary>
    Channels,

    /// <summary>Whether channels already chosen go together.</summary>
    CheckChannels,

    /// <summary>Whether a test clip can be used.</summary>
    JudgeClip,

    /// <summary>More about the clip judged last.</summary>
    ClipQuestion,

    /// <summary>The picture of a channel of the clip judged last.</summary>
    ClipPicture,

    /// <summary>The plan again with the noise measured in a clip.</summary>
    ClipReplan,

    /// <summary>From where a clip is used with care or redone.</summary>
    ClipLimits,

    /// <summary>Other limits for clips, for the whole team.</summary>
    SetClipLimits,

    /// <summary>How long a take may run before it is too hot, and how long to cool.</summary>
    HeatForecast,

    /// <summary>How long batteries and media last, and when to swap.</summary>
    RunTime,

    /// <summary>Gain, pad and safety track.</summary>
    Levels,

    /// <summary>How loud it is in the car, and how fast the scene still works.</summary>
    NoiseForecast,

    /// <summary>Where on the route the scene works.</summary>
    QuietStretches,

    /// <summary>Making, changing, removing or handing on what the team keeps.</summary>
    Keep,

    /// <summary>What the team settled on.</summary>
    Settings,

    /// <summary>What can be asked.</summary>
    Help,
}
