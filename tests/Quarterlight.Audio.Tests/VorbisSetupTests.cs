using Quarterlight.Audio.Ogg;

namespace Quarterlight.Audio.Tests;

/// <summary>Setup headers that ask for more memory than any real one.</summary>
public sealed class VorbisSetupTests
{
    [Fact]
    public void Check_SetupOfARealEncoder_Passes()
    {
        byte[] file = CorpusFile.Read("vorbis-44k-stereo.ogg");
        // The setup is the third packet; it and the comments share one page here, so that it may be cut out by its mark. What follows it
        // in the file is not looked at, as the codebooks come first.
        int at = file.AsSpan().IndexOf("\u0005vorbis"u8);
        Assert.InRange(VorbisSetup.Check(file.AsSpan(at)), 1_000, 200_000);
    }

    [Theory]
    [InlineData(1, 0xFFFFFF)]
    [InlineData(0xFFFF, 0xFFFFFF)]
    [InlineData(0xFFFF, 64)]
    [InlineData(0, 0xFFFFFF)]
    public void Check_BookLargerThanAnyReal_IsRefused(int dimensions, int entries)
    {
        AudioFaultException fault = Assert.Throws<AudioFaultException>(() => VorbisSetup.Check(Setup(dimensions, entries)));
        Assert.Contains("tables larger", fault.Fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_BooksThatEndEarly_AreRefused()
    {
        Assert.Throws<AudioFaultException>(() => VorbisSetup.Check(Setup(1, 100_000)));
        Assert.Throws<AudioFaultException>(() => VorbisSetup.Check("\u0005vorbis"u8));
        Assert.Throws<AudioFaultException>(() => VorbisSetup.Check([.. "\u0005vorbis"u8, 0, 1, 2, 3]));
    }

    private static byte[] Setup(int dimensions, int entries) =>
    [
        .. "\u0005vorbis"u8, 0, 0x42, 0x43, 0x56, (byte)dimensions, (byte)(dimensions >> 8), (byte)entries, (byte)(entries >> 8), (byte)(entries >> 16), 0, 0, 0, 0,
    ];
}
