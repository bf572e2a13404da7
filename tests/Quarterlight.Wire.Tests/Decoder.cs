using Grpc.Core;
using Quarterlight.Audio;
using Quarterlight.Audio.Ffmpeg;

namespace Quarterlight.Wire.Tests;

/// <summary>Where the ffmpeg program is not installed, its files must be refused with the way out instead of being read.</summary>
internal static class Decoder
{
    public static bool IsInstalled { get; } = FfmpegProgram.Find(AudioLimits.Default) is not null;

    public static async Task MissingAsync(Func<Task> send)
    {
        RpcException refused = await Assert.ThrowsAnyAsync<RpcException>(send);
        Assert.Equal(StatusCode.FailedPrecondition, refused.StatusCode);
        Assert.Contains("ffmpeg", refused.Status.Detail, StringComparison.OrdinalIgnoreCase);
    }
}
