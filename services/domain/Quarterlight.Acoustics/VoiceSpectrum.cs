using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>How loud a voice is, by effort, one metre in front of the mouth.</summary>
public static class VoiceSpectrum
{
    /// <summary>Headroom in dB to allow for the sample peak over the rms of close speech (judgement; the traditional allowance is 12 dB).</summary>
    public const double CrestAllowanceDb = 20;

    // Band levels 250 Hz to 8 kHz: ANSI S3.5-1997, Table 4 (octave band procedure). 125 Hz stands 3 dB below 250 Hz, as the
    // male spectrum of IEC 60268-16:2020 has it; it carries no weight in intelligibility.
    private static readonly BandLevels s_normal = new(54.23, 57.23, 59.75, 53.49, 48.80, 43.81, 38.61);
    private static readonly BandLevels s_raised = new(58.46, 61.46, 65.63, 62.34, 56.80, 51.26, 42.55);
    private static readonly BandLevels s_loud = new(61.03, 64.03, 70.33, 70.64, 65.87, 59.89, 48.87);
    private static readonly BandLevels s_shout = new(61.98, 64.98, 74.72, 79.79, 75.80, 68.89, 58.20);

    // Whisper: 40 dB(A) from memory, the shape by judgement. Without voicing the low bands are nearly empty and 1 to 4 kHz carry it.
    private static readonly BandLevels s_whisper = new(20, 23, 29, 34, 36, 33, 27);

    /// <summary>Where the spectra of every effort but the whisper come from.</summary>
    public static Provenance Provenance { get; } = new("ANSI S3.5-1997 Table 4, read through public implementations; 125 Hz by IEC 60268-16:2020 male spectrum; relaxed by ISO 9921:2003, second hand", Trust.Published);

    /// <summary>Where the spectrum of the whisper comes from.</summary>
    public static Provenance WhisperProvenance { get; } = new("about 40 dB(A) at 1 m from memory; shape by judgement: a whisper has no voiced sound, so little below 500 Hz", Trust.FromMemory);

    /// <summary>Octave band levels in dB re 20 µPa on axis at 1 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The effort is none of the six.</exception>
    public static BandLevels AtOneMetre(VocalEffort effort) => effort switch
    {
        VocalEffort.Relaxed => s_normal.Shifted(-6), // ISO 9921:2003: relaxed 54, normal 60 dB(A).
        VocalEffort.Normal => s_normal,
        VocalEffort.Raised => s_raised,
        VocalEffort.Loud => s_loud,
        VocalEffort.Shout => s_shout,
        VocalEffort.Whisper => s_whisper,
        _ => throw new ArgumentOutOfRangeException(nameof(effort), effort, "One of the six efforts."),
    };
}
