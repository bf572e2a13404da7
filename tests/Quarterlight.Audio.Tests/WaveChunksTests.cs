namespace Quarterlight.Audio.Tests;

/// <summary>Chunks around the sound: RIFF as in EBU Tech 3285, RF64 as in EBU Tech 3306, BW64 as in ITU-R BS.2088.</summary>
public sealed class WaveChunksTests
{
    private static readonly byte[] Sound = WaveBuilder.Shorts(1, 2, 3, 4);
    private static readonly float[] Heard = [1 / 32_768f, 2 / 32_768f, 3 / 32_768f, 4 / 32_768f];

    [Fact]
    public async Task Read_UnknownChunksOfOddSize_AreSkippedWithTheirPadding()
    {
        byte[] file = new WaveBuilder().Chunk("JUNK", new byte[27]).Fmt(1, 1, 48_000, 16).Chunk("xyz ", [1]).Chunk("data", Sound).Chunk("LIST", new byte[5]).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal(Heard, read.Samples);
        Assert.Empty(read.Remarks);
    }

    [Fact]
    public async Task Read_OddDataThenBext_FindsTheMetadata()
    {
        byte[] file = new WaveBuilder().Fmt(1, 1, 48_000, 24).Chunk("data", [0, 0, 0x40]).Chunk("bext", WaveBuilder.Bext()).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal([0.5f], read.Samples);
        Assert.Equal("Recorder", read.Metadata!.Broadcast!.Originator);
    }

    [Fact]
    public async Task Metadata_BehindTheSound_IsCompleteOnlyAtTheEnd()
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        byte[] file = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", Sound).Chunk("bext", WaveBuilder.Bext()).Build();
        await using IAudioReader reader = await AudioReader.OpenAsync(new MemoryStream(file), AudioLimits.Default, cancellation);
        Assert.Null(reader.Metadata);
        while (await reader.ReadAsync(new float[64], cancellation) > 0)
        {
        }

        Assert.Equal("Car at idle, windows up", reader.Metadata!.Broadcast!.Description);
    }

    [Theory]
    [InlineData("RF64")]
    [InlineData("BW64")]
    public async Task Read_LargeSizes_AreTakenFromDs64(string head)
    {
        byte[] sizes =
        [
            .. WaveBuilder.U64(0), .. WaveBuilder.U64(8), .. WaveBuilder.U64(4), .. WaveBuilder.U32(1),
            .. "junk"u8, .. WaveBuilder.U64(6),
        ];
        byte[] file = new WaveBuilder(head).Chunk("ds64", sizes).Fmt(1, 1, 48_000, 16).Chunk("junk", new byte[6], uint.MaxValue)
            .Chunk("data", Sound, uint.MaxValue).Chunk("bext", WaveBuilder.Bext()).Build(uint.MaxValue);
        Reading read = await Reading.AllAsync(file);
        Assert.Equal(Heard, read.Samples);
        Assert.Equal(4, read.Format.DeclaredFrameCount);
        Assert.NotNull(read.Metadata);
        Assert.Empty(read.Remarks);
    }

    [Fact]
    public async Task Read_LargeFileWithSmallSizes_UsesThem()
    {
        byte[] file = new WaveBuilder("RF64").Chunk("ds64", new byte[28]).Fmt(1, 1, 48_000, 16).Chunk("data", Sound).Build();
        Assert.Equal(Heard, (await Reading.AllAsync(file)).Samples);
    }

    [Theory]
    [InlineData("RIFF", 0u, 0u)]
    [InlineData("RIFF", 0xFFFFFFFFu, 0xFFFFFFFFu)]
    [InlineData("RIFF", 0u, 36u)]
    [InlineData("RIFF", 0xFFFFFFFFu, 0u)]
    [InlineData("RF64", 0xFFFFFFFFu, 0xFFFFFFFFu)]
    public async Task Read_RecorderLostPower_ReadsToTheEndAndSaysSo(string head, uint dataSize, uint riffSize)
    {
        byte[] file = new WaveBuilder(head).Fmt(1, 1, 48_000, 16).Chunk("data", [.. Sound, 0x7F], dataSize, pad: false).Build(riffSize);
        Reading read = await Reading.AllAsync(file);
        Assert.Equal(Heard, read.Samples);
        Assert.Null(read.Format.DeclaredFrameCount);
        Assert.Contains(read.Remarks, r => r.Contains("not closed", StringComparison.Ordinal));
        Assert.Contains(read.Remarks, r => r.Contains("within a frame", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Read_TrueEmptyDataBeforeMetadata_IsEmptyNotSound()
    {
        byte[] file = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", []).Chunk("bext", WaveBuilder.Bext()).Build();
        Assert.Equal(AudioFaultCode.Empty, (await Reading.FaultAsync(file)).Code);
    }

    [Fact]
    public async Task Read_DataNotAWholeNumberOfFrames_LeavesTheRestOutAndSaysSo()
    {
        byte[] file = new WaveBuilder().Fmt(1, 2, 48_000, 16).Chunk("data", [.. Sound, 5, 0]).Chunk("bext", WaveBuilder.Bext()).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal(Heard, read.Samples);
        Assert.NotNull(read.Metadata);
        Assert.Contains("within a frame", Assert.Single(read.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Read_DamageBehindTheSound_IsARemarkOnly()
    {
        byte[] cut = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", Sound).Chunk("bext", new byte[100], 602).Build();
        Reading read = await Reading.AllAsync(cut);
        Assert.Equal(Heard, read.Samples);
        Assert.Contains("within a chunk", Assert.Single(read.Remarks), StringComparison.Ordinal);
        byte[] crumbs = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", Sound).Raw([1, 2, 3]).Build();
        Assert.Contains("no chunk", Assert.Single((await Reading.AllAsync(crumbs)).Remarks), StringComparison.Ordinal);
        byte[] twice = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", Sound).Chunk("data", Sound).Build();
        read = await Reading.AllAsync(twice);
        Assert.Equal(Heard, read.Samples);
        Assert.Contains("second piece", Assert.Single(read.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Read_MetadataAboveTheLimit_IsLeftOutWithARemark()
    {
        byte[] file = new WaveBuilder().Chunk("iXML", new byte[1024 * 1024 + 1]).Fmt(1, 1, 48_000, 16).Chunk("data", Sound).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Equal(Heard, read.Samples);
        Assert.Null(read.Metadata);
        Assert.Contains("larger than 1024 KiB", Assert.Single(read.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Read_BrokenMetadata_IsLeftOutWithARemark()
    {
        byte[] file = new WaveBuilder().Chunk("bext", new byte[601]).Chunk("iXML", [1, 2, 3]).Fmt(1, 1, 48_000, 16).Chunk("data", Sound).Build();
        Reading read = await Reading.AllAsync(file);
        Assert.Null(read.Metadata);
        Assert.Equal(2, read.Remarks.Count);
    }
}
