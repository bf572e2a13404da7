using System.Diagnostics;
using Quarterlight.Audio.Ffmpeg;

namespace Quarterlight.Audio.Tests;

/// <summary>
/// What the ffmpeg program reads. Where it is not installed the same files must be refused with the way out; how a program is held in
/// check is tested with small shell scripts in its place.
/// </summary>
public sealed class FfmpegTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("audio-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData("flac-48k-mono.flac", 48_000, SampleCoding.Flac)]
    [InlineData("aac-44k-stereo.m4a", 44_100, SampleCoding.Aac)]
    public async Task Read_WithTheProgramOrWithout_DecodesOrSaysWhatToInstall(string name, int rateHz, SampleCoding coding)
    {
        byte[] file = CorpusFile.Read(name);
        if (FfmpegProgram.Find(AudioLimits.Default) is null)
        {
            AudioFault fault = await Reading.FaultAsync(file);
            Assert.Equal(AudioFaultCode.NoDecoder, fault.Code);
            Assert.Contains("Install ffmpeg", fault.Remedy, StringComparison.Ordinal);
            return;
        }

        Reading read = await Reading.AllAsync(file, 1000, 1);
        Assert.Equal((rateHz, coding), (read.Format.SampleRateHz, read.Format.Coding));
        Assert.Empty(read.Remarks);
        // AAC in MPEG-4 ends on a whole frame of 1024 unless the file's edit list says otherwise.
        Assert.InRange(read.Frames, rateHz, rateHz + 1024);
        Assert.InRange(CorpusFile.Amplitude(read, 0, 1000), 0.48, 0.52);
        AudioFault cut = await Reading.FaultAsync(file[..(file.Length / 2)]);
        Assert.Contains(cut.Code, new[] { AudioFaultCode.Truncated, AudioFaultCode.Corrupt });
    }

    [Theory]
    [InlineData("flac-48k-mono.flac")]
    [InlineData("aac-44k-stereo.m4a")]
    public async Task Read_WithoutTheProgram_SaysWhatToInstall(string name)
    {
        AudioLimits limits = AudioLimits.Default with { FfmpegPath = Path.Combine(_folder.FullName, "none") };
        AudioFault fault = await Reading.FaultAsync(CorpusFile.Read(name), limits);
        Assert.Equal(AudioFaultCode.NoDecoder, fault.Code);
        Assert.Contains("Install ffmpeg", fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Read_FileThatCannotBeRun_SaysWhatToInstall()
    {
        string plain = Path.Combine(_folder.FullName, "plain");
        await File.WriteAllTextAsync(plain, "no program", TestContext.Current.CancellationToken);
        Assert.Equal(AudioFaultCode.NoDecoder, (await FaultOfFlacAsync(plain)).Code);
    }

    [Fact]
    public async Task Read_ProgramThatWritesSound_IsReadAndTidiedUp()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in is a shell script.");
        string wave = Path.Combine(_folder.FullName, "out.wav");
        await File.WriteAllBytesAsync(wave, CorpusFile.Read("float-8k-mono.wav"), TestContext.Current.CancellationToken);
        // Says where it was run and what it can see.
        string program = Script($"pwd > '{_folder.FullName}/where'; env > '{_folder.FullName}/env'; echo \"$@\" > '{_folder.FullName}/args'; cat '{wave}'");
        Environment.SetEnvironmentVariable("QUARTERLIGHT_TEST_SECRET", "hidden");
        AudioLimits limits = AudioLimits.Default with { FfmpegPath = program };
        // ADTS: no length is declared, so the stand-in's is taken.
        Reading read = await Reading.AllAsync(new ChoppyStream([0xFF, 0xF1, 0x50, 0x80, 0x01, 0x1F, 0xFC, 0, 0]), limits);
        Assert.Equal((8_000, SampleCoding.Aac, (long?)null), (read.Frames, read.Format.Coding, read.Format.DeclaredFrameCount));
        Assert.False(Directory.Exists(Note("where")));
        Assert.DoesNotContain("hidden", Note("env"), StringComparison.Ordinal);
        Assert.Contains("-protocol_whitelist file,pipe -f aac -i file:", Note("args"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Read_ProgramThatFails_IsCorrupt()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in is a shell script.");
        Assert.Equal(AudioFaultCode.Corrupt, (await FaultOfFlacAsync(Script("echo broken >&2; exit 1"))).Code);
        Assert.Equal(AudioFaultCode.Corrupt, (await FaultOfFlacAsync(Script("head -c 100000 /dev/zero"))).Code);
        Assert.Equal(AudioFaultCode.Corrupt, (await FaultOfFlacAsync(Script("exit 0"))).Code);
    }

    [Fact]
    public async Task Read_ProgramThatHangs_IsStalledAndEndedWithItsChildren()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in is a shell script.");
        string program = Script($"sleep 300 & echo $! > '{_folder.FullName}/child'; wait");
        AudioFault fault = await FaultOfFlacAsync(program, TimeSpan.FromSeconds(4));
        Assert.Equal(AudioFaultCode.Stalled, fault.Code);
        Assert.Contains("ffmpeg", fault.Problem, StringComparison.Ordinal);
        int child = int.Parse(Note("child"), System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(await EndsAsync(child));
    }

    [Fact]
    public async Task Read_ProgramThatFloods_StopsAtTheLongestDuration()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in is a shell script.");
        string wave = Path.Combine(_folder.FullName, "endless.wav");
        byte[] head = new WaveBuilder().Fmt(3, 1, 8_000, 32).Chunk("data", [], uint.MaxValue).Build(uint.MaxValue);
        await File.WriteAllBytesAsync(wave, head, TestContext.Current.CancellationToken);
        string program = Script($"yes complaint >&2 & cat '{wave}' /dev/zero");
        AudioLimits limits = AudioLimits.Default with { FfmpegPath = program, MaxDuration = TimeSpan.FromSeconds(20) };
        Assert.Equal(AudioFaultCode.TooLong, (await Reading.FaultAsync([0xFF, 0xF1, 0x50, 0x80, 0x01, 0x1F, 0xFC, 0, 0], limits)).Code);
    }

    [Fact]
    public void FlacHead_OfAFile_SaysItsLength()
    {
        Assert.Equal(48_000, FlacHead.FrameCount(CorpusFile.Read("flac-48k-mono.flac")));
        Assert.Null(FlacHead.FrameCount("fLaC"u8));
    }

    private string Note(string name) => File.ReadAllText(Path.Combine(_folder.FullName, name)).Trim();

    private static Task<AudioFault> FaultOfFlacAsync(string program, TimeSpan? idle = null) =>
        Reading.FaultAsync(CorpusFile.Read("flac-48k-mono.flac"), AudioLimits.Default with { FfmpegPath = program, IdleLimit = idle ?? AudioLimits.Default.IdleLimit });

    private string Script(string body)
    {
        string path = Path.Combine(_folder.FullName, $"program{_folder.GetFiles().Length}");
        File.WriteAllText(path, "#!/bin/sh\n" + body + "\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        return path;
    }

    private static async Task<bool> EndsAsync(int processId)
    {
        for (int turn = 0; turn < 100; turn++)
        {
            try
            {
                using var process = Process.GetProcessById(processId);
                if (process.HasExited)
                {
                    return true;
                }
            }
            catch (ArgumentException)
            {
                return true;
            }

            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        return false;
    }
}
