namespace Quarterlight.Audio;

/// <summary>
/// Bounds of what is read. The defaults are this project's own choice (no source): they hold any test clip a crew sends and keep
/// one upload from taking the machine.
/// </summary>
public sealed record AudioLimits
{
    /// <summary>The defaults.</summary>
    public static AudioLimits Default { get; } = new();

    /// <summary>Most bytes of a file; 200 MB, counted as 200 x 1024 x 1024.</summary>
    public long MaxBytes { get; init; } = 200L * 1024 * 1024;

    /// <summary>Longest sound; 30 minutes.</summary>
    public TimeSpan MaxDuration { get; init; } = TimeSpan.FromMinutes(30);

    /// <summary>Most channels; 16.</summary>
    public int MaxChannels { get; init; } = 16;

    /// <summary>Lowest sample rate in Hz, inclusive; 8 000.</summary>
    public int MinSampleRateHz { get; init; } = 8_000;

    /// <summary>Highest sample rate in Hz, inclusive; 192 000.</summary>
    public int MaxSampleRateHz { get; init; } = 192_000;

    /// <summary>Most bytes of one metadata chunk; 1 MiB. A larger one is left out with a remark.</summary>
    public int MaxMetadataBytes { get; init; } = 1024 * 1024;

    /// <summary>Longest wait for the next byte of the source, or of a decoding program; 30 s.</summary>
    public TimeSpan IdleLimit { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Longest time a decoding program may keep the reader waiting in all; 5 minutes.</summary>
    public TimeSpan DecoderTimeLimit { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>Full path of the ffmpeg program; null looks for it on PATH.</summary>
    public string? FfmpegPath { get; init; }

    /// <summary>The clock the waits are measured with.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;
}
