using Quarterlight.Acoustics;
using Quarterlight.Cabin;

namespace Quarterlight.Placement;

/// <summary>A kind of microphone and how many of it there are.</summary>
public sealed record Microphone
{
    /// <summary>Id within the kit.</summary>
    public required string Id { get; init; }

    /// <summary>What the crew calls it.</summary>
    public required string DisplayName { get; init; }

    /// <summary>How it hears by angle.</summary>
    public required PolarPattern Pattern { get; init; }

    /// <summary>Length of capsule and body in metres, 0.003 to 0.5.</summary>
    public required double BodyLengthM { get; init; }

    /// <summary>Largest diameter in metres, 0.002 to 0.08.</summary>
    public required double BodyDiameterM { get; init; }

    /// <summary>Sensitivity in millivolts per pascal, 0.1 to 200.</summary>
    public required double SensitivityMvPerPa { get; init; }

    /// <summary>Self-noise in dB(A) re 20 µPa, 0 to 45.</summary>
    public required double SelfNoiseDba { get; init; }

    /// <summary>Highest sound pressure level in dB it takes, 90 to 160.</summary>
    public required double MaxLevelDb { get; init; }

    /// <summary>Fixings that can hold it.</summary>
    public required Fixings Fixings { get; init; }

    /// <summary>How many there are, 1 to 32.</summary>
    public required int Count { get; init; }
}

/// <summary>What is in the sound department's bag.</summary>
public sealed record Kit
{
    /// <summary>Kinds of microphone, 1 to 24, ids distinct.</summary>
    public required IReadOnlyList<Microphone> Microphones { get; init; }

    /// <summary>How many of each single fixing there are; one not listed is not there.</summary>
    public required IReadOnlyDictionary<Fixings, int> FixingCounts { get; init; }

    /// <summary>Inputs of the recorder, 1 to 32.</summary>
    public required int RecorderInputCount { get; init; }
}
