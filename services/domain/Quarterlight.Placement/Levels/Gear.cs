namespace Quarterlight.Placement.Levels;

/// <summary>What holds peaks back.</summary>
public enum LimiterKind
{
    /// <summary>None.</summary>
    None,

    /// <summary>Ahead of the converter: saves it from clipping.</summary>
    Analogue,

    /// <summary>After the converter: cannot mend what clipped before.</summary>
    Digital,
}

/// <summary>Microphone inputs of the recorder.</summary>
public sealed record RecorderGain
{
    /// <summary>Level at the input that gives full scale at 0 dB of gain, dBu, -20 to 40.</summary>
    public required double FullScaleDbu { get; init; }

    /// <summary>Least gain, dB, -30 to 60.</summary>
    public required double GainMinDb { get; init; }

    /// <summary>Most gain, dB, 0 to 100; above the least.</summary>
    public required double GainMaxDb { get; init; }

    /// <summary>Step of the gain, dB, 0.1 to 12. Default 1.</summary>
    public double GainStepDb { get; init; } = 1;

    /// <summary>Highest level an input takes at any gain, dBu, -20 to 40; null is full scale at the least gain.</summary>
    public double? MaxInputDbu { get; init; }

    /// <summary>Noise at the input, dBu, A-weighted, at high gain, -140 to -80.</summary>
    public required double InputNoiseDbu { get; init; }

    /// <summary>Full scale over the converter's own noise, dB, A-weighted, 80 to 160.</summary>
    public required double DynamicRangeDb { get; init; }

    /// <summary>What pad can be put in, dB, 0 to 40; 0 is none.</summary>
    public double PadDb { get; init; }

    /// <summary>Limiter.</summary>
    public LimiterKind Limiter { get; init; }

    /// <summary>True when it keeps 32 bit floats from converters that do not clip below the highest input level.</summary>
    public bool FloatRecording { get; init; }
}

/// <summary>What feeds an audio transmitter.</summary>
public enum TransmitterFeed
{
    /// <summary>A microphone: a bodypack or plug-on.</summary>
    Microphone,

    /// <summary>An output of the recorder: the sound sent to the follow car.</summary>
    Recorder,
}

/// <summary>How an audio transmitter carries the sound.</summary>
public enum TransmitterModulation
{
    /// <summary>Analogue FM with a compander.</summary>
    AnalogueCompanded,

    /// <summary>Analogue FM without a compander.</summary>
    Analogue,

    /// <summary>Digital: clips hard at full scale.</summary>
    Digital,
}

/// <summary>The audio side of a transmitter.</summary>
public sealed record TransmitterAudio
{
    /// <summary>Id within the kit.</summary>
    public required string Id { get; init; }

    /// <summary>What the crew calls it.</summary>
    public required string DisplayName { get; init; }

    /// <summary>What feeds it.</summary>
    public required TransmitterFeed Feed { get; init; }

    /// <summary>How it carries the sound.</summary>
    public required TransmitterModulation Modulation { get; init; }

    /// <summary>Level at its input that gives full modulation at 0 dB of gain, dBu, -60 to 30.</summary>
    public required double FullModulationDbu { get; init; }

    /// <summary>Least gain, dB, -60 to 60.</summary>
    public required double GainMinDb { get; init; }

    /// <summary>Most gain, dB, -40 to 80; not below the least.</summary>
    public required double GainMaxDb { get; init; }

    /// <summary>Step of the gain, dB, 0.1 to 12. Default 1.</summary>
    public double GainStepDb { get; init; } = 1;

    /// <summary>Full modulation over its own noise, dB, A-weighted, 30 to 140.</summary>
    public required double DynamicRangeDb { get; init; }

    /// <summary>True when it has a limiter of its own.</summary>
    public bool Limiter { get; init; }

    /// <summary>Level its receiver gives at full modulation, dBu, -60 to 30. Default -10.</summary>
    public double ReceiverOutputDbu { get; init; } = -10;
}
