namespace Quarterlight.Radio.Reception;

/// <summary>What a transmitter sends: <see cref="AnalogueFm"/> or <see cref="DigitalLink"/>.</summary>
public abstract record Emission
{
    /// <summary>Width of the receiver's filter in kHz: noise and co-channel signals count inside it.</summary>
    public abstract double FilterBandwidthKHz { get; init; }
}

/// <summary>Analogue frequency modulation.</summary>
public sealed record AnalogueFm : Emission
{
    /// <summary>Peak deviation in kHz, 1 to 150.</summary>
    public double DeviationKHz { get; init; } = 75;

    /// <summary>Highest audio frequency in kHz, 2 to 20.</summary>
    public double AudioBandwidthKHz { get; init; } = 15;

    /// <summary>De-emphasis in microseconds, 0 to 100; 0 is none.</summary>
    public double DeEmphasisMicroseconds { get; init; } = 50;

    /// <summary>Receiver's filter in kHz, 5 to 400.</summary>
    public override double FilterBandwidthKHz { get; init; } = 200;

    /// <summary>True for pilot-tone stereo.</summary>
    public bool Stereo { get; init; }

    /// <summary>Audio signal over noise in dB that the listeners want, 20 to 60.</summary>
    public double TargetSnrDb { get; init; } = 40;
}

/// <summary>A digital link.</summary>
public sealed record DigitalLink : Emission
{
    /// <summary>Carrier over noise in dB it needs, -5 to 40.</summary>
    public required double RequiredCnDb { get; init; }

    /// <summary>Occupied bandwidth in kHz, 5 to 20000.</summary>
    public required override double FilterBandwidthKHz { get; init; }

    /// <summary>Delay of the system in milliseconds, 0 to 500; null when not known.</summary>
    public double? LatencyMs { get; init; }
}
