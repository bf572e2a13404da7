namespace Quarterlight.Crew;

/// <summary>A file that comes with an answer, such as an exported scene.</summary>
/// <param name="FileName">Suggested file name: lower-case letters, digits, dashes and one dot.</param>
/// <param name="MediaType">Media type, such as application/json.</param>
/// <param name="Bytes">Contents; not empty.</param>
public sealed record CrewFile(string FileName, string MediaType, ReadOnlyMemory<byte> Bytes);
