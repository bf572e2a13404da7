namespace Quarterlight.Audio;

/// <summary>The bext chunk of a Broadcast Wave file: EBU Tech 3285 version 2 (May 2011), section 2.3.</summary>
public sealed record BroadcastExtension
{
    /// <summary>Free description, at most 256 characters.</summary>
    public required string Description { get; init; }

    /// <summary>Who or what made the file, at most 32 characters.</summary>
    public required string Originator { get; init; }

    /// <summary>The maker's own reference, at most 32 characters.</summary>
    public required string OriginatorReference { get; init; }

    /// <summary>Date of the recording; null when it is not a date.</summary>
    public required DateOnly? OriginationDate { get; init; }

    /// <summary>Time of day of the recording; null when it is not a time.</summary>
    public required TimeOnly? OriginationTime { get; init; }

    /// <summary>Samples from midnight to the first sample, at the file's own rate.</summary>
    public required ulong TimeReferenceSamples { get; init; }

    /// <summary>Version of the chunk: 0, 1 or 2 are published.</summary>
    public required int Version { get; init; }

    /// <summary>Integrated loudness in LUFS, steps of 0.01; null when unset or before version 2.</summary>
    public required double? LoudnessLufs { get; init; }

    /// <summary>Loudness range in LU, steps of 0.01; null when unset or before version 2.</summary>
    public required double? LoudnessRangeLu { get; init; }

    /// <summary>Largest true peak in dBTP, steps of 0.01; null when unset or before version 2.</summary>
    public required double? MaxTruePeakDbtp { get; init; }

    /// <summary>Largest momentary loudness in LUFS, steps of 0.01; null when unset or before version 2.</summary>
    public required double? MaxMomentaryLufs { get; init; }

    /// <summary>Largest short-term loudness in LUFS, steps of 0.01; null when unset or before version 2.</summary>
    public required double? MaxShortTermLufs { get; init; }

    /// <summary>Rows that say how the sound was coded, one step a row; may be empty.</summary>
    public required IReadOnlyList<string> CodingHistory { get; init; }

    /// <summary>Time from midnight to the first sample.</summary>
    /// <param name="sampleRateHz">Rate of the file, above 0.</param>
    public TimeSpan StartSinceMidnight(int sampleRateHz)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sampleRateHz);
        UInt128 ticks = (UInt128)TimeReferenceSamples * (ulong)TimeSpan.TicksPerSecond / (ulong)sampleRateHz;
        return ticks > (UInt128)TimeSpan.MaxValue.Ticks ? TimeSpan.MaxValue : new TimeSpan((long)ticks);
    }
}
