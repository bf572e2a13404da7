namespace Quarterlight.Audio.Tests;

/// <summary>
/// Files another program wrote: 1 s of sines with peak 0.5 (corpus/make.sh). Length and level are those of the tones; what the lossy
/// codings may change is this project's own bound.
/// </summary>
public sealed class CorpusTests
{
    [Theory]
    [InlineData("pcm24-8k-mono.wav", 8_000, 1, SampleCoding.Pcm24)]
    [InlineData("float-8k-mono.wav", 8_000, 1, SampleCoding.FloatingPoint32)]
    [InlineData("extensible-8k-3ch.wav", 8_000, 3, SampleCoding.Pcm16)]
    [InlineData("rf64-8k-mono.wav", 8_000, 1, SampleCoding.Pcm16)]
    [InlineData("bext-8k-mono.wav", 8_000, 1, SampleCoding.Pcm16)]
    public async Task Read_Wave_HasTheTonesToTheSample(string name, int rateHz, int channels, SampleCoding coding)
    {
        Reading read = await Reading.AllAsync(CorpusFile.Read(name));
        Assert.Equal((rateHz, channels, coding, (long?)rateHz), (read.Format.SampleRateHz, read.Format.ChannelCount, read.Format.Coding, read.Format.DeclaredFrameCount));
        Assert.Equal(rateHz, read.Frames);
        Assert.Empty(read.Remarks);
        for (int i = 0; i < rateHz; i++)
        {
            Assert.Equal(0.5 * Math.Sin(2 * Math.PI * 1000 * i / rateHz), read.Samples[i * channels], 1.0 / 32_768);
        }
    }

    [Theory]
    [InlineData("vorbis-44k-stereo.ogg", 44_100, 2, SampleCoding.Vorbis)]
    [InlineData("opus-48k-mono.opus", 48_000, 1, SampleCoding.Opus)]
    [InlineData("opus-48k-stereo.opus", 48_000, 2, SampleCoding.Opus)]
    [InlineData("mp3-48k-mono.mp3", 48_000, 1, SampleCoding.Mp3)]
    [InlineData("mp3-44k-stereo.mp3", 44_100, 2, SampleCoding.Mp3)]
    public async Task Read_Compressed_HasTheTones(string name, int rateHz, int channels, SampleCoding coding)
    {
        Reading read = await Reading.AllAsync(CorpusFile.Read(name));
        Assert.Equal((rateHz, channels, coding), (read.Format.SampleRateHz, read.Format.ChannelCount, read.Format.Coding));
        Assert.Empty(read.Remarks);
        HasTones(read, rateHz);
    }

    [Fact]
    public async Task Read_BextOfAnotherProgram_IsRead()
    {
        BroadcastExtension bext = (await Reading.AllAsync(CorpusFile.Read("bext-8k-mono.wav"))).Metadata!.Broadcast!;
        Assert.Equal("Tone", bext.Description);
        Assert.Equal(4_665_600_000ul, bext.TimeReferenceSamples);
    }

    /// <summary>1 s to the sample; 1 kHz on the left, 500 Hz on the right, each within 0.5 dB and 30 dB above the other's.</summary>
    internal static void HasTones(Reading read, int frames)
    {
        Assert.Equal(frames, read.Frames);
        double[] tonesHz = [1000, 500];
        for (int channel = 0; channel < read.Format.ChannelCount; channel++)
        {
            double wanted = CorpusFile.Amplitude(read, channel, tonesHz[channel]);
            Assert.InRange(20 * Math.Log10(wanted / 0.5), -0.5, 0.5);
            Assert.True(CorpusFile.Amplitude(read, channel, tonesHz[1 - channel]) < wanted * 0.0316);
        }
    }
}
