namespace Quarterlight.Audio;

/// <summary>One track of an iXML track list.</summary>
/// <param name="ChannelIndex">The recorder's own number of the track (CHANNEL_INDEX), as written; null when absent.</param>
/// <param name="InterleaveIndex">Place among the file's channels, from 1 (INTERLEAVE_INDEX); null when absent.</param>
/// <param name="Name">Name given by the crew (NAME); null when absent.</param>
/// <param name="Function">Use of the track (FUNCTION); null when absent.</param>
public sealed record IxmlTrack(int? ChannelIndex, int? InterleaveIndex, string? Name, string? Function);
