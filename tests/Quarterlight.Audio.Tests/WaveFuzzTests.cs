using CsCheck;

namespace Quarterlight.Audio.Tests;

/// <summary>Any bytes: samples or a fault, never anything else, whatever the pieces.</summary>
public sealed class WaveFuzzTests
{
    private static readonly string[] Heads = ["RIFF", "RF64", "BW64"];
    private static readonly string[] Ids = ["data", "bext", "iXML", "ds64", "fmt ", "JUNK", "RIFF"];

    private static readonly Gen<byte[]> Structured =
        Gen.Select(Gen.Int[0, 2].Select(i => Heads[i]), Gen.Int[0, 3], Gen.Select(Gen.Int[0, Ids.Length - 1].Select(i => Ids[i]), Gen.Byte.Array[0, 80], Gen.OneOf(Gen.UInt, Gen.UInt[0, 90])).Array[0, 6])
            .Select((head, fmtAt, chunks) =>
            {
                var builder = new WaveBuilder(head);
                for (int i = 0; i < chunks.Length; i++)
                {
                    builder = i == fmtAt ? builder.Fmt(1, 2, 48_000, 16) : builder;
                    builder.Chunk(chunks[i].Item1, chunks[i].Item2, chunks[i].Item3);
                }

                return builder.Build();
            });

    [Fact]
    public async Task Read_AnyBytes_GivesSamplesOrAFault() =>
        await Gen.Byte.Array[0, 600].SampleAsync(ReadOrFaultAsync, iter: 3_000, threads: 1);

    [Fact]
    public async Task Read_AnyChunks_GivesSamplesOrAFault() => await Structured.SampleAsync(ReadOrFaultAsync, iter: 10_000, threads: 1);

    [Fact]
    public async Task Read_AnyPieces_GiveTheSame() =>
        await Gen.Select(Structured, Gen.Int[1, 40].Array[1, 5], Gen.Int[1, 700]).SampleAsync(
            async (file, pieces, frames) => Assert.Equal(await OutcomeAsync(file, [], 500), await OutcomeAsync(file, pieces, frames)),
            iter: 2_000, threads: 1);

    private static async Task ReadOrFaultAsync(byte[] file) => await OutcomeAsync(file, [], 64);

    /// <summary>Samples, remarks and fault of a file in one comparable text.</summary>
    internal static async Task<string> OutcomeAsync(byte[] file, int[] pieces, int bufferFrames)
    {
        var samples = new HashCode();
        try
        {
            await using IAudioReader reader = await AudioReader.OpenAsync(new ChoppyStream(file, pieces), AudioLimits.Default, CancellationToken.None);
            float[] buffer = new float[bufferFrames * reader.Format.ChannelCount];
            string fault = "";
            try
            {
                for (int frames; (frames = await reader.ReadAsync(buffer, CancellationToken.None)) > 0;)
                {
                    foreach (float sample in buffer.AsSpan(0, frames * reader.Format.ChannelCount))
                    {
                        samples.Add(sample);
                    }
                }
            }
            catch (AudioFaultException found)
            {
                fault = found.Message;
            }

            return $"{reader.Format} {reader.FramesRead} {samples.ToHashCode()} {string.Join('|', reader.Remarks)} {reader.Metadata?.Broadcast} {fault}";
        }
        catch (AudioFaultException found)
        {
            return found.Message;
        }
    }
}
