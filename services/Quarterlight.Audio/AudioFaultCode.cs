namespace Quarterlight.Audio;

/// <summary>The kinds of trouble a file can give.</summary>
public enum AudioFaultCode
{
    /// <summary>The bytes are something else: a picture, an archive, a document, or nothing known.</summary>
    NotAudio,

    /// <summary>The file ends before it should.</summary>
    Truncated,

    /// <summary>The file contradicts itself or its coding.</summary>
    Corrupt,

    /// <summary>Sound, but of a kind, rate or channel count that is not read.</summary>
    Unsupported,

    /// <summary>More seconds than the limit.</summary>
    TooLong,

    /// <summary>More bytes than the limit.</summary>
    TooLarge,

    /// <summary>No bytes, or no samples.</summary>
    Empty,

    /// <summary>A program that reads this kind of file is not installed.</summary>
    NoDecoder,

    /// <summary>No byte arrived for longer than the limit.</summary>
    Stalled,
}
