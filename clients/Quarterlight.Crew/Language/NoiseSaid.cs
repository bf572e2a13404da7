namespace Quarterlight.Crew.Language;

/// <summary>What is asked about noise.</summary>
public enum NoiseAspect
{
    /// <summary>Not said: how loud it is.</summary>
    Any,

    /// <summary>How fast the scene still works.</summary>
    Fastest,

    /// <summary>What is loudest, and where.</summary>
    Loudest,

    /// <summary>The table of speeds.</summary>
    Table,
}

/// <summary>What a question says about noise; what it does not say is null or empty.</summary>
public sealed record NoiseSaid
{
    /// <summary>What is asked.</summary>
    public NoiseAspect Aspect { get; init; }

    /// <summary>Frequency asked about, Hz.</summary>
    public double? BandHz { get; init; }

    /// <summary>How the car is driven, where it differs from the scene.</summary>
    public ConditionChanges Drive { get; init; } = new();

    /// <summary>True when nothing but perhaps an aspect was said.</summary>
    public bool IsEmpty => BandHz is null && Drive.IsEmpty;

    /// <summary>This, with what it leaves open taken from the question before.</summary>
    public NoiseSaid Over(NoiseSaid before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return new NoiseSaid { Aspect = Aspect != NoiseAspect.Any ? Aspect : before.Aspect, BandHz = BandHz, Drive = Drive.Over(before.Drive) };
    }
}
