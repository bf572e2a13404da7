namespace Quarterlight.Training.Data;

/// <summary>What a recording is used for.</summary>
public enum SoundKind
{
    /// <summary>A noise: engine, wind, fan or another.</summary>
    Noise,

    /// <summary>Clean speech, which noise is mixed under.</summary>
    Speech,

    /// <summary>Room tone.</summary>
    Quiet,
}

/// <summary>One labelled sound at 16 kHz.</summary>
/// <param name="Name">Name, such as the file's.</param>
/// <param name="Recording">Source recording; sounds of one recording never stand on both sides of a split.</param>
/// <param name="Group">Group for the tables: ac, clean-speech, engine, other, quiet, wind.</param>
/// <param name="Kind">What it is used for.</param>
/// <param name="Truth">Which tags hold.</param>
/// <param name="Licence">Licence.</param>
/// <param name="MayTrain">False when the licence is unconfirmed: tested, never trained.</param>
/// <param name="IsMade">True when it is synthesised.</param>
/// <param name="Samples">Samples at 16 kHz, full scale 1.</param>
public sealed record SourceSound(
    string Name, string Recording, string Group, SoundKind Kind, Truth Truth, string Licence, bool MayTrain, bool IsMade, float[] Samples)
{
    /// <summary>SHA-256 of the file in hexadecimal; empty when the sound is made.</summary>
    public string FileSha256 { get; init; } = "";
}
