using System.Diagnostics;
using Quarterlight.Audio.Tests;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Clips that are sound, in pieces.</summary>
public sealed class ClipUploadTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private readonly RunningPlanner _planner = fixture.Planner;

    [Fact]
    public async Task JudgeClip_PiecesOfManySizes_SameReport()
    {
        byte[] file = Waves.Talk(3, 2);
        ClipReport whole = await _planner.ReportAsync(file, pieceBytes: 1024 * 1024);
        Assert.Equal(2, whole.Channels.Count);
        foreach (int size in new[] { 997, 4096, 65_536, 300_001 })
        {
            Assert.Equal(whole, await _planner.ReportAsync(file, pieceBytes: size));
        }
    }

    [Fact]
    public async Task JudgeClip_PiecesOfOneByte_SameReport()
    {
        byte[] file = Waves.Talk(0.1);
        Assert.Equal(await _planner.ReportAsync(file), await _planner.ReportAsync(file, pieceBytes: 1));
    }

    [Fact]
    public async Task JudgeClip_SentSlowly_ProgressRisesAtMostFourASecond()
    {
        byte[] file = Waves.Talk(4);
        long start = Stopwatch.GetTimestamp();
        (List<ClipProgress> progress, _) = await _planner.JudgeAsync(file, new ClipHeader { ByteCount = file.Length }, 32_768, TimeSpan.FromMilliseconds(100));
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        Assert.InRange(progress.Count, 2, (int)(4 * seconds) + 1);
        Assert.True(progress.Zip(progress.Skip(1)).All(p => p.First.ByteCount <= p.Second.ByteCount && p.First.JudgedS <= p.Second.JudgedS && p.First.Fraction <= p.Second.Fraction));
        Assert.Equal(file.Length, progress[^1].ByteCount);
        Assert.Equal(4, progress[^1].JudgedS, 6);
        Assert.Equal(1, progress[^1].Fraction);
    }

    [Fact]
    public async Task JudgeClip_SizeNotSaid_NoFraction()
    {
        (List<ClipProgress> progress, _) = await _planner.JudgeAsync(Waves.Talk(1));
        Assert.All(progress, p => Assert.False(p.HasFraction));
    }

    [Fact]
    public async Task JudgeClip_SineOfHalfScale_LevelsAsComputed()
    {
        int[] sine = [.. Enumerable.Range(0, 96_000).Select(i => (int)Math.Round(16_384 * Math.Sin(2 * Math.PI * 1000 * i / 48_000)))];
        ClipReport report = await _planner.ReportAsync(Waves.Pcm16(1, sine), new ClipHeader { FileName = "sine.wav" });
        ClipChannel channel = Assert.Single(report.Channels);
        Assert.Equal("sine.wav", report.FileName);
        Assert.Equal(20 * Math.Log10(0.5), channel.SamplePeakDbfs, 0.01);
        Assert.Equal(10 * Math.Log10(0.125), channel.RmsDbov, 0.01);
        Assert.Equal(20 * Math.Log10(0.5), channel.Octaves.Single(o => o.CentreHz == 1000).LevelDbfs, 0.1);
        Assert.Equal("WAV, 16-bit", report.Format.Words);
        Assert.Equal(2, report.Format.DurationS, 9);
        Assert.Equal(192_044, report.Format.ByteCount);
        Assert.Contains("short-clip", (await _planner.ReportAsync(Waves.Talk(0.5))).Verdict.Reasons.Select(r => r.Code));
    }

    [Fact]
    public async Task JudgeClip_RecorderMetadata_TrackNamesSceneAndTime()
    {
        byte[] bext = WaveBuilder.Bext(low: 48_000u * 3661);
        System.Text.Encoding.ASCII.GetBytes("sSCENE=12A\r\nsTAKE=3\r\nsTRK1=Visor\r\nsTRK2=Boom\r\n\0").CopyTo(bext, 0);
        byte[] talk = Waves.Talk(1, 2);
        byte[] file = new WaveBuilder().Chunk("bext", bext).Fmt(1, 2, 48_000, 16).Chunk("data", talk[44..]).Build();
        ClipReport report = await _planner.ReportAsync(file);
        Assert.Equal("12A", report.Metadata.Scene);
        Assert.Equal("3", report.Metadata.Take);
        Assert.Equal("01:01:01.000", report.Metadata.StartTime);
        Assert.Equal("2026-05-31", report.Metadata.Date);
        Assert.Equal(["Visor", "Boom"], report.Channels.Select(c => c.TrackName));
    }

    [Fact]
    public async Task JudgeClip_PictureAsked_PngWithItsWords()
    {
        byte[] file = Waves.Talk(3, 2);
        JudgedClip judged = (await _planner.JudgeAsync(file, new ClipHeader { IncludePicture = true, PictureChannel = 2 })).Judged;
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], judged.Picture.Png.Take(4));
        Assert.NotEqual("", judged.Picture.TextAlternative);
        Refused refused = await Refused.ForFieldsAsync(() => _planner.JudgeAsync(file, new ClipHeader { IncludePicture = true, PictureChannel = 3 }));
        refused.Names("header.picture_channel");
    }

    [Theory]
    [InlineData("flac-48k-mono.flac", "FLAC", false)]
    [InlineData("mp3-48k-mono.mp3", "MP3", true)]
    [InlineData("vorbis-44k-stereo.ogg", "Ogg Vorbis", true)]
    [InlineData("opus-48k-mono.opus", "Opus", true)]
    [InlineData("aac-44k-stereo.m4a", "AAC", true)]
    public async Task JudgeClip_OtherFormats_ReadAndSaidWhetherLossy(string name, string words, bool lossy)
    {
        if (words is "FLAC" or "AAC" && !Decoder.IsInstalled)
        {
            await Decoder.MissingAsync(() => _planner.ReportAsync(Waves.Corpus(name), new ClipHeader { FileName = name }, 1000));
            return;
        }

        ClipReport report = await _planner.ReportAsync(Waves.Corpus(name), new ClipHeader { FileName = name }, 1000);
        Assert.Equal(words, report.Format.Words);
        Assert.Equal(lossy, report.Advisories.Any(a => a.Code == "lossy-coding"));
    }

    [Fact]
    public async Task JudgeClip_LargerThanAMessage_Read()
    {
        byte[] file = Waves.Talk(60);
        Assert.True(file.Length > 5 * 1024 * 1024);
        Assert.Equal(60, (await _planner.ReportAsync(file)).Format.DurationS, 6);
    }

    [Fact]
    public async Task JudgeClip_ThresholdsOfItsOwn_InForceForThisClipAlone()
    {
        byte[] file = Waves.Talk(3);
        ClipReport own = await _planner.ReportAsync(file, new ClipHeader { Thresholds = new ClipThresholds { SpeechHighDbov = -29 } });
        Assert.Equal(-29, own.Thresholds.SpeechHighDbov);
        Assert.Equal(-12, (await _planner.ReportAsync(file)).Thresholds.SpeechHighDbov);
    }
}
