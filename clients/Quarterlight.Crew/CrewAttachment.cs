namespace Quarterlight.Crew;

/// <summary>A file that comes with a question, wherever the transport has it. The desk only reads it, piece by piece.</summary>
/// <param name="FileName">Name for words only; any text is safe.</param>
/// <param name="ByteCount">Bytes of the file; null when the transport does not know.</param>
/// <param name="OpenAsync">
/// Opens the file at its start; the desk disposes the stream. It may be called again for a later question of the conversation, and may then fail with an <see cref="IOException"/>.
/// </param>
public sealed record CrewAttachment(string FileName, long? ByteCount, Func<CancellationToken, Task<Stream>> OpenAsync)
{
    /// <summary>Largest file that is judged, bytes: 200 MiB, as the contract says.</summary>
    public const long LargestBytes = 200L * 1024 * 1024;
}

/// <summary>How far the reading of an attachment is.</summary>
/// <param name="ByteCount">Bytes taken so far.</param>
/// <param name="JudgedSeconds">Seconds of sound judged so far.</param>
/// <param name="Fraction">Share of the file, 0 to 1; null when its size is not known.</param>
public sealed record CrewClipProgress(long ByteCount, double JudgedSeconds, double? Fraction);
