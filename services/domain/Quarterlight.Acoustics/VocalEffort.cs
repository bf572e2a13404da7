namespace Quarterlight.Acoustics;

/// <summary>How hard someone speaks.</summary>
public enum VocalEffort
{
    /// <summary>Relaxed, about 6 dB below normal (ISO 9921:2003 efforts, second hand).</summary>
    Relaxed,

    /// <summary>Normal speech, ANSI S3.5-1997.</summary>
    Normal,

    /// <summary>Raised voice, ANSI S3.5-1997.</summary>
    Raised,

    /// <summary>Loud voice, ANSI S3.5-1997.</summary>
    Loud,

    /// <summary>Shout, ANSI S3.5-1997.</summary>
    Shout,

    /// <summary>Whisper, about 40 dB(A) at 1 m (from memory). Last, so that no other value moves: <see cref="VocalEfforts"/> has the order.</summary>
    Whisper,
}
