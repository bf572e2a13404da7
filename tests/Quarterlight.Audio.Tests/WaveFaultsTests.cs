namespace Quarterlight.Audio.Tests;

/// <summary>Files that are wrong: each is told by its code, in plain words.</summary>
public sealed class WaveFaultsTests
{
    [Theory]
    [InlineData(0, 48_000u, 16, AudioFaultCode.Corrupt)]
    [InlineData(17, 48_000u, 16, AudioFaultCode.Unsupported)]
    [InlineData(65_535, 48_000u, 16, AudioFaultCode.Unsupported)]
    [InlineData(1, 0u, 16, AudioFaultCode.Unsupported)]
    [InlineData(1, 7_999u, 16, AudioFaultCode.Unsupported)]
    [InlineData(1, 192_001u, 16, AudioFaultCode.Unsupported)]
    [InlineData(1, uint.MaxValue, 16, AudioFaultCode.Unsupported)]
    [InlineData(1, 48_000u, 8, AudioFaultCode.Unsupported)]
    [InlineData(1, 48_000u, 0, AudioFaultCode.Unsupported)]
    [InlineData(1, 48_000u, 64, AudioFaultCode.Unsupported)]
    public async Task Open_ShapeOutsideTheLimits_IsRefused(int channels, uint rateHz, int bits, AudioFaultCode code)
    {
        byte[] file = new WaveBuilder().Fmt(1, channels, rateHz, bits).Chunk("data", new byte[64]).Build();
        Assert.Equal(code, (await Reading.FaultAsync(file)).Code);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(0x11)]
    [InlineData(0)]
    public async Task Open_OtherCoding_IsUnsupported(int code)
    {
        byte[] file = new WaveBuilder().Fmt(code, 1, 48_000, 16).Chunk("data", new byte[64]).Build();
        Assert.Equal(AudioFaultCode.Unsupported, (await Reading.FaultAsync(file)).Code);
    }

    [Fact]
    public async Task Open_FrameSizeThatContradicts_IsCorrupt()
    {
        byte[] file = new WaveBuilder().Fmt(1, 2, 48_000, 16, blockAlign: 2).Chunk("data", new byte[64]).Build();
        AudioFault fault = await Reading.FaultAsync(file);
        Assert.Equal(AudioFaultCode.Corrupt, fault.Code);
        Assert.Equal("The file says a frame takes 2 bytes; 2 channels of 16 bits take 4", fault.Problem);
    }

    [Fact]
    public async Task Open_ExtensionsThatAreWrong_AreRefused()
    {
        byte[] sound = new byte[64];
        byte[] shortOne = new WaveBuilder().Fmt(0xFFFE, 1, 48_000, 16, new byte[10]).Chunk("data", sound).Build();
        byte[] foreign = new WaveBuilder().Extensible(1, 48_000, 16, 16, new byte[16]).Chunk("data", sound).Build();
        byte[] tooValid = new WaveBuilder().Extensible(1, 48_000, 16, 17, WaveBuilder.PcmGuid).Chunk("data", sound).Build();
        Assert.Equal(AudioFaultCode.Corrupt, (await Reading.FaultAsync(shortOne)).Code);
        Assert.Equal(AudioFaultCode.Unsupported, (await Reading.FaultAsync(foreign)).Code);
        Assert.Equal(AudioFaultCode.Corrupt, (await Reading.FaultAsync(tooValid)).Code);
    }

    [Fact]
    public async Task Open_ChunksMissingOrMisplaced_AreRefused()
    {
        Assert.Equal(AudioFaultCode.Truncated, (await Reading.FaultAsync(new WaveBuilder().Build())).Code);
        Assert.Equal(AudioFaultCode.Empty, (await Reading.FaultAsync(new WaveBuilder().Fmt(1, 1, 48_000, 16).Build())).Code);
        Assert.Equal(AudioFaultCode.Corrupt, (await Reading.FaultAsync(new WaveBuilder().Chunk("data", new byte[4]).Fmt(1, 1, 48_000, 16).Build())).Code);
        Assert.Equal(AudioFaultCode.Corrupt, (await Reading.FaultAsync(new WaveBuilder().Chunk("fmt ", new byte[14]).Build())).Code);
        Assert.Equal(AudioFaultCode.Corrupt, (await Reading.FaultAsync(new WaveBuilder("RF64").Chunk("ds64", new byte[20]).Build())).Code);
        byte[] table = [.. new byte[24], .. WaveBuilder.U32(uint.MaxValue)];
        Assert.Equal(AudioFaultCode.Corrupt, (await Reading.FaultAsync(new WaveBuilder("BW64").Chunk("ds64", table).Build())).Code);
    }

    [Fact]
    public async Task Read_FewerBytesThanSaid_IsTruncatedAndSaysWhere()
    {
        byte[] file = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", new byte[48_000], 192_000).Build();
        AudioFault fault = await Reading.FaultAsync(file);
        Assert.Equal(AudioFaultCode.Truncated, fault.Code);
        Assert.Equal("The file says it holds 2 s of sound and ends after 0.5 s", fault.Problem);
    }

    [Fact]
    public async Task Read_CutAnywhere_NeverPassesForWhole()
    {
        byte[] file = WaveBuilder.Plain(100);
        for (int length = 0; length < file.Length; length++)
        {
            AudioFaultCode code = (await Reading.FaultAsync(file[..length])).Code;
            // Cut within the very first mark the file cannot even be told for a WAVE.
            AudioFaultCode[] allowed = length == 0 ? [AudioFaultCode.Empty] : length < 4 ? [AudioFaultCode.NotAudio] : [AudioFaultCode.Truncated, AudioFaultCode.Empty];
            Assert.Contains(code, allowed);
        }
    }

    [Fact]
    public async Task Read_AfterAFault_GivesTheSameFaultAgain()
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        byte[] file = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", new byte[4], 8).Build();
        await using IAudioReader reader = await AudioReader.OpenAsync(new MemoryStream(file), AudioLimits.Default, cancellation);
        Assert.Equal(2, await reader.ReadAsync(new float[9], cancellation));
        AudioFaultException first = await Assert.ThrowsAsync<AudioFaultException>(async () => await reader.ReadAsync(new float[9], cancellation));
        AudioFaultException second = await Assert.ThrowsAsync<AudioFaultException>(async () => await reader.ReadAsync(new float[9], cancellation));
        Assert.Equal(first.Fault, second.Fault);
    }

    [Fact]
    public async Task Open_DeclaredLengthAboveTheLimit_IsRefusedBeforeReading()
    {
        // 0.25 s at most: 12 000 frames pass, 12 001 do not.
        AudioLimits limits = AudioLimits.Default with { MaxDuration = TimeSpan.FromSeconds(0.25) };
        Assert.Equal(12_000, (await Reading.AllAsync(new ChoppyStream(WaveBuilder.Plain(12_000)), limits)).Frames);
        Assert.Equal(AudioFaultCode.TooLong, (await Reading.FaultAsync(WaveBuilder.Plain(12_001)[..100], limits)).Code);
    }

    [Fact]
    public async Task Read_UndeclaredLengthAboveTheLimit_IsRefusedOnTheWay()
    {
        AudioLimits limits = AudioLimits.Default with { MaxDuration = TimeSpan.FromSeconds(0.25) };
        byte[] file = new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", new byte[2 * 12_001], uint.MaxValue).Build();
        Assert.Equal(AudioFaultCode.TooLong, (await Reading.FaultAsync(file, limits)).Code);
    }

    [Fact]
    public async Task Read_MoreBytesThanTheLimit_IsTooLarge()
    {
        byte[] file = WaveBuilder.Plain(50_000);
        Assert.Equal(50_000, (await Reading.AllAsync(new ChoppyStream(file, 999), AudioLimits.Default with { MaxBytes = file.Length })).Frames);
        Assert.Equal(AudioFaultCode.TooLarge, (await Reading.FaultAsync(file, AudioLimits.Default with { MaxBytes = file.Length - 1 })).Code);
    }
}
