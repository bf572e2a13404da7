using System.Text;

namespace Quarterlight.Audio.Tests;

/// <summary>A file is what its bytes say, whatever its name.</summary>
public sealed class ContentSnifferTests
{
    [Theory]
    [InlineData("89504E470D0A1A0A0000000D49484452", AudioFaultCode.NotAudio, "picture")]
    [InlineData("FFD8FFE000104A464946", AudioFaultCode.NotAudio, "picture")]
    [InlineData("504B0304140000000800", AudioFaultCode.NotAudio, "archive")]
    [InlineData("1F8B0800000000000003", AudioFaultCode.NotAudio, "archive")]
    [InlineData("255044462D312E37", AudioFaultCode.NotAudio, "document")]
    [InlineData("464F524D0000000041494646", AudioFaultCode.Unsupported, "AIFF")]
    [InlineData("1A45DFA3010000000000", AudioFaultCode.Unsupported, "Matroska")]
    [InlineData("52494646000000005745425056503820", AudioFaultCode.NotAudio, "picture")]
    [InlineData("52494646000000004156492000000000", AudioFaultCode.Unsupported, "film")]
    [InlineData("00000018667479706865696300000000", AudioFaultCode.NotAudio, "picture")]
    [InlineData("FFFE480065006C006C006F00", AudioFaultCode.NotAudio, "not a sound file")]
    [InlineData("00", AudioFaultCode.NotAudio, "not a sound file")]
    [InlineData("52494646", AudioFaultCode.Truncated, "first 12 bytes")]
    [InlineData("4F676753", AudioFaultCode.Truncated, "first page")]
    [InlineData("", AudioFaultCode.Empty, "no bytes")]
    public async Task Open_SomethingElse_IsRefusedByName(string head, AudioFaultCode code, string word)
    {
        byte[] bytes = Convert.FromHexString(head);
        AudioFault fault = await Reading.FaultAsync(bytes.Length > 8 ? [.. bytes, .. new byte[100]] : bytes);
        Assert.Equal(code, fault.Code);
        Assert.Contains(word, fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_Text_IsRefused() =>
        Assert.Equal(AudioFaultCode.NotAudio, (await Reading.FaultAsync(Encoding.UTF8.GetBytes("Dear crew, the clip follows by post."))).Code);
}
