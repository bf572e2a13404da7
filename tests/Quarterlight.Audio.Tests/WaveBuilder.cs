using System.Buffers.Binary;
using System.Text;

namespace Quarterlight.Audio.Tests;

/// <summary>Writes WAVE files byte by byte, right ones and wrong ones, without any code of the reader.</summary>
internal sealed class WaveBuilder(string head = "RIFF")
{
    public static readonly byte[] PcmGuid = Convert.FromHexString("0100000000001000800000AA00389B71");
    public static readonly byte[] FloatGuid = Convert.FromHexString("0300000000001000800000AA00389B71");

    private readonly List<byte> _chunks = [];

    public WaveBuilder Chunk(string id, byte[] content, uint? size = null, bool pad = true)
    {
        _chunks.AddRange(Encoding.ASCII.GetBytes(id));
        _chunks.AddRange(U32(size ?? (uint)content.Length));
        _chunks.AddRange(content);
        if (pad && content.Length % 2 == 1)
        {
            _chunks.Add(0);
        }

        return this;
    }

    public WaveBuilder Fmt(int code, int channels, uint rateHz, int bits, byte[]? extension = null, int? blockAlign = null)
    {
        int align = blockAlign ?? channels * ((bits + 7) / 8);
        return Chunk("fmt ", [.. U16(code), .. U16(channels), .. U32(rateHz), .. U32(rateHz * (uint)align), .. U16(align), .. U16(bits), .. extension ?? []]);
    }

    public WaveBuilder Extensible(int channels, uint rateHz, int bits, int validBits, byte[] guid) =>
        Fmt(0xFFFE, channels, rateHz, bits, [.. U16(22), .. U16(validBits), .. U32(0), .. guid]);

    public WaveBuilder Raw(byte[] bytes)
    {
        _chunks.AddRange(bytes);
        return this;
    }

    public byte[] Build(uint? riffSize = null)
    {
        byte[] body = [.. _chunks];
        return [.. Encoding.ASCII.GetBytes(head), .. U32(riffSize ?? (uint)body.Length + 4), .. "WAVE"u8, .. body];
    }

    public static byte[] Bext(int version = 2, uint low = 0, uint high = 0, short[]? loudness = null, string history = "")
    {
        byte[] chunk = new byte[602 + history.Length];
        Put(chunk, 0, "Car at idle, windows up");
        Put(chunk, 256, "Recorder");
        Put(chunk, 288, "REF-0001");
        Put(chunk, 320, "2026-05-31");
        Put(chunk, 330, "13-30-00");
        BinaryPrimitives.WriteUInt32LittleEndian(chunk.AsSpan(338), low);
        BinaryPrimitives.WriteUInt32LittleEndian(chunk.AsSpan(342), high);
        BinaryPrimitives.WriteUInt16LittleEndian(chunk.AsSpan(346), (ushort)version);
        for (int i = 0; i < 5; i++)
        {
            BinaryPrimitives.WriteInt16LittleEndian(chunk.AsSpan(412 + (2 * i)), loudness?[i] ?? 0x7FFF);
        }

        Put(chunk, 602, history);
        return chunk;
    }

    public static byte[] U16(int value) => [(byte)value, (byte)(value >> 8)];

    public static byte[] U32(uint value) => [(byte)value, (byte)(value >> 8), (byte)(value >> 16), (byte)(value >> 24)];

    public static byte[] U64(ulong value) => [.. U32((uint)value), .. U32((uint)(value >> 32))];

    /// <summary>Samples of 16 bits, one after the other.</summary>
    public static byte[] Shorts(params int[] samples) => [.. samples.SelectMany(U16)];

    /// <summary>A mono file of 16 bits at 48 kHz with a given number of frames.</summary>
    public static byte[] Plain(int frames) => new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", Shorts([.. Enumerable.Range(0, frames)])).Build();

    private static void Put(byte[] chunk, int at, string text) => Encoding.ASCII.GetBytes(text).CopyTo(chunk, at);
}
