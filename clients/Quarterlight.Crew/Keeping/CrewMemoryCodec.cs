using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Google.Protobuf;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>
/// What a conversation remembers as bytes, to be kept outside this process. Layout: four letters, a version, eight bytes of a
/// SHA-256 over the rest and the shape of what is remembered, then parts of tag, length and bytes. Attachments stay behind, as they are open files of one process.
/// </summary>
public static class CrewMemoryCodec
{
    /// <summary>Most bytes that are written: 256 KiB. A larger memory loses its largest parts.</summary>
    public const int LargestBytes = 256 * 1024;

    /// <summary>Version of the layout. Bytes of another version are not read: grow it with any change to what is remembered that old bytes would get wrong.</summary>
    public const byte Version = 1;

    private const int CheckBytes = 8;
    private const int HeaderBytes = 5 + CheckBytes;
    private const int PartHeaderBytes = 5;

    private enum Part : byte
    {
        Units = 1,
        SceneName = 2,
        LastChanges = 3,
        LastForecast = 4,
        LastRadio = 5,
        ClipFacts = 6,
        Clip = 7,
        Plan = 8,
    }

    /// <summary>
    /// Sixteen digits of a SHA-256 over names and types of everything remembered as JSON. A test works it out again and tells the new one when that has changed: worked
    /// out here, it would load the description of every such type into each bot, some MB, for nothing.
    /// </summary>
    internal const string Shape = "240e794a7b489aa0";

    private static ReadOnlySpan<byte> Letters => "QLCM"u8;

    /// <summary>Writes a memory: at most <see cref="LargestBytes"/>. When it is more, the largest part is left out first; of parts alike in size the plan goes before the clip, and the clip before the rest.</summary>
    public static byte[] Write(CrewMemory memory)
    {
        ArgumentNullException.ThrowIfNull(memory);
        var parts = new SortedDictionary<Part, byte[]>();
        Add(Part.Units, memory.Units is { } units ? [(byte)units] : null);
        Add(Part.SceneName, memory.SceneName is { } scene ? Encoding.UTF8.GetBytes(scene) : null);
        Add(Part.LastChanges, memory.LastChanges?.ToByteArray());
        Add(Part.LastForecast, Json(memory.LastForecast, CrewMemoryJson.Default.ForecastMemory));
        Add(Part.LastRadio, Json(memory.LastRadio, CrewMemoryJson.Default.RadioMemory));
        Add(Part.Clip, memory.LastClip?.Report.ToByteArray());
        Add(Part.ClipFacts, memory.LastClip is { } clip ? Json(new KeptClipFacts(clip.ComparedScene, clip.Current), CrewMemoryJson.Default.KeptClipFacts) : null);
        Add(Part.Plan, memory.Plan?.ToByteArray());
        while (HeaderBytes + parts.Values.Sum(p => (long)PartHeaderBytes + p.Length) > LargestBytes)
        {
            Part largest = parts.OrderByDescending(p => p.Value.Length).ThenByDescending(p => p.Key).First().Key;
            parts.Remove(largest);
            if (largest is Part.Clip or Part.ClipFacts)
            {
                parts.Remove(Part.Clip);
                parts.Remove(Part.ClipFacts);
            }
        }

        return Joined(parts);

        void Add(Part part, byte[]? bytes)
        {
            if (bytes is not null)
            {
                parts.Add(part, bytes);
            }
        }
    }

    /// <summary>Reads a memory; null when the bytes are damaged, of another version or not a memory at all. Never throws.</summary>
    public static CrewMemory? Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length is < HeaderBytes or > LargestBytes || !bytes.StartsWith(Letters) || bytes[Letters.Length] != Version)
        {
            return null;
        }

        ReadOnlySpan<byte> rest = bytes[HeaderBytes..];
        if (!Check(rest).AsSpan().SequenceEqual(bytes.Slice(Letters.Length + 1, CheckBytes)))
        {
            return null;
        }

        try
        {
            return Parts(rest) is { } parts ? Memory(parts) : null;
        }
        catch (Exception e) when (e is JsonException or InvalidProtocolBufferException or ArgumentException or FormatException or InvalidOperationException or NotSupportedException or OverflowException)
        {
            return null;
        }
    }

    private static CrewMemory? Memory(Dictionary<Part, byte[]> parts)
    {
        CrewMemory memory = CrewMemory.Empty;
        ClipReport? report = null;
        KeptClipFacts? facts = null;
        foreach ((Part part, byte[] bytes) in parts)
        {
            switch (part)
            {
                case Part.Units when bytes.Length == 1 && Enum.IsDefined((UnitPreference)bytes[0]):
                    memory = memory with { Units = (UnitPreference)bytes[0] };
                    break;
                case Part.SceneName:
                    memory = memory with { SceneName = Encoding.UTF8.GetString(bytes) };
                    break;
                case Part.LastChanges:
                    memory = memory with { LastChanges = SceneChanges.Parser.ParseFrom(bytes) };
                    break;
                case Part.LastForecast:
                    memory = memory with { LastForecast = JsonSerializer.Deserialize(bytes, CrewMemoryJson.Default.ForecastMemory) };
                    break;
                case Part.LastRadio:
                    memory = memory with { LastRadio = JsonSerializer.Deserialize(bytes, CrewMemoryJson.Default.RadioMemory) };
                    break;
                case Part.Clip:
                    report = ClipReport.Parser.ParseFrom(bytes);
                    break;
                case Part.ClipFacts:
                    facts = JsonSerializer.Deserialize(bytes, CrewMemoryJson.Default.KeptClipFacts);
                    break;
                case Part.Plan:
                    memory = memory with { Plan = Plan.Parser.ParseFrom(bytes) };
                    break;
                default:
                    return null;
            }
        }

        return (report is null) != (facts is null) ? null
            : report is null ? memory : memory with { LastClip = ClipMemory.Kept(report, facts!.ComparedScene, facts.Current) };
    }

    private static Dictionary<Part, byte[]>? Parts(ReadOnlySpan<byte> rest)
    {
        var parts = new Dictionary<Part, byte[]>();
        while (rest.Length > 0)
        {
            if (rest.Length < PartHeaderBytes)
            {
                return null;
            }

            int length = BinaryPrimitives.ReadInt32LittleEndian(rest[1..]);
            if (length < 0 || length > rest.Length - PartHeaderBytes || !parts.TryAdd((Part)rest[0], rest.Slice(PartHeaderBytes, length).ToArray()))
            {
                return null;
            }

            rest = rest[(PartHeaderBytes + length)..];
        }

        return parts;
    }

    private static byte[] Joined(SortedDictionary<Part, byte[]> parts)
    {
        byte[] all = new byte[HeaderBytes + parts.Values.Sum(p => PartHeaderBytes + p.Length)];
        Letters.CopyTo(all);
        all[Letters.Length] = Version;
        Span<byte> rest = all.AsSpan(HeaderBytes);
        foreach ((Part part, byte[] bytes) in parts)
        {
            rest[0] = (byte)part;
            BinaryPrimitives.WriteInt32LittleEndian(rest[1..], bytes.Length);
            bytes.CopyTo(rest[PartHeaderBytes..]);
            rest = rest[(PartHeaderBytes + bytes.Length)..];
        }

        Check(all.AsSpan(HeaderBytes)).CopyTo(all.AsSpan(Letters.Length + 1));
        return all;
    }

    /// <summary>The bytes that seal parts: over them and over the shape of what is remembered, so that bytes of a program that remembers other things are not read.</summary>
    internal static byte[] Check(ReadOnlySpan<byte> rest)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.ASCII.GetBytes(Shape));
        hash.AppendData(rest);
        return hash.GetHashAndReset()[..CheckBytes];
    }

    private static byte[]? Json<T>(T? value, JsonTypeInfo<T> type)
        where T : class => value is null ? null : JsonSerializer.SerializeToUtf8Bytes(value, type);
}
