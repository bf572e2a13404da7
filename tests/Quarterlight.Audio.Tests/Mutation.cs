using CsCheck;

namespace Quarterlight.Audio.Tests;

/// <summary>Damage to a file: bytes changed, cut out, doubled, cut off.</summary>
internal static class Mutation
{
    /// <summary>A few kinds of damage at places given as shares of the length; the head of a file is hit more often.</summary>
    public static Gen<Func<byte[], byte[]>> Any { get; } =
        Gen.Select(Gen.Int[0, 5], Gen.Double[0, 1], Gen.Byte, Gen.Int[1, 400]).Array[1, 4].Select(hits => new Func<byte[], byte[]>(file =>
        {
            byte[] damaged = (byte[])file.Clone();
            foreach ((int kind, double share, byte value, int count) in hits)
            {
                damaged = Hit(damaged, kind, share, value, count);
            }

            return damaged;
        }));

    private static byte[] Hit(byte[] file, int kind, double share, byte value, int count)
    {
        if (file.Length == 0)
        {
            return file;
        }

        int at = Math.Min((int)(file.Length * (kind % 2 == 0 ? share : share * share * share)), file.Length - 1);
        int some = Math.Min(count, file.Length - at);
        switch (kind)
        {
            case 0 or 1:
                file[at] = value;
                return file;
            case 2 or 3:
                file[at] ^= (byte)(1 << (value % 8));
                return file;
            case 4:
                return value < 128 ? [.. file[..at], .. file[(at + some)..]] : file[..at];
            default:
                return value < 128 ? [.. file[..(at + some)], .. file[at..]] : [.. file[..at], .. Enumerable.Repeat(value, some), .. file[(at + some)..]];
        }
    }
}
