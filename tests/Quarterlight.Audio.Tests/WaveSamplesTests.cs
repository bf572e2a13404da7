using System.Buffers.Binary;

namespace Quarterlight.Audio.Tests;

/// <summary>Each coding, with samples written by hand: full scale of an n-bit whole number is 2^(n-1), floating point is as it stands.</summary>
public sealed class WaveSamplesTests
{
    [Fact]
    public async Task Read_Pcm16_GivesFractionsOfFullScale()
    {
        byte[] file = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", [0x00, 0x80, 0xFF, 0x7F, 0x00, 0x00, 0x01, 0x00, 0xFF, 0xFF, 0x00, 0x40]).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal([-1f, 32_767f / 32_768f, 0f, 1f / 32_768f, -1f / 32_768f, 0.5f], read.Samples);
        Assert.Equal(new AudioFormat(48_000, 1, SampleCoding.Pcm16, 16, 6), read.Format);
        Assert.Null(read.Metadata);
        Assert.Empty(read.Remarks);
    }

    [Fact]
    public async Task Read_Pcm24_GivesFractionsOfFullScale()
    {
        byte[] file = new WaveBuilder().Fmt(1, 1, 96_000, 24)
            .Chunk("data", [0x00, 0x00, 0x80, 0xFF, 0xFF, 0x7F, 0x01, 0x00, 0x00, 0xFF, 0xFF, 0xFF, 0x00, 0x00, 0xC0]).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal([-1f, 8_388_607f / 8_388_608f, 1f / 8_388_608f, -1f / 8_388_608f, -0.5f], read.Samples);
        Assert.Equal(new AudioFormat(96_000, 1, SampleCoding.Pcm24, 24, 5), read.Format);
    }

    [Fact]
    public async Task Read_Pcm32_GivesFractionsOfFullScale()
    {
        byte[] file = new WaveBuilder().Fmt(1, 1, 8_000, 32)
            .Chunk("data", [0x00, 0x00, 0x00, 0x80, 0x00, 0x00, 0x00, 0x40, 0xFF, 0xFF, 0xFF, 0x7F, 0x01, 0x00, 0x00, 0x00]).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal([-1f, 0.5f, (float)(2_147_483_647.0 / 2_147_483_648.0), (float)(1.0 / 2_147_483_648.0)], read.Samples);
        Assert.Equal(SampleCoding.Pcm32, read.Format.Coding);
    }

    [Fact]
    public async Task Read_FloatingPoint32_GivesValuesAsTheyStand()
    {
        float[] values = [1f, -1f, 3.5f, -0.25f, float.Epsilon, 0f];
        byte[] data = new byte[24];
        for (int i = 0; i < values.Length; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(data.AsSpan(4 * i), values[i]);
        }

        Reading read = await Reading.AllAsync(new WaveBuilder().Fmt(3, 2, 192_000, 32).Chunk("data", data).Build());
        Assert.Equal(values, read.Samples);
        Assert.Equal(new AudioFormat(192_000, 2, SampleCoding.FloatingPoint32, null, 3), read.Format);
    }

    [Fact]
    public async Task Read_FloatingPoint64_GivesNearestValues()
    {
        double[] values = [1.0, -1.0, 0.1, 2.0];
        byte[] data = new byte[32];
        for (int i = 0; i < values.Length; i++)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(data.AsSpan(8 * i), values[i]);
        }

        Reading read = await Reading.AllAsync(new WaveBuilder().Fmt(3, 1, 44_100, 64).Chunk("data", data).Build());
        Assert.Equal([1f, -1f, 0.1f, 2f], read.Samples);
        Assert.Equal(SampleCoding.FloatingPoint64, read.Format.Coding);
    }

    [Theory]
    [InlineData(0x7F800000u)]
    [InlineData(0xFF800000u)]
    [InlineData(0x7FC00000u)]
    public async Task Read_NotANumber_IsSilenceWithARemark(uint bits)
    {
        Reading read = await Reading.AllAsync(new WaveBuilder().Fmt(3, 1, 48_000, 32).Chunk("data", [.. WaveBuilder.U32(bits), .. WaveBuilder.U32(0x3F800000)]).Build());
        Assert.Equal([0f, 1f], read.Samples);
        Assert.Contains("not numbers", Assert.Single(read.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Read_Extensible20In24_KeepsContainerScaleAndValidBits()
    {
        // 20 bits stand at the top of the 24: half of full scale is 0x400000.
        byte[] file = new WaveBuilder().Extensible(1, 48_000, 24, 20, WaveBuilder.PcmGuid).Chunk("data", [0x00, 0x00, 0x40, 0x10, 0x00, 0x00]).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal([0.5f, 1f / 524_288f], read.Samples);
        Assert.Equal(20, read.Format.ValidBits);
        Assert.Equal(SampleCoding.Pcm24, read.Format.Coding);
    }

    [Fact]
    public async Task Read_ExtensibleFloat_IsFloat()
    {
        byte[] file = new WaveBuilder().Extensible(2, 48_000, 32, 32, WaveBuilder.FloatGuid).Chunk("data", [.. WaveBuilder.U32(0x3F000000), .. WaveBuilder.U32(0xBF800000)]).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal([0.5f, -1f], read.Samples);
        Assert.Equal(SampleCoding.FloatingPoint32, read.Format.Coding);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(16)]
    public async Task Read_AnyChannelCount_KeepsOrder(int channels)
    {
        int[] samples = [.. Enumerable.Range(1, channels * 3)];
        Reading read = await Reading.AllAsync(new WaveBuilder().Fmt(1, channels, 48_000, 16).Chunk("data", WaveBuilder.Shorts(samples)).Build());
        Assert.Equal(samples.Select(s => s / 32_768f), read.Samples);
        Assert.Equal(3, read.Frames);
    }

    [Fact]
    public async Task Read_BufferNotAMultipleOfAFrame_LeavesTheRestAlone()
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        byte[] file = new WaveBuilder().Fmt(1, 2, 48_000, 16).Chunk("data", WaveBuilder.Shorts(1, 2, 3, 4)).Build();
        await using IAudioReader reader = await AudioReader.OpenAsync(new MemoryStream(file), AudioLimits.Default, cancellation);
        float[] buffer = [9, 9, 9];
        Assert.Equal(1, await reader.ReadAsync(buffer, cancellation));
        Assert.Equal([1 / 32_768f, 2 / 32_768f, 9], buffer);
        await Assert.ThrowsAsync<ArgumentException>(async () => await reader.ReadAsync(new float[1], cancellation));
        Assert.Equal(1, await reader.ReadAsync(buffer, cancellation));
        Assert.Equal(0, await reader.ReadAsync(buffer, cancellation));
        Assert.Equal(0, await reader.ReadAsync(buffer, cancellation));
    }
}
