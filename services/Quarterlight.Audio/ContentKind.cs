namespace Quarterlight.Audio;

/// <summary>Kinds of file that are read.</summary>
internal enum ContentKind
{
    /// <summary>RIFF, RF64 or BW64 of form WAVE.</summary>
    Wave,

    /// <summary>Vorbis in Ogg.</summary>
    OggVorbis,

    /// <summary>Opus in Ogg.</summary>
    OggOpus,

    /// <summary>MPEG audio layer III, with or without an ID3 tag before it.</summary>
    Mp3,

    /// <summary>FLAC in its own container.</summary>
    Flac,

    /// <summary>ISO base media: M4A, MP4.</summary>
    Mpeg4,

    /// <summary>AAC in ADTS frames.</summary>
    AdtsAac,
}
