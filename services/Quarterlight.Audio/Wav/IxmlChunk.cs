using System.Globalization;
using System.Xml;

namespace Quarterlight.Audio.Wav;

/// <summary>Reads an iXML chunk in one pass: no DTD, no outside reference, bounded size, depth and text.</summary>
internal static class IxmlChunk
{
    private const int MostDepth = 32;
    private const int MostTracks = 64;
    private const int MostTextCharacters = 4096;

    /// <summary>Reads the chunk; null when it is not well-formed XML with the root BWFXML.</summary>
    public static IxmlMetadata? Parse(byte[] chunk, int count)
    {
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersInDocument = count,
            MaxCharactersFromEntities = 1024,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
        };
        try
        {
            using var bytes = new MemoryStream(chunk, 0, WithoutPadding(chunk.AsSpan(0, count)), writable: false);
            using var xml = XmlReader.Create(bytes, settings);
            return Read(xml);
        }
        catch (Exception broken) when (broken is XmlException or ArgumentException or InvalidOperationException or NotSupportedException or IOException)
        {
            return null;
        }
    }

    private static IxmlMetadata? Read(XmlReader xml)
    {
        var path = new Stack<string>();
        var found = new Dictionary<string, string>();
        var tracks = new List<IxmlTrack>();
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element)
            {
                if (path.Count == 0 && xml.LocalName != "BWFXML" || path.Count >= MostDepth)
                {
                    return null;
                }

                if (!xml.IsEmptyElement)
                {
                    path.Push(path.Count == 0 ? "" : $"{path.Peek()}/{xml.LocalName}");
                }
            }
            else if (xml.NodeType == XmlNodeType.EndElement)
            {
                if (path.Pop() == "/TRACK_LIST/TRACK")
                {
                    AddTrack(found, tracks);
                }
            }
            else if (xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA && IsWanted(path.Peek()))
            {
                string value = xml.Value.Trim();
                found.TryAdd(path.Peek(), value.Length > MostTextCharacters ? value[..MostTextCharacters] : value);
            }
        }

        return new IxmlMetadata
        {
            Project = found.GetValueOrDefault("/PROJECT"),
            Scene = found.GetValueOrDefault("/SCENE"),
            Take = found.GetValueOrDefault("/TAKE"),
            Tape = found.GetValueOrDefault("/TAPE"),
            Circled = found.GetValueOrDefault("/CIRCLED")?.ToUpperInvariant() switch { "TRUE" => true, "FALSE" => false, _ => null },
            Note = found.GetValueOrDefault("/NOTE"),
            FileUid = found.GetValueOrDefault("/FILE_UID"),
            TimestampSamples = Samples(found),
            TimestampSampleRateHz = Number(found.GetValueOrDefault("/SPEED/TIMESTAMP_SAMPLE_RATE")),
            TimecodeRate = found.GetValueOrDefault("/SPEED/TIMECODE_RATE"),
            Tracks = tracks,
        };
    }

    private static bool IsWanted(string path) => path is "/PROJECT" or "/SCENE" or "/TAKE" or "/TAPE" or "/CIRCLED" or "/NOTE" or "/FILE_UID"
        or "/SPEED/TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI" or "/SPEED/TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO" or "/SPEED/TIMESTAMP_SAMPLE_RATE"
        or "/SPEED/TIMECODE_RATE" or "/TRACK_LIST/TRACK/CHANNEL_INDEX" or "/TRACK_LIST/TRACK/INTERLEAVE_INDEX" or "/TRACK_LIST/TRACK/NAME"
        or "/TRACK_LIST/TRACK/FUNCTION";

    private static void AddTrack(Dictionary<string, string> found, List<IxmlTrack> tracks)
    {
        const string Track = "/TRACK_LIST/TRACK/";
        found.Remove(Track + "CHANNEL_INDEX", out string? channel);
        found.Remove(Track + "INTERLEAVE_INDEX", out string? interleave);
        found.Remove(Track + "NAME", out string? name);
        found.Remove(Track + "FUNCTION", out string? function);
        if (tracks.Count < MostTracks)
        {
            tracks.Add(new IxmlTrack(Number(channel), Number(interleave), name, function));
        }
    }

    private static ulong? Samples(Dictionary<string, string> found) =>
        uint.TryParse(found.GetValueOrDefault("/SPEED/TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO"), NumberStyles.None, CultureInfo.InvariantCulture, out uint low)
        && uint.TryParse(found.GetValueOrDefault("/SPEED/TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI", "0"), NumberStyles.None, CultureInfo.InvariantCulture, out uint high)
            ? (ulong)high << 32 | low
            : null;

    private static int? Number(string? text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? value : null;

    // Recorders fill the chunk up with zeros; the last character keeps its own zero bytes.
    private static int WithoutPadding(ReadOnlySpan<byte> chunk)
    {
        int unit = chunk.Length < 4 ? 1
            : chunk.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE, 0, 0]) || chunk.StartsWith((ReadOnlySpan<byte>)[(byte)'<', 0, 0, 0]) ? 4
            : chunk.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || chunk.StartsWith((ReadOnlySpan<byte>)[(byte)'<', 0]) ? 2
            : 1;
        int used = chunk.LastIndexOfAnyExcept((byte)0) + 1;
        return Math.Min((used + unit - 1) / unit * unit, chunk.Length);
    }
}
