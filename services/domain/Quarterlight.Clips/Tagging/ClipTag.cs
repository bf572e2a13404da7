namespace Quarterlight.Clips.Tagging;

/// <summary>What a clip may be tagged with. Several may hold at once, and none need hold.</summary>
public enum ClipTag
{
    /// <summary>A combustion engine can be heard.</summary>
    Engine,

    /// <summary>Moving air outdoors or at the capsule.</summary>
    Wind,

    /// <summary>Blower, fan, air conditioning or ventilation.</summary>
    AirConditioning,

    /// <summary>Nothing but speech or room tone would be heard; noise 25 dB or more under the speech does not count (judgement).</summary>
    Clean,
}
