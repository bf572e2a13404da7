using System.Buffers.Binary;

namespace Quarterlight.Fuzz;

/// <summary>Cuts a file where its format has seams: chunks, pages, frames. Damage respects them or not, as it likes.</summary>
internal static class FileParts
{
    private const int LeastFrameBytes = 24;

    /// <summary>True for RIFF, RF64 and BW64.</summary>
    public static bool IsWave(ReadOnlySpan<byte> file) =>
        file.Length >= 12 && (file.StartsWith("RIFF"u8) || file.StartsWith("RF64"u8) || file.StartsWith("BW64"u8));

    /// <summary>True for Ogg.</summary>
    public static bool IsOgg(ReadOnlySpan<byte> file) => file.StartsWith("OggS"u8);

    /// <summary>Where each part begins, from 0 on, ascending, with the length of the file last.</summary>
    public static List<int> Seams(ReadOnlySpan<byte> file)
    {
        var seams = new List<int> { 0 };
        if (IsWave(file))
        {
            for (long at = 12; at < file.Length;)
            {
                seams.Add((int)at);
                uint size = at + 8 <= file.Length ? BinaryPrimitives.ReadUInt32LittleEndian(file[((int)at + 4)..]) : 0;
                at += 8L + size + (size & 1);
            }
        }
        else if (IsOgg(file))
        {
            for (int next; (next = NextPage(file, seams[^1] + 4)) < file.Length;)
            {
                seams.Add(next);
            }
        }
        else
        {
            for (int at = LeastFrameBytes; at + 1 < file.Length; at++)
            {
                if (file[at] == 0xFF && (file[at + 1] & 0xE0) == 0xE0 && at - seams[^1] >= LeastFrameBytes)
                {
                    seams.Add(at);
                }
            }
        }

        seams.Add(file.Length);
        return seams;
    }

    /// <summary>Where the next Ogg page begins; the length when there is none.</summary>
    public static int NextPage(ReadOnlySpan<byte> file, int from)
    {
        int next = from >= file.Length ? -1 : file[from..].IndexOf("OggS"u8);
        return next < 0 ? file.Length : from + next;
    }
}
