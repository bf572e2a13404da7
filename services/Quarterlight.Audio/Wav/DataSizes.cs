using System.Buffers.Binary;

namespace Quarterlight.Audio.Wav;

/// <summary>The ds64 chunk of RF64 and BW64 files (EBU Tech 3306, ITU-R BS.2088): sizes too large for 32 bits.</summary>
internal sealed class DataSizes
{
    /// <summary>Bytes of the chunk before its table.</summary>
    public const int FixedBytes = 28;

    private readonly Dictionary<uint, ulong> _table = [];

    private DataSizes(ulong data) => Data = data;

    /// <summary>Bytes of the data chunk.</summary>
    public ulong Data { get; }

    /// <summary>Reads the chunk.</summary>
    /// <exception cref="AudioFaultException">The chunk is too short for what it says.</exception>
    public static DataSizes Parse(ReadOnlySpan<byte> chunk)
    {
        if (chunk.Length < FixedBytes)
        {
            throw Faults.Corrupt("The chunk of large sizes (ds64) is shorter than 28 bytes");
        }

        var sizes = new DataSizes(BinaryPrimitives.ReadUInt64LittleEndian(chunk[8..]));
        uint entries = BinaryPrimitives.ReadUInt32LittleEndian(chunk[24..]);
        if (entries > (uint)(chunk.Length - FixedBytes) / 12)
        {
            throw Faults.Corrupt("The chunk of large sizes (ds64) is shorter than its table");
        }

        for (int i = 0; i < (int)entries; i++)
        {
            ReadOnlySpan<byte> entry = chunk[(FixedBytes + (12 * i))..];
            sizes._table[BinaryPrimitives.ReadUInt32LittleEndian(entry)] = BinaryPrimitives.ReadUInt64LittleEndian(entry[4..]);
        }

        return sizes;
    }

    /// <summary>Size of a chunk whose own field says "look there"; null when the table does not hold it.</summary>
    public ulong? SizeOf(uint chunkId) => _table.TryGetValue(chunkId, out ulong size) ? size : null;
}
