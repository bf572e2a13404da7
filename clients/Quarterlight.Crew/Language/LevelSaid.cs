using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>What is asked about gain.</summary>
public enum LevelAspect
{
    /// <summary>Not said: the gain sheet.</summary>
    Any,

    /// <summary>Whether the pad is needed.</summary>
    Pad,

    /// <summary>Whether something clips.</summary>
    Clips,

    /// <summary>The safety track.</summary>
    Safety,

    /// <summary>The transmitter.</summary>
    Transmitter,
}

/// <summary>What a question says about levels; what it does not say is null.</summary>
public sealed record LevelSaid
{
    /// <summary>What is asked.</summary>
    public LevelAspect Aspect { get; init; }

    /// <summary>Loudest effort to be ready for, of the talker named or of everyone.</summary>
    public VocalEffort? Effort { get; init; }

    /// <summary>Talker it is about, an id of the scene; null for everyone.</summary>
    public string? TalkerId { get; init; }

    /// <summary>Headroom wanted, dB.</summary>
    public double? HeadroomDb { get; init; }

    /// <summary>True through the transmitter, false on a cable.</summary>
    public bool? Wireless { get; init; }

    /// <summary>True when nothing but perhaps an aspect was said.</summary>
    public bool IsEmpty => (this with { Aspect = LevelAspect.Any }) == new LevelSaid();

    /// <summary>This, with what it leaves open taken from the question before.</summary>
    public LevelSaid Over(LevelSaid before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return new LevelSaid
        {
            Aspect = Aspect != LevelAspect.Any ? Aspect : before.Aspect,
            Effort = Effort ?? before.Effort,
            TalkerId = TalkerId ?? before.TalkerId,
            HeadroomDb = HeadroomDb ?? before.HeadroomDb,
            Wireless = Wireless ?? before.Wireless,
        };
    }
}
