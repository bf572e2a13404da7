using CsCheck;
using Quarterlight.CrewBot;

namespace Quarterlight.Chat.Tests;

/// <summary>Paths of sound files in what is typed.</summary>
public sealed class ClipPathsTests
{
    [Theory]
    [InlineData("judge take3.wav", "judge this clip", "take3.wav")]
    [InlineData("take3.wav", "", "take3.wav")]
    [InlineData("is \"~/clips/take 3.m4a\" usable?", "is this clip usable?", "~/clips/take 3.m4a")]
    [InlineData("check ./a.wav against the plan", "check this clip against the plan", "./a.wav")]
    [InlineData("'/media/card/take 3.wav'", "", "/media/card/take 3.wav")]
    [InlineData("judge /media/card/take\\ 3\\ \\(best\\).wav please", "judge this clip please", "/media/card/take 3 (best).wav")]
    [InlineData("what about /media/card/take 3.wav?", "what about this clip?", "/media/card/take 3.wav")]
    [InlineData("is take3.WAV ok?", "is this clip ok?", "take3.WAV")]
    [InlineData("judge file:///media/take%203.wav", "judge this clip", "/media/take 3.wav")]
    [InlineData("judge C:\\clips\\take3.wav", "judge this clip", "C:\\clips\\take3.wav")]
    [InlineData("judge \"C:\\clips\\take 3.wav\", it's the driver's mic", "judge this clip, it's the driver's mic", "C:\\clips\\take 3.wav")]
    [InlineData("how's the noise in ../x/take.flac", "how's the noise in this clip", "../x/take.flac")]
    [InlineData("judge ./noending", "judge this clip", "./noending")]
    [InlineData("judge /media/card/", "judge this clip", "/media/card/")]
    public void Find_Path_CutOut(string line, string text, string path)
    {
        ClipLine found = ClipPaths.Find(line, _ => false);

        Assert.Equal([path], found.Paths);
        Assert.Equal(text, found.Text);
    }

    [Theory]
    [InlineData("where do the mics go?")]
    [InlineData("what if we do 60 km/h w/o the fan?")]
    [InlineData("a/c on and windows 1/2 down")]
    [InlineData("check 600.0 600.6 601.0")]
    [InlineData("I hear 97.7/98.5 strong")]
    [InlineData("what's wrong with the driver's mic")]
    [InlineData("/help")]
    [InlineData("why not the \"visor\"?")]
    [InlineData("~ / . .. ./ .wav")]
    [InlineData("")]
    public void Find_NoPath_LineStaysAsItIs(string line)
    {
        ClipLine found = ClipPaths.Find(line, _ => false);

        Assert.Empty(found.Paths);
        Assert.Equal(line, found.Text);
    }

    [Fact]
    public void Find_FilesWithSpacesThatAreThere_WordsBeforeBelongToTheName()
    {
        Assert.Equal(["take 3.wav"], ClipPaths.Find("judge take 3.wav now", p => p == "take 3.wav").Paths);
        Assert.Equal(["3.wav"], ClipPaths.Find("judge take 3.wav now", p => p == "3.wav").Paths);
        Assert.Equal(["clips/take"], ClipPaths.Find("judge clips/take", p => p == "clips/take").Paths);
    }

    [Fact]
    public void Find_TwoFiles_Both() => Assert.Equal(["a.wav", "b.wav"], ClipPaths.Find("compare a.wav with b.wav", _ => false).Paths);

    [Fact]
    public void Find_AnyText_NeverThrowsAndKeepsWhatIsNoPath() => Gen.String.Sample(line =>
    {
        ClipLine found = ClipPaths.Find(line, _ => false);
        Assert.True(found.Paths.Count > 0 || found.Text == line.Trim());
    });
}
