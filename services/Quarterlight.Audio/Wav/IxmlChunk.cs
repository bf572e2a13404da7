using System.Globalization;
using System.Text;
using System.Xml;

namespace Quarterlight.Audio.Wav;

/// <summary>Reads an iXML chunk in one pass: no DTD, no outside reference, bounded size, depth and text.</summary>
internal static class IxmlChunk
{
    private const int MostDepth = 32;
    private const int MostTracks = 64;
    private const int MostTextCharacters = 4096;
    private const int MostNameCharacters = 64;
    private const string Elsewhere = "?";

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
        var found = new Dictionary<string, StringBuilder>();
        var closed = new HashSet<string>();
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
                    path.Push(path.Count == 0 ? "" : Below(path.Peek(), xml.LocalName));
                }
            }
            else if (xml.NodeType == XmlNodeType.EndElement)
            {
                string ended = path.Pop();
                if (IsWanted(ended))
                {
                    closed.Add(ended);
                }

                if (ended == "/TRACK_LIST/TRACK")
                {
                    AddTrack(found, tracks);
                    closed.RemoveWhere(p => p.StartsWith(ended, StringComparison.Ordinal));
                }
            }
            else if (xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA && IsWanted(path.Peek()) && !closed.Contains(path.Peek()))
            {
                // A text may come in several nodes; an element that comes twice counts once.
                if (!found.TryGetValue(path.Peek(), out StringBuilder? text))
                {
                    found[path.Peek()] = text = new StringBuilder();
                }

                ReadOnlySpan<char> value = xml.Value;
                text.Append(value[..Math.Min(value.Length, MostTextCharacters - text.Length)]);
            }
        }

        return new IxmlMetadata
        {
            Project = Text(found, "/PROJECT"),
            Scene = Text(found, "/SCENE"),
            Take = Text(found, "/TAKE"),
            Tape = Text(found, "/TAPE"),
            Circled = Text(found, "/CIRCLED")?.ToUpperInvariant() switch { "TRUE" => true, "FALSE" => false, _ => null },
            Note = Text(found, "/NOTE"),
            FileUid = Text(found, "/FILE_UID"),
            TimestampSamples = Samples(found),
            TimestampSampleRateHz = Number(Text(found, "/SPEED/TIMESTAMP_SAMPLE_RATE")),
            TimecodeRate = Text(found, "/SPEED/TIMECODE_RATE"),
            Tracks = tracks,
        };
    }

    // Paths are put together only on the way to a wanted one: names are as long and as many as a file likes.
    private static string Below(string path, string name) => (path, name) switch
    {
        ("" or "/SPEED" or "/TRACK_LIST" or "/TRACK_LIST/TRACK", { Length: <= MostNameCharacters }) => $"{path}/{name}",
        _ => Elsewhere,
    };

    private static bool IsWanted(string path) => path is "/PROJECT" or "/SCENE" or "/TAKE" or "/TAPE" or "/CIRCLED" or "/NOTE" or "/FILE_UID"
        or "/SPEED/TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI" or "/SPEED/TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO" or "/SPEED/TIMESTAMP_SAMPLE_RATE"
        or "/SPEED/TIMECODE_RATE" or "/TRACK_LIST/TRACK/CHANNEL_INDEX" or "/TRACK_LIST/TRACK/INTERLEAVE_INDEX" or "/TRACK_LIST/TRACK/NAME"
        or "/TRACK_LIST/TRACK/FUNCTION";

    private static void AddTrack(Dictionary<string, StringBuilder> found, List<IxmlTrack> tracks)
    {
        const string Track = "/TRACK_LIST/TRACK/";
        found.Remove(Track + "CHANNEL_INDEX", out StringBuilder? channel);
        found.Remove(Track + "INTERLEAVE_INDEX", out StringBuilder? interleave);
        found.Remove(Track + "NAME", out StringBuilder? name);
        found.Remove(Track + "FUNCTION", out StringBuilder? function);
        if (tracks.Count < MostTracks)
        {
            tracks.Add(new IxmlTrack(Number(channel?.ToString().Trim()), Number(interleave?.ToString().Trim()), name?.ToString().Trim(), function?.ToString().Trim()));
        }
    }

    private static string? Text(Dictionary<string, StringBuilder> found, string path) => found.GetValueOrDefault(path)?.ToString().Trim();

    private static ulong? Samples(Dictionary<string, StringBuilder> found) =>
        uint.TryParse(Text(found, "/SPEED/TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO"), NumberStyles.None, CultureInfo.InvariantCulture, out uint low)
        && uint.TryParse(Text(found, "/SPEED/TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI") ?? "0", NumberStyles.None, CultureInfo.InvariantCulture, out uint high)
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
