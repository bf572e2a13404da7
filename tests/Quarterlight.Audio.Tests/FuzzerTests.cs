using Quarterlight.Fuzz;

namespace Quarterlight.Audio.Tests;

/// <summary>The fuzzer itself: one that finds nothing must not look like readers without defects.</summary>
public sealed class FuzzerTests
{
    private const int Executions = 150_000;

    [Theory]
    [InlineData(false, 1)]
    [InlineData(true, 0)]
    public async Task Run_PlantedDefect_IsFoundThroughCoverage(bool blind, int findings)
    {
        DirectoryInfo work = Directory.CreateTempSubdirectory("quarterlight-fuzz-test-");
        try
        {
            var options = new FuzzOptions { Planted = true, Blind = blind, Executions = Executions, Seed = 2, Work = work.FullName };
            (int found, string summary) = await new FuzzRun(options).RunAsync();
            Assert.True(found == findings, summary);
            foreach (string input in Directory.GetFiles(new WorkFolder(work.FullName).Findings, "*.bin"))
            {
                Assert.Throws<InvalidOperationException>(() => new PlantedTarget().Take(File.ReadAllBytes(input)));
            }
        }
        finally
        {
            work.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Take_BrokenPromise_IsAFinding()
    {
        byte[] sound = CorpusFile.Read("pcm24-8k-mono.wav");
        FindingException finding = await Assert.ThrowsAsync<FindingException>(() => new ReaderTarget(null, mostAllocatedBytes: 10).ReadAsync(sound, [int.MaxValue], 64));
        Assert.Equal("Little memory", finding.Promise);
    }

    [Fact]
    public void Mutate_SameSeed_GivesTheSameWithinTheBound()
    {
        byte[] one = CorpusFile.Read("opus-48k-mono.opus"), other = CorpusFile.Read("bext-8k-mono.wav");
        var first = new Mutator(new Random(5));
        var second = new Mutator(new Random(5));
        for (int i = 0; i < 300; i++)
        {
            byte[] damaged = first.Mutate(i % 2 == 0 ? one : other, one);
            Assert.Equal(damaged, second.Mutate(i % 2 == 0 ? one : other, one));
            Assert.InRange(damaged.Length, 0, Mutator.MostBytes + (Mutator.MostBytes / 64));
        }
    }

    [Fact]
    public void OggPages_BytesCutOutOfAPage_GivesAFileWithoutBrokenPages()
    {
        byte[] file = CorpusFile.Read("opus-48k-mono.opus");
        int at = file.Length - 500;
        byte[] mended = Mending.OggPages([.. file[..at], .. file[(at + 40)..]], renumber: true);
        Assert.DoesNotContain("checksum", Outcome(mended), StringComparison.Ordinal);
        Assert.DoesNotContain("ends within a page", Outcome(mended), StringComparison.Ordinal);
    }

    [Fact]
    public void WaveSizes_CutFile_IsWholeAgain()
    {
        byte[] cut = CorpusFile.Read("pcm24-8k-mono.wav")[..3_000];
        Assert.Contains("ends after", Outcome(cut), StringComparison.Ordinal);
        Mending.WaveSizes(cut);
        Assert.DoesNotContain("ends after", Outcome(cut), StringComparison.Ordinal);
    }

    private static string Outcome(byte[] file) => new ReaderTarget(null, long.MaxValue).ReadAsync(file, [int.MaxValue], 500).GetAwaiter().GetResult();
}
