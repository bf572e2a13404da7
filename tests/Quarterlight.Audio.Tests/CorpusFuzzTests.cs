using CsCheck;
using Quarterlight.Fuzz;

namespace Quarterlight.Audio.Tests;

/// <summary>Damaged files of every kind give samples or a fault, never anything else, and the next file reads as ever.</summary>
public sealed class CorpusFuzzTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    // What the ffmpeg program reads has tests of its own: a process for each try would take minutes.
    public static TheoryData<string> Files => [.. CorpusFile.All.Where(f => !f.EndsWith(".flac", StringComparison.Ordinal) && !f.EndsWith(".m4a", StringComparison.Ordinal))];

    public static TheoryData<string> Fuzzed => [.. CorpusFile.Fuzzed];

    [Fact]
    public void Corpus_IsThereAndSmall()
    {
        Assert.Equal(12, CorpusFile.All.Count);
        Assert.InRange(CorpusFile.Fuzzed.Count, 50, 400);
        Assert.InRange(CorpusFile.All.Concat(CorpusFile.Fuzzed).Sum(f => CorpusFile.Read(f).Length), 1, 500_000);
    }

    [Theory]
    [MemberData(nameof(Fuzzed))]
    public void Read_WhatTheFuzzerKept_KeepsEveryPromise(string name) => new ReaderTarget(null, long.MaxValue).TakeAgain(CorpusFile.Read(name));

    [Theory]
    [MemberData(nameof(Files))]
    public async Task Read_AnyDamage_GivesSamplesOrAFault(string name)
    {
        byte[] file = CorpusFile.Read(name);
        bool ogg = file.AsSpan().StartsWith("OggS"u8);
        string before = await WaveFuzzTests.OutcomeAsync(file, [], 500);
        await Gen.Select(Mutation.Any, Gen.Bool).SampleAsync(
            async (damage, mend) =>
            {
                byte[] damaged = damage(file);
                await WaveFuzzTests.OutcomeAsync(ogg && mend ? Mending.OggPages(damaged, renumber: false) : damaged, [], 500).WaitAsync(Patience);
            },
            iter: ogg || name.EndsWith(".mp3", StringComparison.Ordinal) ? 150 : 1_000, threads: 1);
        Assert.Equal(before, await WaveFuzzTests.OutcomeAsync(file, [], 500));
    }

    // A decoder that believes such pages goes round for ever.
    [Theory]
    [InlineData(1, false)]
    [InlineData(1, true)]
    [InlineData(100, false)]
    [InlineData(100, true)]
    public async Task Read_VorbisThatEndsBeforeItsSound_ComesToAnEnd(int pages, bool noEndMark)
    {
        byte[] file = CorpusFile.Read("vorbis-44k-stereo.ogg");
        List<int> starts = [];
        for (int at = 0; at < file.Length; at += 27 + file[at + 26] + file.AsSpan(at + 27, file[at + 26]).ToArray().Sum(b => b))
        {
            starts.Add(at);
        }

        // The first two pages are the head.
        Assert.InRange(starts.Count, 3, 100);
        foreach (int at in starts.Skip(2).TakeLast(pages))
        {
            System.Buffers.Binary.BinaryPrimitives.WriteInt64LittleEndian(file.AsSpan(at + 6), 1);
        }

        file[starts[^1] + 5] &= noEndMark ? (byte)0xFB : (byte)0xFF;

        string outcome = await WaveFuzzTests.OutcomeAsync(Mending.OggPages(file, renumber: false), [], 500).WaitAsync(Patience, TestContext.Current.CancellationToken);

        Assert.NotEmpty(outcome);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public async Task Read_AnyPieces_GiveTheSame(string name)
    {
        byte[] file = CorpusFile.Read(name);
        string whole = await WaveFuzzTests.OutcomeAsync(file, [], 48_000);
        Assert.Equal(whole, await WaveFuzzTests.OutcomeAsync(file, [1], 1_000));
        Assert.Equal(whole, await WaveFuzzTests.OutcomeAsync(file, [7, 4_093, 1], 333));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public async Task Read_CutShort_IsSaid(string name)
    {
        byte[] file = CorpusFile.Read(name);
        string cut = await WaveFuzzTests.OutcomeAsync(file[..(file.Length * 3 / 5)], [], 500);
        Assert.Matches("ends (after|within|before)|says it holds", cut);
    }

    [Theory]
    [InlineData("vorbis-44k-stereo.ogg")]
    [InlineData("opus-48k-mono.opus")]
    public async Task Read_OggPageThatFailsItsChecksum_IsCorrupt(string name)
    {
        byte[] file = CorpusFile.Read(name);
        file[file.Length / 2] ^= 1;
        AudioFault fault = await Reading.FaultAsync(file);
        Assert.Equal(AudioFaultCode.Corrupt, fault.Code);
        Assert.Contains("checksum", fault.Problem, StringComparison.Ordinal);
        file[file.Length / 2] ^= 1;
        Assert.Equal(file, Mending.OggPages(file, renumber: false));
    }

    [Theory]
    [InlineData("vorbis-44k-stereo.ogg")]
    [InlineData("opus-48k-mono.opus")]
    [InlineData("mp3-48k-mono.mp3")]
    public async Task Read_CompressedPastTheLimit_IsTooLong(string name) =>
        Assert.Equal(AudioFaultCode.TooLong, (await Reading.FaultAsync(CorpusFile.Read(name), AudioLimits.Default with { MaxDuration = TimeSpan.FromSeconds(0.5) })).Code);

    [Fact]
    public async Task Read_Mp3BehindATag_ReadsTheSame()
    {
        byte[] file = CorpusFile.Read("mp3-48k-mono.mp3");
        Assert.False(file.AsSpan().StartsWith("TAG"u8));
        int start = file.AsSpan().StartsWith("ID3"u8) ? 10 + (file[8] << 7 | file[9]) : 0;
        byte[] bare = file[start..];
        byte[] tagged = [.. "ID3"u8, 4, 0, 0, 0, 0, 2, 0, .. new byte[256], .. bare, .. "TAG"u8, .. new byte[125]];
        Assert.Equal(await WaveFuzzTests.OutcomeAsync(bare, [], 500), await WaveFuzzTests.OutcomeAsync(tagged, [], 500));
    }
}
