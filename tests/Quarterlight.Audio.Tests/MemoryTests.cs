namespace Quarterlight.Audio.Tests;

/// <summary>Memory does not follow the length of a file, nor what it claims. Run alone: what is allocated is counted for the whole process.</summary>
[Collection(nameof(MemoryTests))]
public sealed class MemoryTests
{
    private const long Little = 4 * 1024 * 1024;

    [Theory]
    [InlineData("RIFF", "data", false)]
    [InlineData("RIFF", "iXML", true)]
    [InlineData("RIFF", "bext", true)]
    [InlineData("RIFF", "fmt ", true)]
    [InlineData("RF64", "ds64", true)]
    [InlineData("RIFF", "JUNK", true)]
    public async Task Read_ChunkThatClaims4GiB_AllocatesLittle(string head, string id, bool beforeFormat)
    {
        WaveBuilder builder = beforeFormat ? new WaveBuilder(head) : new WaveBuilder(head).Fmt(1, 1, 48_000, 16);
        byte[] file = builder.Chunk(id, new byte[1000], 0xFFFFFFFE).Build();
        AudioLimits limits = AudioLimits.Default with { MaxMetadataBytes = int.MaxValue };
        long before = GC.GetTotalAllocatedBytes(precise: true);
        AudioFault fault = await Reading.FaultAsync(file, limits);
        Assert.InRange(GC.GetTotalAllocatedBytes(precise: true) - before, 0, Little);
        Assert.NotEqual(AudioFaultCode.NotAudio, fault.Code);
    }

    [Theory]
    [InlineData("distinct names below a long one")]
    [InlineData("one text in many pieces")]
    public async Task Read_IxmlMadeToGrow_AllocatesAFewTimesItsSize(string how)
    {
        IEnumerable<string> pieces = Enumerable.Range(0, 40_000).Select(i => how.StartsWith("one", StringComparison.Ordinal) ? "<![CDATA[a]]>" : $"<b{i}></b{i}>");
        string element = how.StartsWith("one", StringComparison.Ordinal) ? "NOTE" : new string('a', 4_000);
        byte[] ixml = System.Text.Encoding.ASCII.GetBytes($"<BWFXML><{element}>{string.Concat(pieces)}</{element}><SCENE>7</SCENE></BWFXML>");
        byte[] file = new WaveBuilder().Chunk("iXML", ixml).Fmt(1, 1, 48_000, 16).Chunk("data", new byte[4]).Build();
        long before = GC.GetTotalAllocatedBytes(precise: true);
        Reading read = await Reading.AllAsync(file);
        Assert.InRange(GC.GetTotalAllocatedBytes(precise: true) - before, 0, 16L * file.Length);
        Assert.Equal("7", read.Metadata!.Ixml!.Scene);
    }

    [Theory]
    [InlineData(16, 24)]
    [InlineData(1, 16)]
    public async Task Read_150MBOfSound_AllocatesLittle(int channels, int bits)
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        byte[] head = new WaveBuilder().Fmt(1, channels, 48_000, bits).Chunk("data", [], uint.MaxValue).Build(uint.MaxValue);
        const long SoundBytes = 150_000_000;
        float[] buffer = new float[channels * 4096];
        long before = GC.GetTotalAllocatedBytes(precise: true);
        await using IAudioReader reader = await AudioReader.OpenAsync(new LongStream(head, SoundBytes), AudioLimits.Default, cancellation);
        while (await reader.ReadAsync(buffer, cancellation) > 0)
        {
        }

        Assert.InRange(GC.GetTotalAllocatedBytes(precise: true) - before, 0, Little);
        Assert.Equal(SoundBytes / (channels * bits / 8), reader.FramesRead);
    }

    private sealed class LongStream(byte[] head, long zeros) : MemoryStream(head)
    {
        private long _left = zeros;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            int count = Read(buffer.Span);
            if (count == 0)
            {
                count = (int)Math.Min(_left, buffer.Length);
                buffer.Span[..count].Clear();
                _left -= count;
            }

            return new ValueTask<int>(count);
        }
    }
}

/// <summary>Keeps the memory tests from running beside others.</summary>
[CollectionDefinition(nameof(MemoryTests), DisableParallelization = true)]
#pragma warning disable CA1711 // The name is the one xunit's own examples use for a collection.
public sealed class MemoryTestsCollection;
#pragma warning restore CA1711
