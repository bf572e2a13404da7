namespace Quarterlight.Audio;

/// <summary>What a recorder wrote beside the sound. At least one part is present.</summary>
/// <param name="Broadcast">The bext chunk (EBU Tech 3285); null when absent.</param>
/// <param name="Ixml">The iXML chunk; null when absent or not readable.</param>
public sealed record AudioMetadata(BroadcastExtension? Broadcast, IxmlMetadata? Ixml)
{
    /// <summary>
    /// First sample's count since midnight: of bext, else of iXML; null when neither says.
    /// </summary>
    public ulong? SamplesSinceMidnight => Broadcast?.TimeReferenceSamples ?? Ixml?.TimestampSamples;
}
