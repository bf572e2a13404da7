namespace Quarterlight.Audio;

/// <summary>How the samples are written in the file.</summary>
public enum SampleCoding
{
    /// <summary>Whole numbers of 16 bits; full scale is 2^15.</summary>
    Pcm16,

    /// <summary>Whole numbers of 24 bits; full scale is 2^23.</summary>
    Pcm24,

    /// <summary>Whole numbers of 32 bits; full scale is 2^31.</summary>
    Pcm32,

    /// <summary>IEEE 754 single precision; full scale is 1.0.</summary>
    FloatingPoint32,

    /// <summary>IEEE 754 double precision; full scale is 1.0.</summary>
    FloatingPoint64,

    /// <summary>Vorbis in Ogg.</summary>
    Vorbis,

    /// <summary>MPEG audio layer III.</summary>
    Mp3,

    /// <summary>Opus in Ogg.</summary>
    Opus,

    /// <summary>FLAC, read by the ffmpeg program.</summary>
    Flac,

    /// <summary>What an MPEG-4 file holds, mostly AAC, or AAC in ADTS frames; read by the ffmpeg program.</summary>
    Aac,
}
