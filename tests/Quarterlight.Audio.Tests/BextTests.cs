namespace Quarterlight.Audio.Tests;

/// <summary>The bext chunk of EBU Tech 3285 v2 (May 2011), section 2.3.</summary>
public sealed class BextTests
{
    [Fact]
    public async Task TimeReference_OfTheDocument_IsHalfPastOne()
    {
        // 13:30:00 at 96 kHz is 48 600 s x 96 000 = 4 665 600 000 samples: low word 370 632 704, high word 1.
        BroadcastExtension bext = await BextAsync(WaveBuilder.Bext(low: 370_632_704, high: 1), 96_000);
        Assert.Equal(4_665_600_000ul, bext.TimeReferenceSamples);
        Assert.Equal(new TimeSpan(13, 30, 0), bext.StartSinceMidnight(96_000));
    }

    [Fact]
    public async Task Loudness_InHundredths_IsReadWithItsSign()
    {
        // -22.645 LUFS is stored as -2265 (rounded away from zero, EBU Tech 3285 v2).
        BroadcastExtension bext = await BextAsync(WaveBuilder.Bext(loudness: [-2265, 710, -105, 32_766, -32_768]));
        Assert.Equal(-22.65, bext.LoudnessLufs);
        Assert.Equal(7.1, bext.LoudnessRangeLu);
        Assert.Equal(-1.05, bext.MaxTruePeakDbtp);
        Assert.Equal(327.66, bext.MaxMomentaryLufs);
        Assert.Equal(-327.68, bext.MaxShortTermLufs);
        Assert.InRange(-22.645 - bext.LoudnessLufs!.Value, -0.0051, 0.0051);
    }

    [Fact]
    public async Task Loudness_Unset_IsNull()
    {
        BroadcastExtension bext = await BextAsync(WaveBuilder.Bext());
        Assert.All([bext.LoudnessLufs, bext.LoudnessRangeLu, bext.MaxTruePeakDbtp, bext.MaxMomentaryLufs, bext.MaxShortTermLufs], v => Assert.Null(v));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public async Task Loudness_BeforeVersionTwo_IsNull(int version) =>
        Assert.Null((await BextAsync(WaveBuilder.Bext(version, loudness: [-2265, 0, 0, 0, 0]))).LoudnessLufs);

    [Fact]
    public async Task Fields_OfAFullChunk_AreRead()
    {
        BroadcastExtension bext = await BextAsync(WaveBuilder.Bext(history: "A=PCM,F=48000,W=24,M=mono,T=first\r\nA=PCM,F=48000,W=16,M=mono\r\n\0\0"));
        Assert.Equal("Car at idle, windows up", bext.Description);
        Assert.Equal("Recorder", bext.Originator);
        Assert.Equal("REF-0001", bext.OriginatorReference);
        Assert.Equal(new DateOnly(2026, 5, 31), bext.OriginationDate);
        Assert.Equal(new TimeOnly(13, 30, 0), bext.OriginationTime);
        Assert.Equal(2, bext.Version);
        Assert.Equal(["A=PCM,F=48000,W=24,M=mono,T=first", "A=PCM,F=48000,W=16,M=mono"], bext.CodingHistory);
    }

    [Theory]
    [InlineData("2026:05:31", "13:30:00", true)]
    [InlineData("2026/05/31", "13.30", false)]
    [InlineData("2026-02-30", "24-00-00", false)]
    [InlineData("", "", false)]
    public async Task DateAndTime_AsWritten_AreReadOrNull(string date, string time, bool read)
    {
        byte[] chunk = WaveBuilder.Bext();
        chunk.AsSpan(320, 18).Clear();
        System.Text.Encoding.ASCII.GetBytes(date).CopyTo(chunk, 320);
        System.Text.Encoding.ASCII.GetBytes(time).CopyTo(chunk, 330);
        BroadcastExtension bext = await BextAsync(chunk);
        Assert.Equal(read, bext.OriginationDate is not null);
        Assert.Equal(read, bext.OriginationTime is not null);
    }

    [Fact]
    public async Task Text_WithoutEndAndInOtherCodings_IsRead()
    {
        byte[] chunk = WaveBuilder.Bext();
        chunk.AsSpan(0, 256).Fill((byte)'x');
        chunk.AsSpan(256, 32).Clear();
        "Größe"u8.CopyTo(chunk.AsSpan(256));
        chunk.AsSpan(288, 32).Clear();
        chunk[288] = 0xE9;
        BroadcastExtension bext = await BextAsync(chunk);
        Assert.Equal(new string('x', 256), bext.Description);
        Assert.Equal("Größe", bext.Originator);
        Assert.Equal("é", bext.OriginatorReference);
    }

    [Fact]
    public async Task StartSinceMidnight_LargestReference_DoesNotOverflow()
    {
        BroadcastExtension bext = await BextAsync(WaveBuilder.Bext(low: uint.MaxValue, high: uint.MaxValue));
        Assert.Equal(ulong.MaxValue, bext.TimeReferenceSamples);
        Assert.Equal(TimeSpan.MaxValue, bext.StartSinceMidnight(8_000));
        Assert.Throws<ArgumentOutOfRangeException>(() => bext.StartSinceMidnight(0));
    }

    private static async Task<BroadcastExtension> BextAsync(byte[] chunk, uint rateHz = 48_000)
    {
        byte[] file = new WaveBuilder().Chunk("bext", chunk).Fmt(1, 1, rateHz, 16).Chunk("data", new byte[8]).Build();
        Reading read = await Reading.AllAsync(file, 100);
        Assert.Empty(read.Remarks);
        Assert.Equal(read.Metadata!.Broadcast!.TimeReferenceSamples, read.Metadata.SamplesSinceMidnight);
        return read.Metadata.Broadcast;
    }
}
