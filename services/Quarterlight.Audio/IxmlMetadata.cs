namespace Quarterlight.Audio;

/// <summary>
/// The iXML chunk: root BWFXML, every element optional. SCENE, TAPE, TAKE, PROJECT and FILE_UID as the open specification names them;
/// the other element names are from memory.
/// </summary>
public sealed record IxmlMetadata
{
    /// <summary>Production (PROJECT); null when absent.</summary>
    public string? Project { get; init; }

    /// <summary>Scene (SCENE); null when absent.</summary>
    public string? Scene { get; init; }

    /// <summary>Take (TAKE), as text: crews write "3" and "3PU"; null when absent.</summary>
    public string? Take { get; init; }

    /// <summary>Tape or roll (TAPE); null when absent.</summary>
    public string? Tape { get; init; }

    /// <summary>Whether the take is circled (CIRCLED); null when absent or neither TRUE nor FALSE.</summary>
    public bool? Circled { get; init; }

    /// <summary>Note (NOTE); null when absent.</summary>
    public string? Note { get; init; }

    /// <summary>Identity of the file (FILE_UID); null when absent.</summary>
    public string? FileUid { get; init; }

    /// <summary>Samples from midnight to the first sample (SPEED: both words of TIMESTAMP_SAMPLES_SINCE_MIDNIGHT); null when absent.</summary>
    public ulong? TimestampSamples { get; init; }

    /// <summary>Rate those samples are counted at, Hz (SPEED: TIMESTAMP_SAMPLE_RATE); null when absent.</summary>
    public int? TimestampSampleRateHz { get; init; }

    /// <summary>Frame rate of the timecode as written, such as "25/1" (SPEED: TIMECODE_RATE); null when absent.</summary>
    public string? TimecodeRate { get; init; }

    /// <summary>Tracks in the order written (TRACK_LIST); at most 64.</summary>
    public IReadOnlyList<IxmlTrack> Tracks { get; init; } = [];
}
